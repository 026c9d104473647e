package paper

import (
	"fmt"
	"slices"

	"eyeup/internal/exchange"
	"eyeup/internal/planting"
	"eyeup/internal/reckon"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// round makes the round sheet: what to look at when you go through the stores.
func (l *lister) round() (*listed, error) {
	var crates []sheet.RoundCrate
	lots := 0
	for _, h := range byCrate(l.garden.Stock) {
		if p, known := l.garden.Place(h.Place); !known || p.Sort != exchange.Store || h.Form == stock.Seed {
			continue
		}
		if n := len(crates); n == 0 || crates[n-1].Place != h.Place || crates[n-1].Crate != h.Crate {
			crates = append(crates, sheet.RoundCrate{Place: h.Place, Crate: h.Crate})
		}
		crate := &crates[len(crates)-1]
		crate.Lots = append(crate.Lots, sheet.RoundLot{
			Code: h.Code, Variety: h.Variety.Name, Colour: h.Variety.Colour, Form: plural(h.Count, string(h.Form)), Pack: h.Pack, Count: h.Count,
		})
		lots++
	}
	return &listed{sheet.Round(l.head("A crate packed damp is heavy: "+reckon.LiftCaution, "Dust and mould: wear gloves and a mask, and air the cellar. "+sprayCaution), crates), "round sheet", lots, "lots"}, nil
}

func plural(n int, one string) string {
	if n == 1 {
		return one
	}
	return one + "s"
}

// giving makes the list of what is left over to give away.
func (l *lister) giving() (*listed, error) {
	lines := givingLines(l.garden.Stock)
	basis := "The stock of today, less what is wanted for the patch and in reserve. Clumps count whole: divisions still to be made and losses in store are not counted."
	if l.Outlook != nil {
		lines = countedOn(l.Outlook, l.garden.Stock)
		basis = fmt.Sprintf("Good divisions and corms expected on %s, if all clumps are divided, less what is wanted for the patch and in reserve. First comes the number with even odds; in brackets, fewer in one case of ten to more in one of ten. %s", fmt.Sprintf("%s %d", report.ShortDate(l.Outlook.At), l.Outlook.At.Year()), l.Outlook.Note)
	}
	return &listed{sheet.Giving(l.head("Give away nothing that was marked sick or stood beside sick stock: disease spreads with stock. Tell people that tubers and bulbs can make pets ill."), lines, basis), "giving list", len(lines), "varieties"}, nil
}

// countedOn lists the varieties of which some are expected to be left over at even odds.
func countedOn(o *stockbook.OutlookAnswer, all []stock.Holding) []sheet.GivingLine {
	held := planting.Sorts(all)
	var lines []sheet.GivingLine
	for _, v := range o.Varieties {
		over := func(good float64) int { return max(0, int(good)-v.Wanted) }
		at := slices.IndexFunc(held, func(s planting.SortOf) bool { return s.Name == v.Variety && s.Kind == v.Kind })
		if at < 0 || v.Why != "" || over(v.Good.Middle) == 0 {
			continue
		}
		s := held[at]
		plant, reserve := s.Wanted()
		lines = append(lines, sheet.GivingLine{
			Variety: s.Name, Kind: s.Kind, Colour: s.Colour, Have: report.Counted(v.Clumps+v.Others, string(s.Holdings[0].Form)),
			Patch: fmt.Sprint(plant), Reserve: fmt.Sprint(reserve), Note: s.Holdings[0].Note,
			Over: fmt.Sprintf("%d (%d to %d)", over(v.Good.Middle), over(v.Good.Low), over(v.Good.High)),
		})
	}
	return lines
}

// givingLines lists the varieties of which more is in stock than is wanted.
func givingLines(all []stock.Holding) []sheet.GivingLine {
	var lines []sheet.GivingLine
	for _, s := range planting.Sorts(all) {
		if s.Holdings[0].Form == stock.Seed {
			continue // packets are not counted in plants
		}
		have := count(s.Holdings)
		plant, reserve := s.Wanted()
		over := have - plant - reserve
		if over <= 0 {
			continue
		}
		lines = append(lines, sheet.GivingLine{
			Variety: s.Name, Kind: s.Kind, Colour: s.Colour, Have: report.Counted(have, string(s.Holdings[0].Form)),
			Patch: fmt.Sprint(plant), Reserve: fmt.Sprint(reserve), Over: fmt.Sprint(over), Note: s.Holdings[0].Note,
		})
	}
	return lines
}
