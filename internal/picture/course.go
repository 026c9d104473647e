package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
)

// Season is the input of Draw.
type Season struct {
	Garden string
	Plan   *season.Plan
	Frost  []season.FrostWeek
	Early  []season.EarlyPoint // drawn below if there are two or more
	Units  quantity.System
	Today  civil.Date
	MadeUp bool // the weather was made up
}

// Measures of the drawing, in pixels.
const (
	left      = 6.0
	right     = width - 6
	bandGap   = 15.0
	bandTall  = 62.0
	storeTall = 26.0
	groundFit = 104.0
	benchTall = 42.0
	forNames  = 0.34 // of the weeks shown is left free for names
	turn      = 6.0  // half the width of a ribbon's bend from band to band
	thinnest  = 2.2
)

// course is the layout of the course of a season.
type course struct {
	*drawing
	Season
	first, last civil.Date
	bands       []*band
	ribbons     []*ribbon
}

// band is one place across the weeks.
type band struct {
	season.PlacePlan
	y, tall float64
	room    float64 // m² that fill the band; 0 if the place has no bench
	taken   []slot
}

// slot is the part of a band that a ribbon occupies for some days.
type slot struct{ from, to, y, tall float64 }

// ribbon is a group of batches of one kind and timing with the same stays.
type ribbon struct {
	name   string
	colour string
	count  int
	stays  []season.Stay
	dates  season.Dates
	laid   []slot // by stay: its slot; of height 0 if it has none
	end    slot   // its last
}

// Draw returns the drawing of a plan: the course of the season, and below it how full each
// bench is, week by week.
func Draw(s Season) []byte {
	c := &course{Season: s}
	c.gather()
	c.span()
	height := c.layOut()
	benches := c.benches()
	total := height + 34 + float64(len(benches))*(benchTall+16) + 16
	if len(c.Early) > 1 {
		total += earlyTall
	}
	c.drawing = begin(total, fmt.Sprintf("%s: the course of the season, %s", s.Garden, s.Plan.Name), c.describe())
	c.head()
	c.months(height)
	for _, b := range c.bands {
		c.band(b)
	}
	c.place()
	for _, b := range c.bands {
		c.words(b)
	}
	c.names()
	c.fills(height+24, benches)
	if len(c.Early) > 1 {
		c.early(total - earlyTall + 8)
	}
	return c.end()
}

// gather groups batches into ribbons.
func (c *course) gather() {
	for _, b := range c.Plan.Batches {
		name := b.Kind
		if b.Timing != "" {
			name += ", " + b.Timing
		}
		at := slices.IndexFunc(c.ribbons, func(r *ribbon) bool {
			return r.name == name && r.dates.Start == b.Dates.Start && sameWay(r.stays, b.Stays)
		})
		if at < 0 {
			c.ribbons = append(c.ribbons, &ribbon{name: name, colour: cmp.Or(b.Colour, "#9a948a"), stays: slices.Clone(b.Stays), count: b.Count, dates: b.Dates})
			continue
		}
		r := c.ribbons[at]
		r.count += b.Count
		for i := range r.stays {
			r.stays[i].AreaM2 += b.Stays[i].AreaM2
		}
	}
	slices.SortStableFunc(c.ribbons, func(a, b *ribbon) int {
		return cmp.Or(cmp.Compare(a.dates.Start.String(), b.dates.Start.String()), cmp.Compare(a.name, b.name))
	})
}

func sameWay(a, b []season.Stay) bool {
	return slices.EqualFunc(a, b, func(a, b season.Stay) bool { return a.Place == b.Place && a.From == b.From && a.To == b.To })
}

// span chooses the weeks to show: from a fortnight before the first start to a fortnight
// after the last flower's end.
func (c *course) span() {
	for _, r := range c.ribbons {
		for _, s := range r.stays {
			if c.first.IsZero() || s.From.Before(c.first) {
				c.first = s.From
			}
			if s.To.After(c.last) {
				c.last = s.To
			}
		}
	}
	c.first = c.first.AddDays(-14).Monday()
	c.last = c.last.AddDays(civil.Days(float64(c.last.Sub(c.first)) * forNames))
}

// x returns the horizontal position of a day.
func (c *course) x(d civil.Date) float64 {
	share := float64(d.Sub(c.first)) / float64(c.last.Sub(c.first))
	return left + (right-left)*min(max(share, 0), 1)
}

// order is the order of the bands, from dark and cool places down to the open ground.
var order = []string{"store", "room", "bench", "glass", "frame", "ground"}

// layOut gives every used place its band and returns the bottom of the last one.
func (c *course) layOut() float64 {
	y := 74.0
	for _, sort := range order {
		for _, p := range c.Plan.Places {
			if p.Sort != sort || !c.isUsed(p) {
				continue
			}
			b := &band{PlacePlan: p, y: y, tall: bandTall, room: p.Weeks[0].RoomM2}
			switch {
			case sort == "store":
				b.tall = storeTall
			case sort == "ground":
				b.tall = max(groundFit, labelTall*float64(len(c.ribbons)+1)) // their names stand in it
				b.room = max(b.room, c.wanted(p.Place))
			}
			c.bands = append(c.bands, b)
			y += b.tall + bandGap
		}
	}
	return y
}

