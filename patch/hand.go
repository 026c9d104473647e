package patch

import "math"

// Hand is what becomes of all there is of a variety under a list.
type Hand struct {
	Reserve int // plants kept back
	Cut     int // clumps to cut, so that there are enough in nine cases of ten; all of them where not even that suffices
	Over    int // plants to give away or sell, in nine cases of ten, were all clumps cut
	Clumps  int // clumps among those that need not be cut for it
	Short   int // plants to be got first, in nine cases of ten
	Sown    bool
}

// Hand says what becomes of all there is of the i-th variety of the brief. What is raised
// in any number, from seed, is neither over nor short.
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

// Sources of what is short.
const (
	Strike = "strike cuttings, or buy"
	Buy    = "buy"
)

// Get says how the i-th variety is got where it is short.
func (l *List) Get(i int) string {
	if v := &l.s.b.Varieties[i]; v.Strike && v.Clumps+v.Whole > 0 {
		return Strike
	}
	return Buy
}

// Found is what a list makes of one share of a mix.
type Found struct {
	Mix       Mix
	Name      string
	Places    int
	Of        int     // places of the kind
	Low, High float64 // shares between which it counts nothing
	Nobody    bool    // no variety belongs to it
	Outside   float64 // places above, or, below nothing, below
}

// Mixed returns what the list makes of every share of every mix, in the order of the brief.
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
