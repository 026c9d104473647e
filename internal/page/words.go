package page

import (
	"fmt"
	"html/template"
	"maps"
	"math"
	"net/url"
	"reflect"
	"strings"
	"time"

	"eyeup/internal/plans"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// words are the functions of the templates, for one display.
func words(t display) template.FuncMap {
	return template.FuncMap{
		"addressof":  addressOf,
		"day":        t.day,
		"date":       t.date,
		"md":         t.monthDay,
		"when":       t.when,
		"years":      t.years,
		"month":      t.month,
		"temp":       func(c float64) string { return t.Units.Temperature(quantity.Celsius(c)) },
		"warmth":     t.warmth,
		"spread":     t.temperatures,
		"reach":      t.reach,
		"heatcost":   plans.HeatCost,
		"lightcost":  plans.LightCost,
		"short":      func(s season.Shortfall) string { return plans.ShortWords(s, t.Units) },
		"noroom":     func(c *season.Crowded) string { return plans.NoRoomWords(c, t.Units, t.day(c.Week)) },
		"area":       func(m2 float64) string { return t.Units.Area(quantity.Area(m2)) },
		"amount":     amount,
		"isKnown":    func(a odds.Amount) bool { return !math.IsNaN(a.Middle) },
		"figure":     figure,
		"money":      money,
		"percent":    percent,
		"inTen":      inTen,
		"count":      count,
		"many":       many,
		"upper":      upper,
		"address":    address,
		"swatch":     swatch,
		"spot":       spotWords,
		"path":       url.PathEscape,
		"dash":       func(s string) string { return strings.ReplaceAll(s, " ", "-") },
		"hours":      hours,
		"join":       func(all []string) string { return strings.Join(all, ", ") },
		"isUS":       func() bool { return t.Units == quantity.US },
		"degree":     t.degree,
		"m2":         func(a quantity.Area) float64 { return float64(a) },
		"power":      func(p quantity.Power) string { return t.Units.HeaterPower(p) },
		"kelvin":     func(k float64) string { return t.Units.Difference(quantity.Difference(k)) },
		"difference": func(k float64) string { return t.Units.Difference(quantity.Difference(k)) },
		"height":     func(l quantity.Length) string { return t.Units.Height(l) },
		"deref":      func(x *float64) float64 { return *x },
		"over":       over,
		"signed":     signed,
		"things":     things,
		"growing":    plans.GrowingWords,
		"days":       func(days float64) string { return things(int(math.Round(days)), "day", "days") },
		"why":        why,
		"first":      first,
		"sourced":    sourced,
		"list":       func(all ...string) []string { return all },
		"add":        func(a, b int) int { return a + b },
		"spotfields": spotFields,
		"form":       func(s string) stock.Form { return stock.Form(s) },
	}
}

// warmth says a temperature that may not be known.
func (t display) warmth(c *float64) string {
	if c == nil {
		return "not known"
	}
	return t.Units.Temperature(quantity.Celsius(*c))
}

// temperatures says a spread of temperatures, °C.
func (t display) temperatures(a odds.Amount) string {
	if t.Units.Temperature(quantity.Celsius(a.Low)) == t.Units.Temperature(quantity.Celsius(a.High)) {
		return t.Units.Temperature(quantity.Celsius(a.Middle))
	}
	return fmt.Sprintf("%s (%s to %s)", t.Units.Temperature(quantity.Celsius(a.Middle)),
		t.Units.Temperature(quantity.Celsius(a.Low)), t.Units.Temperature(quantity.Celsius(a.High)))
}

// reach says how far temperatures reach, °C, with the unit once; empty if both ends are the same.
func (t display) reach(a odds.Amount) string {
	low, high := t.Units.Temperature(quantity.Celsius(a.Low)), t.Units.Temperature(quantity.Celsius(a.High))
	if low == high {
		return ""
	}
	figure, _, _ := strings.Cut(low, " ")
	return figure + " to " + unbroken(high)
}

// degree is the letter of the temperature unit, for a field that names its unit.
func (t display) degree() string {
	if t.Units == quantity.US {
		return "F"
	}
	return "C"
}

// amount says a figure with its spread, to a number of decimals.
func amount(a odds.Amount, decimals int) string {
	if a.Low == a.High {
		return figure(a.Middle, decimals)
	}
	return fmt.Sprintf("%s (%s to %s)", figure(a.Middle, decimals), figure(a.Low, decimals), figure(a.High, decimals))
}

func figure(x float64, decimals int) string {
	switch {
	case math.IsNaN(x):
		return "not known"
	case math.IsInf(x, 0):
		return "never"
	}
	if math.Abs(x) < math.Pow(10, -float64(decimals))/2 {
		x = 0 // no minus zero
	}
	return fmt.Sprintf("%.*f", decimals, x)
}

func money(x float64, currency string) string { return figure(x, 2) + " " + currency }

func percent(share any) string {
	switch s := share.(type) {
	case float64:
		return fmt.Sprintf("%.0f %%", 100*s)
	case quantity.Share:
		return fmt.Sprintf("%.0f %%", s.Percent())
	}
	return fmt.Sprint(share)
}

// inTen says a share in years of a hundred.
func inTen(share quantity.Share) string {
	switch {
	case math.IsNaN(float64(share)):
		return "not known"
	case share == 0:
		return "no year of the record"
	case share == 1:
		return "every year of the record"
	}
	return fmt.Sprintf("%.0f years in a hundred", 100*float64(share))
}

// count says so many of a form.
func count(n int, form stock.Form) string {
	if n == 1 {
		if form == stock.Seed {
			return "1 packet of seed"
		}
		return "1 " + string(form)
	}
	return fmt.Sprintf("%d %s", n, many(form))
}

func many(form stock.Form) string {
	if form == stock.Seed {
		return "packets of seed"
	}
	return string(form) + "s"
}

// upper begins a line with a capital.
func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// address is where a nav word leads.
func address(word string) string {
	if word == "this week" {
		return "/"
	}
	return "/" + word
}

// spotWords says where some stand, without their form.
func spotWords(s stock.Spot) string {
	s.Form = ""
	return s.String()
}

// hours says minutes of work.
func hours(minutes float64) string {
	d := time.Duration(math.Round(minutes)) * time.Minute
	switch h, m := int(d.Hours()), int(d.Minutes())%60; {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m)
	}
}

