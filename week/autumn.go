package week

import (
	"eyeup/civil"
	"eyeup/culture"
	"eyeup/growth"
	"eyeup/place"
	"eyeup/season"
)

// The days between the jobs of autumn. Common practice.
const (
	markBefore civil.Days = 14 // keepers and sick are marked before the frost takes the leaves
	liftAfter  civil.Days = 7  // after the first freeze
	cureFor    civil.Days = 7
	proveAfter civil.Days = 7 // after first flower
)

// autumn lists the jobs of stock that is carried through the winter: to prove the names
// while it flowers, to mark it before the frost, to lift, cure and pack it.
func (m *maker) autumn(b season.BatchPlan, k *culture.Kind) {
	if k.Life != culture.Store {
		return
	}
	ground := b.Stays[len(b.Stays)-1]
	add := func(day civil.Date, what, step, why string) {
		m.add(day, what, b.Kind, ground.Place, b.Variety, b.Count, work(k, step), why)
	}
	if first := b.Dates.FirstFlower.Middle; !first.IsZero() {
		add(first.AddDays(proveAfter), "prove the names", "", "a wrong name is seen now, while it flowers")
	}
	frost := ground.To // the middle first freeze of autumn
	if frost.IsZero() {
		return
	}
	add(frost.AddDays(-markBefore), "mark keepers and sick", "", "after the frost nothing shows; the sick and their kin are not kept")
	add(frost.AddDays(liftAfter), "lift", "lift", "some days after a killing frost, before the soil freezes")
	add(frost.AddDays(liftAfter+cureFor), "cure and pack", "pack", "dry the skin some days, then into the cellar, labelled")
}

// mites asks to look for mites in the warm rooms while plants stand there, as often as a
// generation takes at the room's warmth, and weekly at most.
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
		for day := first.AddDays(civil.Week); !day.After(last); {
			m.add(day, "look for mites", "", p.Name, "", 0, 0, "warm, dry and still is what they like: undersides of leaves, with a lens")
			usual, _, err := growth.Mites.Days(air.Temperature[day.Month()-1])
			if err != nil {
				break // too cold for them
			}
			day = day.AddDays(max(civil.Days(usual), civil.Week))
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
