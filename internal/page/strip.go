package page

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"eyeup/internal/desk"
)

// strip is the one ornament: the garden's own colours across the top of every page, each
// as wide as there is stock of it.
type strip struct {
	mu    sync.Mutex
	shelf *desk.Shelf
	drawn template.HTML
}

// mostColours keeps the strip light in a large collection.
const mostColours = 48

func (s *strip) of(d *desk.Desk) template.HTML {
	shelf := d.Shelf()
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.shelf != shelf {
		s.shelf, s.drawn = shelf, drawStrip(shelf)
	}
	return s.drawn
}

func drawStrip(shelf *desk.Shelf) template.HTML {
	var shown []desk.VarietyOnShelf
	for _, v := range shelf.Varieties {
		if isColour(v.Colour) {
			shown = append(shown, v)
		}
	}
	slices.SortStableFunc(shown, func(a, b desk.VarietyOnShelf) int { return cmp.Compare(b.Count, a.Count) })
	shown = shown[:min(len(shown), mostColours)]
	total := 0
	for _, v := range shown {
		total += v.Count
	}
	if total == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString(`<svg class="strip" viewBox="0 0 1000 10" preserveAspectRatio="none" aria-hidden="true">`)
	x := 0.0
	for _, v := range shown {
		wide := 1000 * float64(v.Count) / float64(total)
		fmt.Fprintf(&b, `<rect x="%.1f" width="%.1f" height="10" fill="%s"/>`, x, wide, v.Colour)
		x += wide
	}
	b.WriteString(`</svg>`)
	return template.HTML(b.String())
}
