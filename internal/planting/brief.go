package planting

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/stockbook"
	"eyeup/odds"
	"eyeup/patch"
	"eyeup/quantity"
	"eyeup/stock"
)

// NotListed is a variety that the planting list can't speak of, and why.
type NotListed struct {
	Variety string `json:"variety"`
	Kind    string `json:"kind"`
	Why     string `json:"why"`
}

// patchBrief is the brief of a planting list with what the answer tells beside it.
type patchBrief struct {
	patch.Brief
	ground  *exchange.Place
	stands  []int               // by variety: what stands today beside clumps
	untold  map[string][]string // names by why nothing can be said of them
	out     []NotListed
	assumed []string
}

// newPatchBrief makes the brief of the garden's planting list.
func newPatchBrief(g *garden.Garden, hand map[sortKey]inHand) (*patchBrief, error) {
	asked := asked(g)
	ground, err := ground(g, asked.Place)
	if err != nil {
		return nil, err
	}
	b := &patchBrief{ground: ground, untold: map[string][]string{}}
	b.Room, b.Places, b.Low, b.Tall, b.Mixes = ground.Bench, asked.Places, asked.Low, asked.Tall, asked.Mixes
	var known []string
	for _, s := range Sorts(g.Stock) {
		v := patch.Variety{Variety: s.Variety, Wish: patch.Would}
		v.Plant, v.Reserve = s.Wanted()
		known = append(known, s.Name)
		b.take(g, v, hand[sortKey{s.Kind, s.Name}])
	}
	for _, one := range asked.Varieties {
		if one.New != nil {
			if err := b.comes(g, one); err != nil {
				return nil, err
			}
			continue
		}
		if err := b.wishOf(g, one, known); err != nil {
			return nil, err
		}
	}
	for _, why := range slices.Sorted(maps.Keys(b.untold)) {
		b.assumed = append(b.assumed, fmt.Sprintf("that there are enough of %s: %s", strings.Join(b.untold[why], ", "), why))
	}
	if err := b.Check(); err != nil {
		return nil, fmt.Errorf("the planting list: %w", err)
	}
	return b, nil
}

// ground finds the place of open ground that the list is for.
func ground(g *garden.Garden, name string) (*exchange.Place, error) {
	var found *exchange.Place
	for i := range g.Places {
		p := &g.Places[i]
		switch {
		case p.Sort != exchange.Ground || name != "" && p.Name != name:
		case found != nil:
			return nil, fmt.Errorf("there are several places of open ground, such as %s and %s; say in %s which one the list is for, as %s", found.Name, p.Name, wishes(g), wish(g, "place"))
		default:
			found = p
		}
	}
	if found == nil {
		return nil, errors.New("the garden has no open ground to plant; add a place whose sort is ground")
	}
	return found, nil
}

// take adds a variety, or says why it is left out.
func (b *patchBrief) take(g *garden.Garden, v patch.Variety, h inHand) {
	out := func(why string) { b.out = append(b.out, NotListed{v.Name, v.Kind, why}) }
	asked := asked(g)
	kind, known := g.Kind(v.Kind)
	switch {
	case len(asked.Kinds) > 0 && !slices.Contains(asked.Kinds, v.Kind):
		out("it is of a kind that is left out in " + wishes(g))
		return
	case !known:
		out(fmt.Sprintf("nothing is known of the kind %q; the known ones: eyeup reckon culture", v.Kind))
		return
	}
	if v.Spacing = b.spacing(asked, kind); !(v.Spacing > 0) {
		out(fmt.Sprintf("it is not known how far apart %s stands; say it in %s, as %s", v.Kind, wishes(g), wish(g, "spacing."+v.Kind)))
		return
	}
	v.Hand, v.Clumps, v.Whole = h.plants, h.clumps, h.whole
	_, v.Strike = kind.Figure("cut.each")
	if h.why != "" {
		b.untold[h.why] = append(b.untold[h.why], v.Name)
	}
	b.stands = append(b.stands, h.stands)
	b.Varieties = append(b.Varieties, v)
}

