package stock

import (
	"slices"
	"strings"

	"eyeup/civil"
)

// Lot is a lot as it is after the last entry.
type Lot struct {
	ID         LotID
	Code       Code
	Kind       string
	Variety    Variety  // its name is empty where the variety is unsure
	Candidates []string // what it may be, where the variety is unsure
	How        string   // how it came to be: taken in, divided …
	Born       civil.Date
	Parents    []LotID
	Standing   []Standing
	Sick       string // what it was marked sick with, last
	Mark       string // keep or go, last
	Proved     string // true to name, or not true to name, last

	happened [kindTools + 1]civil.Date // the last day of each kind
}

// Last returns the last day on which an entry of a kind was told of the lot, such as
// "woken", "started", "eyed", "up" or "planted out"; none where there was none.
func (l *Lot) Last(kind string) civil.Date {
	n, known := kindByName[kind]
	if !known {
		return civil.Date{}
	}
	return l.happened[n]
}

// Standing is so many of a lot at one spot.
type Standing struct {
	Spot   Spot
	Count  int
	Pack   string     // what it was last packed in there
	Packed ID         // the entry that says so; none where nothing does
	Since  civil.Date // the day any of it came to stand there
}

// Name returns the name of the lot's variety, or of those it may be.
func (l *Lot) Name() string {
	if l.Variety.Name != "" || len(l.Candidates) == 0 {
		return l.Variety.Name
	}
	return strings.Join(l.Candidates, " or ")
}

// Count returns how many of the lot are left.
func (l *Lot) Count() int {
	n := 0
	for _, s := range l.Standing {
		n += s.Count
	}
	return n
}

// Find returns the lot that a code or an id names. Its error offers the nearest.
func (b *Book) Find(ref string) (Lot, error) {
	i, err := b.find(ref)
	if err != nil {
		return Lot{}, err
	}
	return b.lotView(i), nil
}

// Lots returns all lots that stand, used up ones too, in the order they were written
// down. See Lot.Standing for what is left of them.
func (b *Book) Lots() []Lot {
	all := make([]Lot, 0, len(b.lots))
	for i := range b.lots {
		if b.lots[i].stands {
			all = append(all, b.lotView(int32(i)))
		}
	}
	return all
}

func (b *Book) lotView(i int32) Lot {
	l := &b.lots[i]
	lines := b.linesOf(i)
	view := Lot{
		ID: l.id, Code: l.code, Kind: b.words(l.kind), How: l.how.String(),
		Born: b.entries[l.born].moment.on, Standing: b.standings(lines),
	}
	for _, at := range lines {
		said := &b.lines[at]
		view.happened[said.kind] = said.moment.on
		switch said.kind {
		case kindSick:
			view.Sick = b.words(said.note)
		case kindMarked:
			view.Mark = b.words(said.note)
		case kindProved:
			view.Proved = b.words(said.note)
		}
	}
	if v := b.varietyOf(i, nil); v >= 0 {
		view.Variety, _, _ = b.varietyView(v)
	} else {
		view.Variety.Kind = view.Kind
		for _, c := range l.unsure {
			view.Candidates = append(view.Candidates, b.varieties[c].name)
		}
	}
	for _, p := range l.parents {
		view.Parents = append(view.Parents, b.lots[p].id)
	}
	return view
}

// standings lists where a lot stands after its lines, by place, crate and form.
func (b *Book) standings(lines []int32) []Standing {
	found := map[int32]*Standing{}
	counts := map[int32]int32{}
	for _, i := range lines {
		at := &b.lines[i]
		before := counts[at.holding]
		foldOne(at, counts)
		s := found[at.holding]
		if s == nil {
			s = &Standing{Spot: b.spots[b.holdings[at.holding].spot]}
			found[at.holding] = s
		}
		if before <= 0 && counts[at.holding] > 0 {
			s.Since, s.Pack, s.Packed = at.moment.on, "", ID{}
		}
		if at.kind == kindPacked && at.note >= 0 {
			s.Pack, s.Packed = b.words(at.note), b.entries[at.moment.seat].id
		}
	}
	var all []Standing
	for h, s := range found {
		if s.Count = int(counts[h]); s.Count > 0 {
			all = append(all, *s)
		}
	}
	slices.SortFunc(all, func(x, y Standing) int { return strings.Compare(x.Spot.key(), y.Spot.key()) })
	return all
}

func (s Spot) key() string {
	return strings.Join([]string{s.Place, s.Crate, s.Bed, s.Row, string(s.Form)}, "\x00")
}

