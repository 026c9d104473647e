package patch

import "math"

// Hand is the use of a variety's stock under a list.
type Hand struct {
	Reserve int // plants kept back
	Cut     int // clumps to cut, so that there are enough in nine cases of ten; all if that is not enough
	Over    int // surplus plants in nine cases of ten, if all clumps were cut
	Clumps  int // clumps of that surplus that need not be cut
	Short   int // plants to acquire, in nine cases of ten
	Sown    bool
}

// Hand returns the use of the stock of the i-th variety of the brief. Varieties that can be
// raised in any number, from seed, are neither surplus nor short.
func (l *List) Hand(i int) Hand {
	v, places := &l.s.b.Varieties[i], l.Places[i]
	sure, known := v.sure()
	if !known {
		return Hand{Reserve: v.Reserve, Sown: true}
	}
	need := places + v.Reserve
	h := Hand{Reserve: min(v.Reserve, max(0, sure-places)), Over: max(0, sure-need), Short: v.short(places)}
	if v.Clumps > 0 {
		each := (float64(sure) - float64(v.Whole)) / float64(v.Clumps)
		lacking := float64(need - v.Whole)
		if lacking > 0 && each > 0 {
			h.Cut = min(v.Clumps, int(math.Ceil(lacking/each-1e-9)))
		} else if lacking > 0 {
			h.Cut = v.Clumps
		}
		h.Clumps = v.Clumps - h.Cut
	}
	return h
}

// Ways to acquire missing plants.
const (
	Strike = "strike cuttings, or buy"
	Buy    = "buy"
)

// Get returns the way to acquire the i-th variety if it is short.
func (l *List) Get(i int) string {
	if v := &l.s.b.Varieties[i]; v.Strike && v.Clumps+v.Whole > 0 {
		return Strike
	}
	return Buy
}

// Found is how a list meets one share of a mix.
type Found struct {
	Mix       Mix
	Name      string
	Places    int
	Of        int     // places of the kind
	Low, High float64 // the range of shares that costs nothing
	Nobody    bool    // no variety belongs to the part
	Outside   float64 // places above the range; negative: below
}

// Mixed returns how the list meets every share of every mix, in the order of the brief.
func (l *List) Mixed() []Found {
	var all []Found
	for m, mix := range l.s.b.Mixes {
		for _, w := range mix.Want {
			f := Found{Mix: mix, Name: w.Name, Of: l.s.inMix[m], Low: max(0, float64(w.Of-mix.Slack)), High: min(1, float64(w.Of+mix.Slack)), Nobody: true}
			for g := range l.s.groups {
				if group := &l.s.groups[g]; group.mix == m && group.name == w.Name {
					f.Places, f.Outside, f.Nobody = l.s.in[g], l.s.outside(g), false
				}
			}
			all = append(all, f)
		}
	}
	return all
}