// spacing returns how far apart a kind stands: as [patch] says, as the ground does for what
// comes from the store, or as its figures do.
func (b *patchBrief) spacing(asked *exchange.Patch, kind *culture.Kind) quantity.Length {
	if l, said := asked.Spacing[kind.Name]; said {
		return l
	}
	if kind.Life == culture.Store && b.ground.Spacing > 0 {
		return b.ground.Spacing
	}
	return quantity.Length(math.Sqrt(float64(kind.Bench.InBed)))
}

// comes adds a variety that is new to the garden.
func (b *patchBrief) comes(g *garden.Garden, one exchange.PatchVariety) error {
	n := one.New
	if slices.ContainsFunc(b.Varieties, func(v patch.Variety) bool { return v.Name == one.Name && v.Kind == one.Kind }) {
		return fmt.Errorf("%s%s is in stock, which says how many places it is wanted in; leave out %s", lineOf(g, one), one.Name, wish(g, "variety.1.plant"))
	}
	v := patch.Variety{Variety: stock.Variety{Name: one.Name, Kind: one.Kind, Timing: stock.Timing(n.Timing), Colour: n.Colour, Height: n.Height}}
	v.Wish, v.Plant, v.Reserve = patch.Would, n.Plant, n.Reserve
	before := len(b.Varieties)
	b.take(g, v, inHand{plants: odds.Exactly(float64(n.Bought)), whole: n.Bought, stands: n.Bought})
	if len(b.Varieties) > before {
		asks(&b.Varieties[before], one)
	}
	return nil
}

// wishOf says what is asked of a variety that is in stock.
func (b *patchBrief) wishOf(g *garden.Garden, one exchange.PatchVariety, known []string) error {
	i := slices.IndexFunc(b.Varieties, func(v patch.Variety) bool { return v.Name == one.Name && v.Kind == one.Kind })
	if i < 0 {
		if slices.ContainsFunc(b.out, func(o NotListed) bool { return o.Variety == one.Name && o.Kind == one.Kind }) {
			return nil // told already
		}
		near := "."
		if like, is := quantity.Nearest(one.Name, known); is {
			near = fmt.Sprintf("; is %s meant?", like)
		}
		return fmt.Errorf("%sthere is no %s of kind %s in stock%s Of a new variety say also how many places it is wanted in, as %s", lineOf(g, one), one.Name, one.Kind, near, wish(g, "variety.1.plant"))
	}
	asks(&b.Varieties[i], one)
	return nil
}

// asks takes over what is asked of a variety.
func asks(v *patch.Variety, one exchange.PatchVariety) {
	if one.Wish != "" {
		v.Wish = one.Wish
	}
	if one.Spacing > 0 {
		v.Spacing = one.Spacing
	}
	v.Least, v.Most, v.Flower, v.Family = one.Least, one.Most, one.Flower, one.Family
}

// lineOf says where a wish stands, in a garden that was read from a folder.
func lineOf(g *garden.Garden, one exchange.PatchVariety) string {
	if isBook(g) {
		return wishes(g) + ": "
	}
	return fmt.Sprintf("%s:%d: ", stockbook.GardenFile, one.Line)
}

// isBook reports whether the garden is that of a book: its stock stands on no line of a file.
func isBook(g *garden.Garden) bool { return len(g.Stock) == 0 || g.Stock[0].Line == 0 }

// wishes names what is asked of the patch: a section of a folder, or as the page of the
// garden does.
func wishes(g *garden.Garden) string {
	if isBook(g) {
		return exchange.PartTitle("patch")
	}
	return "[patch]"
}

// wish names a key of it in the same way.
func wish(g *garden.Garden, key string) string {
	if isBook(g) {
		word, _ := exchange.WordOf("patch", key)
		return "“" + word.Label + "”"
	}
	return key[strings.LastIndex(key, ".")+1:]
}