// wanted returns the area that all ribbons in a place need together. In the ground, where all
// end up, it may exceed the area.
func (c *course) wanted(place string) float64 {
	area := 0.0
	for _, r := range c.ribbons {
		for _, s := range r.stays {
			if s.Place == place {
				area += s.AreaM2
			}
		}
	}
	return area
}

func (c *course) isUsed(p season.PlacePlan) bool {
	if p.Sort == "store" {
		return false // what waits there takes no bench; ribbons begin where they are started
	}
	for _, r := range c.ribbons {
		if slices.ContainsFunc(r.stays, func(s season.Stay) bool { return s.Place == p.Place }) {
			return true
		}
	}
	return false
}

func (c *course) describe() string {
	return fmt.Sprintf("Weeks run across. Each band is a place; each ribbon a group of plants, the thicker the more of the bench it takes, bending to the next place when it is handed on. %d plants in %d groups.", c.plants(), len(c.ribbons))
}

func (c *course) plants() int {
	n := 0
	for _, r := range c.ribbons {
		n += r.count
	}
	return n
}

func (c *course) head() {
	c.text(left, 18, c.Garden+": "+c.Plan.Name, "class", "head")
	when := c.Plan.FirstFlower
	c.text(left, 34, fmt.Sprintf("first flower %s, %.1f weeks gained, %.0f %s in all", day(when.Middle), c.Plan.GainWeeks.Middle, c.Plan.Cost.Total, c.Plan.Cost.Currency))
	if c.MadeUp {
		c.text(left, 48, "weather made up from monthly normals", "class", "small")
	}
}

// months marks the start of each month.
func (c *course) months(bottom float64) {
	d := c.first
	for d = d.AddDays(1); !d.After(c.last); d = d.AddDays(1) {
		if d.Day() != 1 {
			continue
		}
		x := c.x(d)
		c.tag("path", "class", "line", "d", fmt.Sprintf("M%s 62V%s", number(x), number(bottom-bandGap)))
		if x < right-20 {
			c.text(x+2, 60, d.Month().String()[:3], "class", "small")
		}
	}
}

// band draws one place.
func (c *course) band(b *band) {
	c.titled(b.Place, func() {
		c.tag("rect", "class", "band", "x", left, "y", b.y, "width", right-left, "height", b.tall)
		if b.Sort == "ground" {
			c.frost(b)
		}
	})
}

// words writes the description of a place above its ribbons.
func (c *course) words(b *band) {
	words := b.Place
	switch {
	case b.IsHeld():
		words += fmt.Sprintf(", held at %s %s to %s", c.Units.Temperature(b.Level), day(b.HeatedFrom), day(b.HeatedTo))
		if b.Then != nil {
			words += fmt.Sprintf("; %s from %s", c.Units.Temperature(b.Then.Level), day(b.Then.From))
		}
	case b.Heat != nil:
		words += fmt.Sprintf(", heated %s to %s", day(b.HeatedFrom), day(b.HeatedTo))
	case b.Sort == "glass":
		words += ", not heated"
	case b.Sort == "ground":
		words += "; shaded: odds of frost"
	}
	c.text(left, b.y-3, words, "class", "halo")
	if b.Heat != nil {
		c.bills(b)
	}
}

// frost shades the ground by the share of years with a freeze in each week.
func (c *course) frost(b *band) {
	for _, w := range c.Frost {
		if w.Share == 0 || w.Week.Before(c.first) || w.Week.After(c.last) {
			continue
		}
		from, to := c.x(w.Week), c.x(w.Week.AddDays(civil.Week))
		c.tag("rect", "class", "frost", "x", from, "y", b.y, "width", to-from, "height", b.tall, "opacity", fmt.Sprintf("%.2f", 0.75*w.Share))
	}
}

// apart is the smallest distance between the figures of heat bills, in pixels.
const apart = 24.0

// bills writes the heat bill of some weeks along the band's foot.
func (c *course) bills(b *band) {
	var weeks []season.PlaceWeek
	for _, w := range b.Weeks {
		if w.Cost != nil && w.Cost.Middle >= 0.5 {
			weeks = append(weeks, w)
		}
	}
	week := c.x(c.first.AddDays(civil.Week)) - c.x(c.first)
	every := int(math.Ceil(apart / week))
	for i, w := range weeks {
		if i%every == 0 {
			c.text(c.x(w.Week), b.y+b.tall-3, fmt.Sprintf("%.0f", w.Cost.Middle), "class", "small halo")
		}
	}
	if len(weeks) > 0 {
		c.text(right-3, b.y+b.tall-3, c.Plan.Cost.Currency+" of heat a week", "class", "small end halo")
	}
}

// day writes a date as the drawing shows it.
func day(d civil.Date) string {
	if d.IsZero() {
		return "never"
	}
	return fmt.Sprintf("%d %s", d.Day(), d.Month().String()[:3])
}
