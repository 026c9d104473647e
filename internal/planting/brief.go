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

// NotListed is a variety that the planting list leaves out, and why.
type NotListed struct {
	Variety string `json:"variety"`
	Kind    string `json:"kind"`
	Why     string `json:"why"`
}

// patchBrief is what a planting list is computed from, with what the answer reports beside the list.
type patchBrief struct {
	patch.Brief
	ground  *exchange.Place
	stands  []int               // by variety: divisions, corms and plants today, without clumps
	unknown map[string][]string // names of varieties whose number of plants can't be predicted, by reason
	out     []NotListed
	assumed []string
}

// newPatchBrief collects what the garden's planting list is computed from.
func newPatchBrief(g *garden.Garden, hand map[varietyKey]inHand) (*patchBrief, error) {
	asked := asked(g)
	ground, err := ground(g, asked.Place)
	if err != nil {
		return nil, err
	}
	b := &patchBrief{ground: ground, unknown: map[string][]string{}}
	b.Room, b.Places, b.Low, b.Tall, b.Mixes = ground.Bench, asked.Places, asked.Low, asked.Tall, asked.Mixes
	var known []string
	for _, s := range Sorts(g.Stock) {
		v := patch.Variety{Variety: s.Variety, Wish: patch.Would}
		v.Plant, v.Reserve = s.Wanted()
		known = append(known, s.Name)
		b.add(g, v, hand[varietyKey{s.Kind, s.Name}])
	}
	for _, one := range asked.Varieties {
		if one.New != nil {
			if err := b.addNew(g, one); err != nil {
				return nil, err
			}
			continue
		}
		if err := b.setWish(g, one, known); err != nil {
			return nil, err
		}
	}
	for _, why := range slices.Sorted(maps.Keys(b.unknown)) {
		b.assumed = append(b.assumed, fmt.Sprintf("that there are enough of %s: %s", strings.Join(b.unknown[why], ", "), why))
	}
	if err := b.Check(); err != nil {
		return nil, fmt.Errorf("the planting list: %w", err)
	}
	return b, nil
}

// ground finds the open ground that the list is for: the one of that name, or the only one.
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

// add adds a variety, or notes why it is left out.
func (b *patchBrief) add(g *garden.Garden, v patch.Variety, h inHand) {
	out := func(why string) { b.out = append(b.out, NotListed{v.Name, v.Kind, why}) }
	asked := asked(g)
	kind, known := g.Kind(v.Kind)
	switch {
	case len(asked.Kinds) > 0 && !slices.Contains(asked.Kinds, v.Kind):
		out("its kind is left out in " + wishes(g))
		return
	case !known:
		out(fmt.Sprintf("the kind %q is not known; eyeup reckon culture lists the known ones", v.Kind))
		return
	}
	if v.Spacing = b.spacing(asked, kind); !(v.Spacing > 0) {
		out(fmt.Sprintf("the spacing of %s is not known; give it in %s, as %s", v.Kind, wishes(g), wish(g, "spacing."+v.Kind)))
		return
	}
	v.Hand, v.Clumps, v.Whole = h.plants, h.clumps, h.whole
	_, v.Strike = kind.Figure("cut.each")
	if h.why != "" {
		b.unknown[h.why] = append(b.unknown[h.why], v.Name)
	}
	b.stands = append(b.stands, h.stands)
	b.Varieties = append(b.Varieties, v)
}

// spacing returns the distance between plants of a kind: as [patch] says; or, for kinds kept in store, as
// the ground says; or as the kind's figures say.
func (b *patchBrief) spacing(asked *exchange.Patch, kind *culture.Kind) quantity.Length {
	if l, said := asked.Spacing[kind.Name]; said {
		return l
	}
	if kind.Life == culture.Store && b.ground.Spacing > 0 {
		return b.ground.Spacing
	}
	return quantity.Length(math.Sqrt(float64(kind.Bench.InBed)))
}

// addNew adds a variety that is new to the garden.
func (b *patchBrief) addNew(g *garden.Garden, one exchange.PatchVariety) error {
	n := one.New
	if slices.ContainsFunc(b.Varieties, func(v patch.Variety) bool { return v.Name == one.Name && v.Kind == one.Kind }) {
		return fmt.Errorf("%s%s is in stock, and the stock says how many are wanted; remove %s", lineOf(g, one), one.Name, wish(g, "variety.1.plant"))
	}
	v := patch.Variety{Variety: stock.Variety{Name: one.Name, Kind: one.Kind, Timing: stock.Timing(n.Timing), Colour: n.Colour, Height: n.Height}}
	v.Wish, v.Plant, v.Reserve = patch.Would, n.Plant, n.Reserve
	before := len(b.Varieties)
	b.add(g, v, inHand{plants: odds.Exactly(float64(n.Bought)), whole: n.Bought, stands: n.Bought})
	if len(b.Varieties) > before {
		applyWish(&b.Varieties[before], one)
	}
	return nil
}

// setWish sets the wishes for a variety that is in stock. known are the names in stock, to suggest one
// in place of a misspelt name.
func (b *patchBrief) setWish(g *garden.Garden, one exchange.PatchVariety, known []string) error {
	i := slices.IndexFunc(b.Varieties, func(v patch.Variety) bool { return v.Name == one.Name && v.Kind == one.Kind })
	if i < 0 {
		if slices.ContainsFunc(b.out, func(o NotListed) bool { return o.Variety == one.Name && o.Kind == one.Kind }) {
			return nil // its reason is in out
		}
		near := "."
		if like, is := quantity.Nearest(one.Name, known); is {
			near = fmt.Sprintf("; is %s meant?", like)
		}
		return fmt.Errorf("%sthere is no %s of kind %s in stock%s For a new variety, also give how many places it is wanted in, as %s", lineOf(g, one), one.Name, one.Kind, near, wish(g, "variety.1.plant"))
	}
	applyWish(&b.Varieties[i], one)
	return nil
}

// applyWish copies the wishes for a variety.
func applyWish(v *patch.Variety, one exchange.PatchVariety) {
	if one.Wish != "" {
		v.Wish = one.Wish
	}
	if one.Spacing > 0 {
		v.Spacing = one.Spacing
	}
	v.Least, v.Most, v.Flower, v.Family = one.Least, one.Most, one.Flower, one.Family
}

// lineOf names the file and line of a wish in a folder, or the part of the garden's page in a book.
func lineOf(g *garden.Garden, one exchange.PatchVariety) string {
	if isBook(g) {
		return wishes(g) + ": "
	}
	return fmt.Sprintf("%s:%d: ", stockbook.GardenFile, one.Line)
}

// isBook reports whether the garden is that of a book: its stock has no line numbers.
func isBook(g *garden.Garden) bool { return len(g.Stock) == 0 || g.Stock[0].Line == 0 }

// wishes names where the wishes for the patch are: the section of garden.toml, or the part of the
// garden's page in a book.
func wishes(g *garden.Garden) string {
	if isBook(g) {
		return exchange.PartTitle("patch")
	}
	return "[patch]"
}

// wish names a key of the wishes: as in garden.toml, or by its label on the garden's page.
func wish(g *garden.Garden, key string) string {
	if isBook(g) {
		word, _ := exchange.WordOf("patch", key)
		return "“" + word.Label + "”"
	}
	return key[strings.LastIndex(key, ".")+1:]
}
