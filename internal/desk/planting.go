package desk

import (
	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/season"
	"eyeup/stock"
)

// PlantingList is how many of each variety go into the patch, as it stands.
type PlantingList struct {
	Plan   string
	Rows   []PlantingRow
	Ground []GroundRoom
	Beds   []BedRow
	Behind int // see Worked
}

// PlantingRow is one variety of the planting list.
type PlantingRow struct {
	VarietyOnShelf
	Plant   int // wanted in the patch
	Reserve int // kept back
	Raised  int // by the plan
	Planted int // in the ground now
	Over    int // in hand beyond what is wanted and kept back; below nothing: short
}

// GroundRoom is the room of open ground in its fullest week.
type GroundRoom struct {
	Place        string
	UsedM2, Room float64
	Week         civil.Date
}

// BedRow is what stands in one row of a bed.
type BedRow struct {
	Place, Bed, Row string
	Lot             int // of Shelf.Lots
	Count           int
}

// PlantingList returns the planting list by the plan that is followed, or by the usual one.
func (d *Desk) PlantingList(today civil.Date) (*PlantingList, error) {
	worked, err := d.Season(today)
	if err != nil {
		return nil, err
	}
	plan, _ := worked.PlanFollowed()
	shelf := d.Shelf()
	p := &PlantingList{Plan: plan.Name, Behind: worked.Behind}
	type key struct{ kind, name string }
	raised := map[key]int{}
	for _, b := range plan.Batches {
		raised[key{b.Kind, b.Variety}] += b.Count
	}
	for _, g := range plan.Growing {
		raised[key{g.Kind, g.Variety}] += g.Count
	}
	plant, reserve := map[key]int{}, map[key]int{}
	for _, h := range d.Garden().Stock {
		k := key{h.Variety.Kind, h.Variety.Name}
		plant[k] += h.Plant
		reserve[k] += h.Reserve
	}
	for _, v := range shelf.Varieties {
		k := key{v.Kind, v.Name}
		row := PlantingRow{VarietyOnShelf: v, Plant: plant[k], Reserve: reserve[k], Raised: raised[k], Over: v.Count - plant[k] - reserve[k]}
		for _, i := range v.Lots {
			for _, s := range shelf.Lots[i].Standing {
				if s.Spot.Form == stock.Plant {
					row.Planted += s.Count
				}
				if s.Spot.Form == stock.Seed { // packets are no plants
					row.Over = row.Raised - row.Plant - row.Reserve
				}
			}
		}
		p.Rows = append(p.Rows, row)
	}
	p.Ground = groundRoom(plan)
	p.Beds = d.beds(shelf)
	return p, nil
}

func groundRoom(plan *season.Plan) []GroundRoom {
	var all []GroundRoom
	for _, pl := range plan.Places {
		if pl.Sort != string(season.Ground) || len(pl.Weeks) == 0 {
			continue
		}
		g := GroundRoom{Place: pl.Place}
		for _, w := range pl.Weeks {
			if w.UsedM2 >= g.UsedM2 {
				g.UsedM2, g.Room, g.Week = w.UsedM2, w.RoomM2, w.Week
			}
		}
		all = append(all, g)
	}
	return all
}

// beds lists what stands in beds and rows of open ground.
func (d *Desk) beds(shelf *Shelf) []BedRow {
	g := d.Site()
	var all []BedRow
	for _, p := range shelf.Places {
		if at, known := g.Place(p.Name); !known || at.Sort != exchange.Ground {
			continue
		}
		for _, c := range p.Crates {
			for _, h := range c.Holdings {
				all = append(all, BedRow{p.Name, c.Bed, h.Spot.Row, h.Lot, h.Count})
			}
		}
	}
	return all
}