// swatch is a flower's own colour, outlined so that it shows in grey and on any paper.
func swatch(colour string) template.HTML {
	if !isColour(colour) {
		return `<svg class="swatch" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><circle class="none" cx="8" cy="8" r="7"/></svg>`
	}
	return template.HTML(`<svg class="swatch" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><circle cx="8" cy="8" r="7" fill="` + colour + `"/></svg>`)
}

// isColour reports whether a colour is written #rrggbb.
func isColour(s string) bool {
	return len(s) == 7 && s[0] == '#' && strings.Trim(s[1:], "0123456789abcdefABCDEF") == ""
}

// signed says a change, and no change as a dash.
func signed(n int) string {
	if n == 0 {
		return "–"
	}
	return fmt.Sprintf("%+d", n)
}

// things says so many of something.
func things(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// over says how many are spare or short.
func over(n int) string {
	switch {
	case n > 0:
		return fmt.Sprintf("%d spare", n)
	case n < 0:
		return fmt.Sprintf("%d short", -n)
	}
	return "–"
}

// spotFields are the fields by which a form names a spot.
func spotFields(s stock.Spot) map[string]string {
	all := map[string]string{"place": s.Place, "crate": s.Crate, "bed": s.Bed, "row": s.Row, "form": string(s.Form)}
	maps.DeleteFunc(all, func(_, said string) bool { return said == "" })
	return all
}

// first returns the first so many of a list, for templates: they would walk through all of it.
func first(most int, list any) any {
	all := reflect.ValueOf(list)
	return all.Slice(0, min(most, all.Len())).Interface()
}
