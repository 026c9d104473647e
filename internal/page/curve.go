package page

import (
	"fmt"
	"html"
	"html/template"
	"strings"

	"eyeup/internal/desk"
	"eyeup/internal/reckon"
	"eyeup/season"
)

// Measures of the drawings, in pixels of a small phone.
const (
	drawingWide = 366.0
	marginLeft  = 42.0
	marginRight = 10.0
)

// drawing is an SVG being written; its looks stand in the style sheet.
type drawing struct{ strings.Builder }

// begin opens a drawing: an img, or a group where it holds links.
func begin(class, role, title string, tall float64) *drawing {
	d := &drawing{}
	fmt.Fprintf(d, `<svg class="%s" viewBox="0 0 %.0f %.0f" role="%s" aria-label="%s">`, class, drawingWide, tall, role, html.EscapeString(title))
	return d
}

func (d *drawing) words(x, y float64, class, says string) {
	fmt.Fprintf(d, `<text class="%s" x="%.1f" y="%.1f">%s</text>`, class, x, y, html.EscapeString(says))
}

func (d *drawing) line(class string, x1, y1, x2, y2 float64) {
	fmt.Fprintf(d, `<path class="%s" d="M%.1f %.1fL%.1f %.1f"/>`, class, x1, y1, x2, y2)
}

func (d *drawing) end() template.HTML {
	d.WriteString("</svg>")
	return template.HTML(d.String())
}

// drawFrost draws how the odds of one more freeze fall through spring, with the range in
// which they may truly lie, and the day of planting out that is asked about.
func drawFrost(c desk.FrostCurve, a *reckon.FrostAnswer, t display) template.HTML {
	if len(c.Days) < 2 {
		return ""
	}
	const top, foot = 16.0, 186.0
	x := func(i int) float64 {
		return marginLeft + (drawingWide-marginLeft-marginRight)*float64(i)/float64(len(c.Days)-1)
	}
	y := func(share float64) float64 { return foot - (foot-top)*share }
	d := begin("drawn", "img", "The risk of one more freeze, day by day", 212)
	for _, share := range []float64{0, 0.1, 0.25, 0.5, 0.75, 1} {
		d.line("rule", marginLeft, y(share), drawingWide-marginRight, y(share))
		d.words(marginLeft-4, y(share)+4, "end", fmt.Sprintf("%.0f %%", 100*share))
	}
	var above, below, middle strings.Builder
	for i, day := range c.Days {
		fmt.Fprintf(&above, "%.1f %.1f ", x(i), y(day.Interval.To))
		j := len(c.Days) - 1 - i
		fmt.Fprintf(&below, "%.1f %.1f ", x(j), y(c.Days[j].Interval.From))
		if i > 0 {
			fmt.Fprintf(&middle, "H%.1f", x(i))
		}
		fmt.Fprintf(&middle, "V%.1f", y(float64(day.Share)))
		if day.Day.Day == 1 || i == 0 {
			d.line("rule", x(i), top, x(i), foot+4)
			d.words(x(i)+2, foot+16, "", t.monthDay(day.Day))
		}
	}
	fmt.Fprintf(d, `<path class="range" d="M%sL%sZ"/>`, above.String(), below.String())
	fmt.Fprintf(d, `<path class="curve" d="M%.1f %.1f%s"/>`, x(0), y(float64(c.Days[0].Share)), middle.String())
	d.asked(c, a, x, top, foot, t)
	return d.end()
}

// asked marks the day of planting out.
func (d *drawing) asked(c desk.FrostCurve, a *reckon.FrostAnswer, x func(int) float64, top, foot float64, t display) {
	if a.After == nil {
		return
	}
	for i, day := range c.Days {
		if day.Day != a.After.Day {
			continue
		}
		d.line("asked", x(i), top-4, x(i), foot+4)
		class, at := "strong", x(i)+4
		if x(i) > drawingWide*0.6 {
			class, at = "strong end", x(i)-4
		}
		d.words(at, top+4, class, fmt.Sprintf("%s: %s", t.monthDay(day.Day), percent(day.Share)))
	}
}

// drawBench draws how much of a place's bench is used, week by week, beside the space there is.
func drawBench(p *season.PlacePlan, t display) template.HTML {
	first, last, most := -1, -1, 0.0
	for i, w := range p.Weeks {
		most = max(most, w.UsedM2, w.RoomM2)
		if w.UsedM2 > 0 {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 || most == 0 {
		return ""
	}
	weeks := p.Weeks[max(0, first-2):min(len(p.Weeks), last+3)]
	const top, foot = 14.0, 124.0
	x := func(i int) float64 {
		return marginLeft + (drawingWide-marginLeft-marginRight)*float64(i)/float64(len(weeks))
	}
	y := func(area float64) float64 { return foot - (foot-top)*area/most }
	d := begin("drawn", "img", "Bench space used, week by week", 148)
	for i, w := range weeks {
		fmt.Fprintf(d, `<rect class="used" x="%.1f" y="%.1f" width="%.1f" height="%.1f"><title>%s</title></rect>`,
			x(i), y(w.UsedM2), max(1, x(i+1)-x(i)-1), foot-y(w.UsedM2), html.EscapeString("week of "+t.day(w.Week)+": "+t.areaWords(w.UsedM2)))
		if w.Week.Day() <= 7 {
			d.line("rule", x(i), foot, x(i), foot+5)
			d.words(x(i)+2, foot+16, "", w.Week.Month().String()[:3])
		}
	}
	d.line("room", marginLeft, y(weeks[0].RoomM2), drawingWide-marginRight, y(weeks[0].RoomM2))
	d.words(drawingWide-marginRight, y(weeks[0].RoomM2)-4, "end", "space: "+t.areaWords(weeks[0].RoomM2))
	return d.end()
}
