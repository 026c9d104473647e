package check

import (
	"slices"
	"strings"
	"testing"

	"eyeup/season"
	"eyeup/stock"
)

// found replays a plan with single things put wrong and holds that the report speaks of each.
func found(t *testing.T, b season.Brief, plan *season.Plan, all []change) {
	t.Helper()
	courses := newCourses(&b)
	if r := courses.replay(plan); !r.OK() {
		t.Fatalf("the plan as it is: %v", r.Differences[0])
	}
	for _, change := range all {
		t.Run(change.name, func(t *testing.T) {
			changed := copyOf(plan)
			change.make(changed)
			told := slices.ContainsFunc(courses.replay(changed).Differences, func(d Difference) bool {
				return strings.HasPrefix(d.What, change.tells)
			})
			if !told {
				t.Errorf("the report says nothing of %s", change.tells)
			}
		})
	}
}

// ofWinter are figures of what is put away, cut and kept.
var ofWinter = []change{
	{"a clump more cut than told", "divided", func(p *season.Plan) { p.Dividing[0].Clumps++ }},
	{"a piece fewer", "divided", func(p *season.Plan) { p.Dividing[1].Pieces-- }},
	{"a lot that is cut left out", "lots divided", func(p *season.Plan) { p.Dividing = p.Dividing[1:] }},
	{"a lot of another name cut", "divided", func(p *season.Plan) { p.Dividing[0].Variety = "Slow Ferry" }},
	{"clumps that come through better", "divided in spring: come through", func(p *season.Plan) { p.Dividing[0].Spring.Through.Middle += 0.01 }},
	{"pieces that come through worse", "divided in autumn: come through", func(p *season.Plan) { p.Dividing[3].Autumn.Through.Low /= 2 }},
	{"a crate more for clumps", "divided in spring: crates", func(p *season.Plan) { p.Dividing[0].Spring.Crates++ }},
	{"a crate fewer for pieces", "divided in autumn: crates", func(p *season.Plan) { p.Dividing[0].Autumn.Crates-- }},
	{"packing for clumps in no packing", "divided in spring: packing", func(p *season.Plan) { p.Dividing[3].Spring.Packing = 4 }},
	{"less packing for pieces", "divided in autumn: packing", func(p *season.Plan) { p.Dividing[0].Autumn.Packing-- }},
	{"trays not counted in spring", "divided in spring: hours", func(p *season.Plan) { p.Dividing[0].Spring.Hours = p.Dividing[0].Autumn.Hours }},
	{"a minute more in autumn", "divided in autumn: hours", func(p *season.Plan) { p.Dividing[0].Autumn.Hours += 1.0 / 60 }},
	{"cut in the other season", "divided when", func(p *season.Plan) {
		p.Dividing[0].Choice = map[string]string{"spring": "autumn", "autumn": "spring"}[p.Dividing[0].Choice]
	}},
	{"stock that comes through better", "come through the store", func(p *season.Plan) { waits(p).Stored.Through.High *= 1.002 }},
	{"stock that dries less", "weight lost in store", func(p *season.Plan) { waits(p).Stored.LostPercent.Middle -= 0.1 }},
	{"wilted stock called firm", "state in store", func(p *season.Plan) { waits(p).Stored.State = "lost" }},
	{"nothing said of the store", "stored", func(p *season.Plan) { waits(p).Stored = nil }},
	{"a store said of seed", "stored", func(p *season.Plan) { p.Batches[0].Stored = &season.Stored{} }},
	{"packing for fewer clumps", "amount", func(p *season.Plan) { p.ToGet[len(p.ToGet)-1].Amount.High -= 2 }},
	{"seed too late", "to get by", func(p *season.Plan) { later(&p.ToGet[len(p.ToGet)-2].By) }},
	{"pots too late", "to get by", func(p *season.Plan) { later(&p.ToGet[1].By) }},
	{"packing too late", "to get by", func(p *season.Plan) { later(&p.ToGet[len(p.ToGet)-1].By) }},
	{"packing left out", "to get", func(p *season.Plan) { p.ToGet = p.ToGet[:len(p.ToGet)-1] }},
	{"crates said to lack that do not", "short of crates", func(p *season.Plan) {
		p.Shortfalls = append(p.Shortfalls, season.Shortfall{Of: "crates", Wanted: 60, There: 40, Short: 20})
	}},
}

