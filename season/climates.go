package season

import (
	"fmt"
	"strings"
	"sync"
)

// Climates keeps what places were like in every year between seasons, so that a change of
// stock, prices or risk need not run the places again. A climate is known again by the very
// hours it was run through, the place, its setting and the figures of the kinds: what differs
// in any of them is run anew. It may serve several at once. Its zero value is empty.
type Climates struct {
	mu  sync.Mutex
	all map[string]*climate
}

// mostClimates is how many are kept; beyond, all are forgotten and begun anew.
const mostClimates = 64

// kept returns the climate under a key, running it where it is not there yet.
func (c *Climates) kept(key string, run func() *climate) *climate {
	if c == nil {
		return run()
	}
	c.mu.Lock()
	known := c.all[key]
	c.mu.Unlock()
	if known != nil {
		return known
	}
	made := run()
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.all == nil || len(c.all) >= mostClimates {
		c.all = map[string]*climate{}
	}
	c.all[key] = made
	return made
}

// keyOf tells a climate from every other: the hours are told apart by where they lie, so
// they must not be changed once a season has been worked out of them.
func (m *maker) keyOf(at int, setting string) string {
	var key strings.Builder
	fmt.Fprintf(&key, "%p %d %+v %+v %q", m.Weather[0], len(m.Weather), m.Site, m.Places[at].Model, setting)
	for _, k := range m.kinds {
		fmt.Fprintf(&key, " %s %+v %+v %+v %+v", k.kind.Name, k.kind.Sprout, k.kind.Grow, k.kind.Light, k.kind.DayLength)
	}
	return key.String()
}
