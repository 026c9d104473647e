package desk

import (
	"fmt"
	"slices"

	"eyeup/internal/exchange"
	"eyeup/internal/sheet"
	"eyeup/stock"
)

// round makes the sheet for going through the stores.
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
	return &listed{sheet.Round(l.head("A crate packed damp is heavy: "+liftCaution, "Dust and mould: wear gloves and a mask, and air the cellar. "+sprayCaution), crates), "round sheet", lots, "lots"}, nil
}

func plural(n int, one string) string {
	if n == 1 {
		return one
	}
	return one + "s"
}

// giving makes what is over.
func (l *lister) giving() (*listed, error) {
	lines := givingLines(l.garden.Stock)
	basis := "Counted as the stock stands today, less what is wanted for the patch and kept in reserve. Clumps are counted whole: what dividing gives, and what storage may still take, is not in it."
	if l.Outlook != nil {
		lines = countedOn(l.Outlook, l.garden.Stock)
		basis = fmt.Sprintf("Good divisions and corms to count on at %s, were all clumps cut, less what is wanted for the patch and kept in reserve: even odds, and in brackets one in ten fewer to one in ten more. %s", fmt.Sprintf("%s %d", shortDate(l.Outlook.At), l.Outlook.At.Year()), l.Outlook.Note)
	}
	return &listed{sheet.Giving(l.head("Give nothing away that was marked sick or stood beside it: it spreads by stock. Say that tubers and bulbs can make pets ill."), lines, basis), "giving list", len(lines), "varieties"}, nil
}

// countedOn lists what is over of that which can be counted on, where even odds leave some.
func countedOn(o *OutlookAnswer, all []stock.Holding) []sheet.GivingLine {
	held := sorts(all)
	var lines []sheet.GivingLine
	for _, v := range o.Varieties {
		over := func(good float64) int { return max(0, int(good)-v.Wanted) }
		at := slices.IndexFunc(held, func(s sortOf) bool { return s.Name == v.Variety && s.Kind == v.Kind })
		if at < 0 || v.Why != "" || over(v.Good.Middle) == 0 {
			continue
		}
		s := held[at]
		plant, reserve := s.wanted()
		lines = append(lines, sheet.GivingLine{
			Variety: s.Name, Kind: s.Kind, Colour: s.Colour, Have: counted(v.Clumps+v.Others, string(s.holdings[0].Form)),
			Patch: fmt.Sprint(plant), Reserve: fmt.Sprint(reserve), Note: s.holdings[0].Note,
			Over: fmt.Sprintf("%d (%d to %d)", over(v.Good.Middle), over(v.Good.Low), over(v.Good.High)),
		})
	}
	return lines
}

// sortOf is a variety with all that the garden holds of it.
type sortOf struct {
	stock.Variety
	holdings []stock.Holding
}

// sorts gathers holdings by variety, in their order.
func sorts(all []stock.Holding) []sortOf {
	var found []sortOf
	for _, h := range all {
		at := slices.IndexFunc(found, func(s sortOf) bool { return s.Name == h.Variety.Name && s.Kind == h.Variety.Kind })
		if at < 0 {
			found, at = append(found, sortOf{Variety: h.Variety}), len(found)
		}
		found[at].holdings = append(found[at].holdings, h)
	}
	return found
}

// wanted returns what the patch and the reserve want of the variety.
func (s sortOf) wanted() (plant, reserve int) {
	for _, h := range s.holdings {
		plant, reserve = plant+h.Plant, reserve+h.Reserve
	}
	return plant, reserve
}

func givingLines(all []stock.Holding) []sheet.GivingLine {
	var lines []sheet.GivingLine
	for _, s := range sorts(all) {
		if s.holdings[0].Form == stock.Seed {
			continue // packets are not counted in plants
		}
		have := count(s.holdings)
		plant, reserve := s.wanted()
		over := have - plant - reserve
		if over <= 0 {
			continue
		}
		lines = append(lines, sheet.GivingLine{
			Variety: s.Name, Kind: s.Kind, Colour: s.Colour, Have: counted(have, string(s.holdings[0].Form)),
			Patch: fmt.Sprint(plant), Reserve: fmt.Sprint(reserve), Over: fmt.Sprint(over), Note: s.holdings[0].Note,
		})
	}
	return lines
}