// waits is the first batch of a plan that waits in a store whose air is known.
func waits(p *season.Plan) *season.BatchPlan {
	return &p.Batches[slices.IndexFunc(p.Batches, func(b season.BatchPlan) bool { return b.Stored != nil })]
}

// TestChangesOfWinterAreFound puts one figure of what is put away, cut and kept wrong at a time.
func TestChangesOfWinterAreFound(t *testing.T) {
	found(t, exampleBrief(t), earliest(t), ofWinter)
}

// scarce is the invented garden in twelve years with half of its room, few crates, one hour a week, and
// more corms wanted of a lot than are there, its benches to suffice in two years of five.
func scarce(t *testing.T) season.Brief {
	b := fewYears(inventedBrief(t))
	b.Given.Places, b.Given.Stock = slices.Clone(b.Given.Places), slices.Clone(b.Given.Stock)
	corms := slices.IndexFunc(b.Given.Stock, func(h stock.Holding) bool { return h.Form == stock.Corm })
	b.Given.Stock[corms].Plant = b.Given.Stock[corms].Count + 5
	for i := range b.Given.Places {
		b.Given.Places[i].Room, b.Given.Places[i].Lit = b.Given.Places[i].Room/2, b.Given.Places[i].Lit/2
		b.Given.Places[i].Crates /= 10
	}
	b.Given.HoursPerWeek, b.Asked.Fits, b.Asked.Unproved = 1, 0.4, true
	return b
}

// lack is what a plan says of the first thing of a sort that is short.
func lack(p *season.Plan, of string) *season.Shortfall {
	return &p.Shortfalls[slices.IndexFunc(p.Shortfalls, func(s season.Shortfall) bool { return s.Of == of })]
}

// ofLack are figures of what is short.
var ofLack = []change{
	{"a year fewer that fits", "years in which it fits", func(p *season.Plan) { p.FitsYears-- }},
	{"a year more asked", "years asked", func(p *season.Plan) { p.Asked++ }},
	{"the year after the worst", "worst year", func(p *season.Plan) { p.Worst.Year++ }},
	{"another bench in the worst year", "worst year", func(p *season.Plan) { p.Worst.Place += " under lamps" }},
	{"another week of the worst year", "worst year", func(p *season.Plan) { p.Worst.Week = p.PlantOutFrom.AddDays(70) }},
	{"less short in the worst year", "short in the worst year", func(p *season.Plan) { p.Worst.ShortM2 -= 0.02 }},
	{"no worst year", "worst year told", func(p *season.Plan) { p.Worst = nil }},
	{"a crate fewer wanted", "short of crates (wanted)", func(p *season.Plan) { lack(p, "crates").Wanted-- }},
	{"a crate more there", "short of crates (there)", func(p *season.Plan) { lack(p, "crates").There++ }},
	{"a crate fewer short", "short of crates", func(p *season.Plan) { lack(p, "crates").Short-- }},
	{"crates short a week late", "short of crates (week)", func(p *season.Plan) { later(&lack(p, "crates").Week) }},
	{"nothing said of crates", "short of crates", func(p *season.Plan) { lack(p, "crates").Of = "boxes" }},
	{"more room wanted in the patch", "short of room (wanted)", func(p *season.Plan) { lack(p, "room").Wanted += 0.02 }},
	{"the patch short a week late", "short of room (week)", func(p *season.Plan) { later(&lack(p, "room").Week) }},
	{"nothing said of the patch", "short of room", func(p *season.Plan) { lack(p, "room").Place = "cold frame" }},
	{"fewer hours short", "short of hands", func(p *season.Plan) { lack(p, "hands").Short -= 0.03 }},
	{"own hands that are not there", "short of hands (there)", func(p *season.Plan) { lack(p, "hands").There++ }},
	{"plants that are not there", "short of stock (there)", func(p *season.Plan) { lack(p, "stock").There++ }},
	{"plants short a week late", "short of stock (week)", func(p *season.Plan) { later(&lack(p, "stock").Week) }},
}

// TestChangesOfWhatIsShortAreFound puts one figure of what is short wrong at a time.
func TestChangesOfWhatIsShortAreFound(t *testing.T) {
	b := scarce(t)
	found(t, b, plansOf(t, b)[0], ofLack)
}
