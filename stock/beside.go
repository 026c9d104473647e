package stock

import (
	"fmt"
	"strconv"
	"strings"
)

// beside adds the lots that stood in the same crate or bed at the same time.
func (k *kinship) beside(l int32) {
	b := k.book
	var own []int32
	for _, h := range b.holdingsOf(l) {
		if s := b.spots[b.holdings[h].spot]; s.Crate != "" || s.Bed != "" {
			own = append(own, h)
		}
	}
	if len(own) == 0 {
		return
	}
	near := k.nearSpots(own)
	times := b.times(func(h int32) bool { _, is := near[b.holdings[h].spot]; return is })
	for h := range b.holdings {
		spot := b.holdings[h].spot
		if _, is := near[spot]; !is || b.holdings[h].lot == l {
			continue
		}
		for _, o := range own {
			why := beside(b.spots[b.holdings[o].spot], b.spots[spot])
			if from, to, met := meet(times[o], times[int32(h)]); met && why != "" {
				k.add(b.holdings[h].lot, Side, fmt.Sprintf("%s, %s to %s", why, from, to))
			}
		}
	}
}

// nearSpots returns the spots that share a crate or a bed with one of the holdings.
func (k *kinship) nearSpots(own []int32) map[int32]bool {
	b := k.book
	near := map[int32]bool{}
	for i, s := range b.spots {
		for _, o := range own {
			if beside(b.spots[b.holdings[o].spot], s) != "" {
				near[int32(i)] = true
			}
		}
	}
	return near
}

// beside says how near two spots are; empty if they share no crate and no bed.
func beside(s, t Spot) string {
	switch {
	case s.Place != t.Place:
		return ""
	case s.Crate != "" && s.Crate == t.Crate:
		return "in the same crate, " + s.Place + " " + s.Crate
	case s.Bed == "" || s.Bed != t.Bed:
		return ""
	case s.Row != "" && s.Row == t.Row:
		return "in the same row, " + s.Place + " bed " + s.Bed + " row " + s.Row
	case neighbours(s.Row, t.Row):
		return "in the next row, " + s.Place + " bed " + s.Bed + " row " + t.Row
	}
	return "in the same bed, " + s.Place + " bed " + s.Bed
}

func neighbours(r, q string) bool {
	a, err1 := strconv.Atoi(strings.TrimSpace(r))
	b, err2 := strconv.Atoi(strings.TrimSpace(q))
	return err1 == nil && err2 == nil && (a-b == 1 || b-a == 1)
}
