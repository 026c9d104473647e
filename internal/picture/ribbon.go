package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/season"
)

// place places every ribbon in its bands and draws it.
func (c *course) place() {
	for _, r := range c.ribbons {
		r.laid = make([]slot, len(r.stays))
	}
	for _, b := range c.bands {
		c.lay(b)
	}
	for _, r := range c.ribbons {
		slots := slices.DeleteFunc(slices.Clone(r.laid), func(s slot) bool { return s.tall == 0 })
		if len(slots) == 0 {
			continue
		}
		r.end = slots[len(slots)-1]
		c.titled(r.title(), func() {
			c.tag("path", "class", "ribbon", "fill", r.colour, "d", outline(slots))
		})
	}
}

// mostLaid is how often the ribbons of a band are laid out, each time thinner, until they fit.
const mostLaid = 20

// lay places the ribbons in a band, each in the highest free part. A ribbon has one thickness,
// that of its largest need, so that together they may exceed a bench that is large enough in
// every week. Then they are drawn thinner until they fit the band.
func (c *course) lay(b *band) {
	for range mostLaid {
		b.taken = nil
		for _, r := range c.ribbons {
			for i, s := range r.stays {
				if s.Place == b.Place && s.From.Before(s.To) {
					r.laid[i] = b.take(c.slotOf(b, s, i == 0))
				}
			}
		}
		foot := b.foot()
		if !b.suffices() || foot <= b.y+b.tall+1e-6 {
			return
		}
		b.room *= (foot - b.y) / b.tall
	}
}

// suffices reports whether the bench is large enough in every week.
func (b *band) suffices() bool {
	return !slices.ContainsFunc(b.Weeks, func(w season.PlaceWeek) bool { return w.UsedM2 > w.RoomM2+1e-6 })
}

// foot returns the lowest point of its ribbons.
func (b *band) foot() float64 {
	foot := b.y
	for _, s := range b.taken {
		foot = max(foot, s.y+s.tall)
	}
	return foot
}

func (c *course) slotOf(b *band, s season.Stay, first bool) slot {
	tall := thinnest
	if b.room > 0 {
		tall = max(thinnest, b.tall*s.AreaM2/b.room)
	}
	from := c.x(s.From)
	if !first {
		from += turn
	}
	return slot{from: from, to: max(from+1, c.x(s.To)-turn), tall: tall}
}

// take reserves the highest free part of the band for a slot. On a full bench the slot extends
// below the band, which shows that the bench is too small.
func (b *band) take(s slot) slot {
	y := b.y
	for again := true; again; {
		again = false
		for _, t := range b.taken {
			apart := s.to+2*turn <= t.from || t.to+2*turn <= s.from
			if !apart && y < t.y+t.tall-1e-9 && t.y < y+s.tall-1e-9 {
				y, again = t.y+t.tall, true
			}
		}
	}
	s.y = y
	b.taken = append(b.taken, s)
	return s
}

// outline returns the path around a ribbon: along the tops of its slots, with bends between,
// and back along their bottoms.
func outline(slots []slot) string {
	var there, back strings.Builder
	fmt.Fprintf(&there, "M%s %s", number(slots[0].from), number(slots[0].y))
	for i, s := range slots {
		if i > 0 {
			bend(&there, slots[i-1].to, slots[i-1].y, s.from, s.y)
		}
		fmt.Fprintf(&there, "H%s", number(s.to))
	}
	for i, s := range slices.Backward(slots) {
		foot := s.y + s.tall
		if i == len(slots)-1 {
			fmt.Fprintf(&back, "V%s", number(foot))
		}
		fmt.Fprintf(&back, "H%s", number(s.from))
		if i > 0 {
			bend(&back, s.from, foot, slots[i-1].to, slots[i-1].y+slots[i-1].tall)
		}
	}
	return there.String() + back.String() + "Z"
}

// bend curves from one level to another.
func bend(w *strings.Builder, x0, y0, x1, y1 float64) {
	middle := (x0 + x1) / 2
	fmt.Fprintf(w, "C%s %s %s %s %s %s", number(middle), number(y0), number(middle), number(y1), number(x1), number(y1))
}

func (r *ribbon) title() string {
	return fmt.Sprintf("%d %s: start %s, out %s, first flower %s (%s to %s)", r.count, r.name, day(r.dates.Start), day(r.dates.PlantOut.Middle),
		day(r.dates.FirstFlower.Middle), day(r.dates.FirstFlower.Early), day(r.dates.FirstFlower.Late))
}

// labelTall is the height of a line of small words.
const labelTall = 10.0

// names writes each ribbon's name beside its end, with a line to it where it had to be
// moved, and marks its first flower.
func (c *course) names() {
	ordered := slices.Clone(c.ribbons)
	slices.SortStableFunc(ordered, func(a, b *ribbon) int { return cmp.Compare(a.end.y, b.end.y) })
	used := math.Inf(-1)
	for _, r := range ordered {
		if r.end.tall == 0 {
			continue
		}
		middle := r.end.y + r.end.tall/2
		if first := r.dates.FirstFlower.Middle; !first.IsZero() && c.x(first) < r.end.to {
			c.tag("circle", "class", "ribbon", "fill", r.colour, "cx", c.x(first), "cy", middle, "r", 2.6)
		}
		y := max(middle, used+labelTall)
		used = y
		c.tag("path", "class", "line", "d", fmt.Sprintf("M%s %sL%s %s", number(r.end.to), number(middle), number(r.end.to+8), number(y)))
		c.text(r.end.to+10, y+3.3, fmt.Sprintf("%d %s", r.count, r.name), "class", "small halo")
	}
}
