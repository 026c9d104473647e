package desk

import (
	"fmt"
	"io"
	"math"

	"eyeup/civil"
	"eyeup/frost"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *FrostAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w}
	p.wrap("", fmt.Sprintf("Freezes at %s, %d years, %d to %d", a.Station, a.Years, a.FirstYear, a.LastYear))
	p.wrap("", fmt.Sprintf("A freeze is a low at or below %s.", units.FineTemperature(quantity.Celsius(a.Threshold))))
	p.line("")
	p.line("                   one year in ten   even odds   one year in ten")
	p.line("                   is earlier                    is later")
	p.freezeRow("last in spring", a.Spring.WhenInYear)
	p.freezeRow("first in autumn", a.Autumn.WhenInYear)
	p.line(fmt.Sprintf("%-19s%-18s%-12s%s", "days between", days(a.SeasonDays.Low), days(a.SeasonDays.Middle), days(a.SeasonDays.High)))
	p.line("")
	for _, reason := range []string{a.Spring.Reason, a.Autumn.Reason} {
		if reason != "" {
			p.wrap("  ", reason)
		}
	}
	p.bounds(a.Spring)
	p.plantOut(a.PlantOut)
	if a.After != nil {
		p.after(*a.After)
	}
	if a.Assumed {
		p.wrap("", "The file does not say where the station lies; it is taken to be north of the equator. Say --lat where it is not.")
	}
	p.leftOut(a.LeftOut)
	p.line("")
	p.wrap("", a.Note)
}

func (p *page) freezeRow(name string, w civil.WhenInYear) {
	p.line(fmt.Sprintf("%-19s%-18s%-12s%s", name, dayOfYear(w.Early), dayOfYear(w.Middle), dayOfYear(w.Late)))
}

// bounds says how sure the spring's late day is.
func (p *page) bounds(d FreezeDates) {
	late := d.Bounds.Late
	if late == (frost.Bounds{}) || late.From.IsZero() || late.To.IsZero() {
		return
	}
	p.wrap("", fmt.Sprintf("%d springs are few: the later day of spring lies between %s and %s, four times in five.",
		d.Years, dayOfYear(late.From), dayOfYear(late.To)))
}

// plantOut lists the days, then what stands in place of those there are not.
func (p *page) plantOut(all []PlantOut) {
	p.line("")
	p.line("Planted out on this day  a freeze comes yet")
	for _, o := range all {
		if !o.From.IsZero() {
			p.line(fmt.Sprintf("  %-23sin %2.0f springs of 100", dayOfYear(o.From), o.Risk.Percent()))
		}
	}
	for _, o := range all {
		if o.From.IsZero() {
			p.wrap(fmt.Sprintf("  %2.0f springs of 100: ", o.Risk.Percent()), o.Reason)
		}
	}
}

func (p *page) after(a FreezeAfter) {
	p.line("")
	p.wrap("", fmt.Sprintf("A freeze came later than %s in %d of %d springs; the true odds lie between %.0f and %.0f in 100, four times in five.",
		dayOfYear(a.Day), a.Later, a.Springs, 100*a.Interval.From, 100*a.Interval.To))
}

// leftOut names at most four years that were left out.
func (p *page) leftOut(all []LeftOutYear) {
	const most = 4
	if len(all) == 0 {
		return
	}
	p.line("")
	p.line("Left out, wholly or in part:")
	for i, y := range all {
		if i == most {
			p.line(fmt.Sprintf("  and %d more years; --json has them all", len(all)-most))
			break
		}
		p.wrap(fmt.Sprintf("  %d: ", y.Year), y.Why)
	}
}

// days writes a number of days; an endless one as a word.
func days(x float64) string {
	switch {
	case math.IsInf(x, 1):
		return "no end"
	case math.IsNaN(x):
		return "–"
	}
	return fmt.Sprintf("%.0f", x)
}
