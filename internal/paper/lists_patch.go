package paper

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/planting"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// outgoing is one variety that a plan moves out into the patch.
type outgoing struct {
	stock.Variety
	batch   season.BatchPlan
	count   int
	reserve int
	spacing float64 // from plant to plant, m; 0 where it is not known
}

// outgoings gathers the plan's batches by variety, sorted by kind, height (tall first) and name.
func (l *lister) outgoings() []outgoing {
	var all []outgoing
	held := planting.Sorts(l.garden.Stock)
	for _, b := range l.plan.Batches {
		at := slices.IndexFunc(all, func(o outgoing) bool { return o.Name == b.Variety && o.Kind == b.Kind })
		if at >= 0 {
			all[at].count += b.Count
			continue
		}
		o := outgoing{Variety: stock.Variety{Name: b.Variety, Kind: b.Kind, Colour: b.Colour}, batch: b, count: b.Count}
		if i := slices.IndexFunc(held, func(s planting.SortOf) bool { return s.Name == b.Variety && s.Kind == b.Kind }); i >= 0 {
			o.Variety = held[i].Variety
			_, o.reserve = held[i].Wanted()
		}
		if ground := b.Stays[len(b.Stays)-1]; ground.AreaM2 > 0 && b.Count > 0 {
			o.spacing = math.Sqrt(ground.AreaM2 / float64(b.Count))
		}
		all = append(all, o)
	}
	for _, g := range l.plan.Growing {
		all = l.goesOut(all, g, held)
	}
	slices.SortStableFunc(all, func(a, b outgoing) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(float64(b.Height), float64(a.Height)), cmp.Compare(a.Name, b.Name))
	})
	return all
}

// goesOut adds what is growing already, unless it is in open ground. It gets the spacing of its kind.
func (l *lister) goesOut(all []outgoing, g season.Growing, held []planting.SortOf) []outgoing {
	if at, known := l.garden.Place(g.Place); known && at.Sort == exchange.Ground {
		return all
	}
	if at := slices.IndexFunc(all, func(o outgoing) bool { return o.Name == g.Variety && o.Kind == g.Kind }); at >= 0 {
		all[at].count += g.Count
		return all
	}
	o := outgoing{Variety: stock.Variety{Name: g.Variety, Kind: g.Kind}, count: g.Count}
	day := l.plan.PlantOutFrom
	o.batch.Dates.PlantOut = civil.When{Early: day, Middle: day, Late: day}
	if i := slices.IndexFunc(held, func(s planting.SortOf) bool { return s.Name == g.Variety && s.Kind == g.Kind }); i >= 0 {
		o.Variety = held[i].Variety
		_, o.reserve = held[i].Wanted()
	}
	if i := slices.IndexFunc(all, func(other outgoing) bool { return other.Kind == g.Kind }); i >= 0 {
		o.spacing = all[i].spacing
	}
	return append(all, o)
}

// planting writes the planting list and the plan of the rows.
func (l *lister) planting(w io.Writer) (*report.WrittenAnswer, error) {
	all := l.outgoings()
	var lines []sheet.PlantingLine
	plants := 0
	for _, o := range all {
		lines = append(lines, sheet.PlantingLine{
			Variety: o.Name, Kind: o.Kind, Colour: o.Colour, Height: l.tall(o.Height), Count: o.count, Reserve: o.reserve, When: when(o.batch.Dates.PlantOut),
		})
		plants += o.count
	}
	plan := fmt.Sprintf("Rows of %s. Each kind has rows of its own, at its own spacing, tall sorts first. Put row 1 where it shades no other row.", l.Units.Length(l.Row))
	told, err := sheet.Planting(w, l.head(knifeCaution), lines, patchRows(all, l.Row), plan)
	if err != nil {
		return nil, err
	}
	return written("planting list", plants, "plants", told), nil
}

// tall writes a height in whole inches or centimetres; nobody knows it more exactly.
func (l *lister) tall(height quantity.Length) string {
	switch {
	case height == 0:
		return ""
	case l.Units == quantity.US:
		return fmt.Sprintf("%.0f in", float64(height/quantity.Inch))
	}
	return fmt.Sprintf("%.0f cm", float64(height/quantity.Centimetre))
}

// patchRows divides the plants into rows of a length, kind by kind.
func patchRows(all []outgoing, length quantity.Length) []sheet.PatchRow {
	var rows []sheet.PatchRow
	kind, free := "", 0
	for _, o := range all {
		if o.spacing == 0 || length <= 0 {
			continue
		}
		places := max(1, int(float64(length)/o.spacing+1e-9))
		if o.Kind != kind {
			kind, free = o.Kind, 0
		}
		for left := o.count; left > 0; {
			if free == 0 {
				rows, free = append(rows, sheet.PatchRow{Places: places}), places
			}
			n := min(left, free)
			row := &rows[len(rows)-1]
			row.Parts = append(row.Parts, sheet.PatchPart{Variety: o.Name, Colour: o.Colour, Count: n})
			left, free = left-n, free-n
		}
	}
	return rows
}

// tags makes the list for checking that plants are true to name, and tagging them, before frost.
func (l *lister) tags() (*listed, error) {
	var lines []sheet.TagLine
	for _, b := range l.plan.Batches {
		if b.Form == string(stock.Seed) {
			continue // sown anew each year
		}
		if at := slices.IndexFunc(lines, func(t sheet.TagLine) bool { return b.Code != "" && t.Code == b.Code }); at >= 0 {
			lines[at].Count += b.Count
			continue
		}
		line := sheet.TagLine{Code: b.Code, Variety: b.Variety, Colour: b.Colour, Count: b.Count}
		for _, h := range l.garden.Stock {
			if h.Variety.Name == b.Variety && h.Variety.Kind == b.Kind && h.Variety.Height > 0 {
				line.Height = l.tall(h.Variety.Height)
				break
			}
		}
		lines = append(lines, line)
	}
	slices.SortStableFunc(lines, func(a, b sheet.TagLine) int { return cmp.Compare(a.Variety, b.Variety) })
	return &listed{sheet.Tags(l.head(knifeCaution), lines), "tag list", len(lines), "lots"}, nil
}