// Holdings returns what the garden holds after the last entry, as a season starts from
// it: one for each lot and spot, in the order of Lots, with what was wanted of the variety.
func (b *Book) Holdings() []Holding {
	var all []Holding
	asked := map[string]bool{}
	for i := range b.lots {
		if !b.lots[i].stands {
			continue
		}
		l := b.lotView(int32(i))
		var wanted Wanted
		var note string
		if v := b.varietyOf(int32(i), nil); v >= 0 {
			_, wanted, note = b.varietyView(v)
		}
		for _, s := range l.Standing {
			h := Holding{Code: string(l.Code), Variety: l.Variety, Form: s.Spot.Form, Count: s.Count,
				Place: s.Spot.Place, Crate: s.Spot.Crate, Bed: s.Spot.Bed, Row: s.Spot.Row, Pack: s.Pack, Note: note, Since: s.Since}
			h.Variety.Name = l.Name()
			if key := l.Kind + "/" + h.Variety.Name; !asked[key] { // told once, not once a lot
				h.Plant, h.Reserve = wanted.Plant, wanted.Reserve
				asked[key] = true
			}
			all = append(all, h)
		}
	}
	return all
}

// Round is what a round found of one lot at one spot.
type Round struct {
	Entry                      ID
	On                         civil.Date
	Lot                        LotID
	Kind                       string
	Variety                    string
	Spot                       Spot
	Pack                       string
	Since                      civil.Date // the day any of it came to stand there
	Whole                      bool
	Firm, Wrinkled, Soft, Lost int
	Unaccounted                int // of a whole round: found and lost, less what the book had
}

// Rounds returns all rounds, in the order in which they were gone.
func (b *Book) Rounds() []Round {
	var all []Round
	counts := make([]int32, len(b.holdings))
	since, pack := map[int32]civil.Date{}, map[int32]string{}
	order := b.ordered()
	for at, i := range order {
		l := &b.lines[i]
		before := counts[l.holding]
		if l.kind == kindRound && l.op != nothing {
			r := b.round(l, int(before))
			r.Since, r.Pack = since[l.holding], pack[l.holding]
			all = append(all, r)
		}
		fold(b.lines, order[at:at+1], counts, nil)
		if before <= 0 && counts[l.holding] > 0 {
			since[l.holding] = l.moment.on
			delete(pack, l.holding)
		}
		if l.kind == kindPacked && l.op != nothing && l.note >= 0 {
			pack[l.holding] = b.words(l.note)
		}
	}
	return all
}

// round tells one round; before is how many the book had.
func (b *Book) round(l *line, before int) Round {
	f, h := b.figures[l.note], b.holdings[l.holding]
	r := Round{
		Entry: b.entries[l.moment.seat].id, On: l.moment.on, Lot: b.lots[h.lot].id, Spot: b.spots[h.spot],
		Kind: b.words(b.lots[h.lot].kind), Variety: b.varietyName(h.lot), Whole: f[4] == 1,
		Firm: int(f[0]), Wrinkled: int(f[1]), Soft: int(f[2]), Lost: int(f[3]),
	}
	if r.Whole {
		r.Unaccounted = r.Firm + r.Wrinkled + r.Soft + r.Lost - before
	}
	return r
}

// Yield is what a dividing gave.
type Yield struct {
	Entry                         ID
	On                            civil.Date
	Mother                        LotID
	Kind                          string
	Variety                       string
	Clumps, Good, Doubtful, Waste int
}

// Yields returns all dividings, in the order in which they were done.
func (b *Book) Yields() []Yield {
	var all []Yield
	for _, i := range b.ordered() {
		l := &b.lines[i]
		if l.kind != kindDivided || l.op != need {
			continue
		}
		f := b.figures[l.note]
		lot := b.holdings[l.holding].lot
		all = append(all, Yield{b.entries[l.moment.seat].id, l.moment.on, b.lots[lot].id, b.words(b.lots[lot].kind),
			b.varietyName(lot), int(f[0]), int(f[1]), int(f[2]), int(f[3])})
	}
	return all
}

// Mention is one line of a lot's life.
type Mention struct {
	Entry ID
	Kind  string
	On    civil.Date
	Says  string
}

// Life returns what was written of a lot, in the order in which it happened.
func (b *Book) Life(ref string) ([]Mention, error) {
	l, err := b.find(ref)
	if err != nil {
		return nil, err
	}
	var at []int32
	for i := b.lots[l].last; i >= 0; i = b.lines[i].before {
		if k := b.lines[i].kind; b.lines[i].op != nothing && k != kindSitting && k != kindKnife && k != kindTools {
			at = append(at, i)
		}
	}
	slices.SortFunc(at, b.sooner)
	life := make([]Mention, len(at))
	for n, i := range at {
		m := b.lines[i].moment
		life[n] = Mention{b.entries[m.seat].id, kinds[b.entries[m.seat].kind].name, m.on, b.tells(i)}
	}
	return life, nil
}
