package season

import (
	"strings"
	"sync"
)

// Climates keeps what places were like in every year between seasons that are worked out
// of the same weather, places and figures of kinds, so that a change of stock, prices or
// risk need not run the places again. It may serve several at once. Its zero value is empty.
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

// kindNames tells which kinds a climate was reduced for, and in which order.
func (m *maker) kindNames() string {
	names := make([]string, len(m.kinds))
	for i, k := range m.kinds {
		names[i] = k.kind.Name
	}
	return strings.Join(names, ",")
}
