package desk

import (
	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
)

// PlaceNow is a place of the garden with what stands there.
type PlaceNow struct {
	exchange.Place
	There     PlaceOnShelf
	Levels    []LevelChoice // that plans may choose from, the first of them off
	Fuel      string        // of its heater; empty where there is none
	FuelPrice float64       // of a kilowatt-hour in the fuel, in the garden's currency; 0: not known
	Steady    *place.Steady
	Covered   *place.Covered
	Plan      *season.PlacePlan // by the plan that is followed or the usual one; nil where no season can be worked out
}

// LevelChoice is a level that a heated place may be held at.
type LevelChoice struct {
	Setting string // with its unit, or off
	Celsius *float64
}

// Places returns the garden's places in their order, and places the stock stands in that
// the garden's description does not know.
func (d *Desk) Places(today civil.Date) []PlaceNow {
	g, shelf := d.Site(), d.Shelf()
	var plan *season.Plan
	if worked, err := d.Season(today); err == nil {
		plan, _ = worked.PlanFollowed()
	}
	var all []PlaceNow
	for _, p := range g.Places {
		now := PlaceNow{Place: p}
		now.There, _ = shelf.Place(p.Name)
		climateOf(g, &now)
		if plan != nil {
			for i := range plan.Places {
				if plan.Places[i].Place == p.Name {
					now.Plan = &plan.Places[i]
				}
			}
		}
		all = append(all, now)
	}
	for _, there := range shelf.Places {
		if _, known := g.Place(there.Name); !known {
			all = append(all, PlaceNow{Place: exchange.Place{Name: there.Name}, There: there})
		}
	}
	return all
}

// climateOf tells what a place is like and what heats it.
func climateOf(g *garden.Garden, now *PlaceNow) {
	if len(now.Place.Levels) > 0 {
		now.Levels = []LevelChoice{{Setting: "off"}}
	}
	for _, level := range now.Place.Levels {
		if t, on := level.At(g.Span.From); on {
			c := t.Celsius()
			now.Levels = append(now.Levels, LevelChoice{g.System.Temperature(t), &c})
		}
	}
	switch model := now.Model.(type) {
	case place.Steady:
		now.Steady = &model
	case place.Covered:
		now.Covered = &model
		if model.Heater != nil {
			now.Fuel = model.Heater.Fuel
			price := g.Prices.Electricity
			if now.Fuel != "electricity" {
				price = g.Prices.Fuels[now.Fuel]
			}
			if !price.IsZero() {
				now.FuelPrice = price.Per(quantity.KilowattHour)
			}
		}
	}
}
