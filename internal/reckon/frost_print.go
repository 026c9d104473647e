package reckon

import (
	"fmt"
	"io"
	"math"

	"eyeup/civil"
	"eyeup/frost"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *FrostAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", fmt.Sprintf("Freezes at %s, %d years, %d to %d", a.Station, a.Years, a.FirstYear, a.LastYear))
	p.Wrap("", fmt.Sprintf("A freeze is a low at or below %s.", units.FineTemperature(quantity.Celsius(a.Threshold))))
	p.Line("")
	p.Line("                   one year in ten   even odds   one year in ten")
	p.Line("                   is earlier                    is later")
	printFreezeRow(p, "last in spring", a.Spring.WhenInYear)
	printFreezeRow(p, "first in autumn", a.Autumn.WhenInYear)
	p.Line(fmt.Sprintf("%-19s%-18s%-12s%s", "days between", days(a.SeasonDays.Low), days(a.SeasonDays.Middle), days(a.SeasonDays.High)))
	p.Line("")
	for _, reason := range []string{a.Spring.Reason, a.Autumn.Reason} {
		if reason != "" {
			p.Wrap("  ", reason)
		}
	}
	printBounds(p, a.Spring)
	printPlantOut(p, a.PlantOut)
	if a.After != nil {
		printAfter(p, *a.After)
	}
	if a.Assumed {
		p.Wrap("", "The file does not say where the station lies; north of the equator is assumed. If that is wrong, give --lat.")
	}
	printLeftOut(p, a.LeftOut)
	p.Line("")
	p.Wrap("", a.Note)
}

func printFreezeRow(p *report.Page, name string, w civil.WhenInYear) {
	p.Line(fmt.Sprintf("%-19s%-18s%-12s%s", name, garden.DayOfYear(w.Early), garden.DayOfYear(w.Middle), garden.DayOfYear(w.Late)))
}

// printBounds prints the confidence interval of the late day of spring.
func printBounds(p *report.Page, d FreezeDates) {
	late := d.Bounds.Late
	if late == (frost.Bounds{}) || late.From.IsZero() || late.To.IsZero() {
		return
	}
	p.Wrap("", fmt.Sprintf("From %d springs alone, the day that one year in ten passes is uncertain: it lies between %s and %s with 80 %% confidence.",
		d.Years, garden.DayOfYear(late.From), garden.DayOfYear(late.To)))
}

// printPlantOut lists the days to plant out, then the reasons why others are missing.
func printPlantOut(p *report.Page, all []PlantOut) {
	p.Line("")
	p.Line("If planted out on        a later freeze comes")
	for _, o := range all {
		if !o.From.IsZero() {
			p.Line(fmt.Sprintf("  %-23sin %2.0f springs of 100", garden.DayOfYear(o.From), o.Risk.Percent()))
		}
	}
	for _, o := range all {
		if o.From.IsZero() {
			p.Wrap(fmt.Sprintf("  %2.0f springs of 100: ", o.Risk.Percent()), o.Reason)
		}
	}
}

func printAfter(p *report.Page, a FreezeAfter) {
	p.Line("")
	p.Wrap("", fmt.Sprintf("A freeze came later than %s in %d of %d springs; the true odds lie between %.0f and %.0f in 100, with 80 %% confidence.",
		garden.DayOfYear(a.Day), a.Later, a.Springs, 100*a.Interval.From, 100*a.Interval.To))
}

// printLeftOut names at most four years that were left out.
func printLeftOut(p *report.Page, all []LeftOutYear) {
	const most = 4
	if len(all) == 0 {
		return
	}
	p.Line("")
	p.Line("Left out, wholly or in part:")
	for i, y := range all {
		if i == most {
			p.Line(fmt.Sprintf("  and %d more years; --json has them all", len(all)-most))
			break
		}
		p.Wrap(fmt.Sprintf("  %d: ", y.Year), y.Why)
	}
}

// days writes a number of days, and an infinite one in words.
func days(x float64) string {
	switch {
	case math.IsInf(x, 1):
		return "no end"
	case math.IsNaN(x):
		return "–"
	}
	return fmt.Sprintf("%.0f", x)
}
