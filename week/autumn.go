package week

import (
	"eyeup/civil"
	"eyeup/culture"
	"eyeup/growth"
	"eyeup/place"
	"eyeup/season"
)

// Days between the jobs of autumn.
var (
	markBefore = days("autumn.mark") // mark keepers and sick plants before frost kills the leaves
	liftAfter  = days("autumn.lift") // after the first freeze
	cureFor    = days("autumn.cure")
	proveAfter = days("autumn.prove") // after first flower
)

// lookEvery is the shortest interval between checks for mites.
var lookEvery = days("mite.look")

// autumn lists the jobs of stock that overwinters: check names while it flowers, mark it
// before the frost, then lift, cure and pack it.
func (m *maker) autumn(b season.BatchPlan, k *culture.Kind) {
	if k.Life != culture.Store {
		return
	}
	ground := b.Stays[len(b.Stays)-1]
	add := func(day civil.Date, what, step, why string) {
		m.add(day, what, b.Kind, ground.Place, b.Variety, b.Count, work(k, step), why)
	}
	if first := b.Dates.FirstFlower.Middle; !first.IsZero() {
		add(first.AddDays(proveAfter), "prove the names", "", "a wrong name shows now, while it flowers")
	}
	frost := ground.To // the middle first freeze of autumn
	if frost.IsZero() {
		return
	}
	add(frost.AddDays(-markBefore), "mark keepers and sick", "", "after the frost nothing shows; do not keep the sick and their kin")
	add(frost.AddDays(liftAfter), "lift", "lift", "some days after a killing frost, before the soil freezes")
	add(frost.AddDays(liftAfter+cureFor), "cure and pack", "pack", "dry the skin for some days, then store in the cellar, labelled")
}

// mites adds a check for mites in warm rooms while plants stand there, once per generation at
// the room's temperature and at most every lookEvery days.
func (m *maker) mites() {
	for _, p := range m.Given.Places {
		air, steady := p.Model.(place.Steady)
		if p.Sort != season.Room || !steady {
			continue
		}
		first, last := m.inUse(p.Name)
		if first.IsZero() {
			continue
		}
		for day := first.AddDays(lookEvery); !day.After(last); {
			m.add(day, "look for mites", "", p.Name, "", 0, 0, "they like warm, dry, still air: check the undersides of leaves with a lens")
			usual, _, err := growth.Mites.Days(air.Temperature[day.Month()-1])
			if err != nil {
				break // too cold for them
			}
			day = day.AddDays(max(civil.Days(usual), lookEvery))
		}
	}
}

// inUse returns the first and the last week in which something stands in a place.
func (m *maker) inUse(name string) (first, last civil.Date) {
	for _, p := range m.plan.Places {
		if p.Place != name {
			continue
		}
		for _, w := range p.Weeks {
			if w.UsedM2 > 0 {
				if first.IsZero() {
					first = w.Week
				}
				last = w.Week
			}
		}
	}
	return first, last
}
