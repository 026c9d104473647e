package stock

import (
	"slices"
	"strings"

	"eyeup/civil"
)

// Lot is the state of a lot after the last entry.
type Lot struct {
	ID         LotID
	Code       Code
	Kind       string
	Variety    Variety  // its name is empty where the variety is unsure
	Candidates []string // the varieties that it may be, where that is unsure
	How        string   // how it was created: taken in, divided …
	Born       civil.Date
	Parents    []LotID
	Standing   []Standing
	Sick       string // what it was last marked sick with
	Mark       string // the last mark: keep or go
	Proved     string // the last finding: true to name, or not true to name

	happened [kindTools + 1]civil.Date // the last day of each kind
}

// Last returns the last day of an entry of a kind for the lot, such as "woken", "started",
// "eyed", "up" or "planted out"; the zero date if there was none.
func (l *Lot) Last(kind string) civil.Date {
	n, known := kindByName[kind]
	if !known {
		return civil.Date{}
	}
	return l.happened[n]
}

// Standing is how many of a lot stand at one spot.
type Standing struct {
	Spot   Spot
	Count  int
	Pack   string     // what it was last packed in while there
	Packed ID         // the entry that packed it; zero if none
	Since  civil.Date // since when any of it stands there
}

// Name returns the name of the lot's variety, or the candidates joined by "or".
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

// Find returns the lot with the given code or id. Its error suggests the nearest codes.
func (b *Book) Find(ref string) (Lot, error) {
	i, err := b.find(ref)
	if err != nil {
		return Lot{}, err
	}
	return b.lotView(i), nil
}

// Lots returns all lots, used-up ones included, in the order of writing. Standing says what is
// left of each.
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

// standings lists where a lot stands after the given lines, sorted by place, crate and form.
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

// Holdings returns what the garden holds after the last entry, the start of a season: one
// holding for each lot and spot, in the order of Lots. Plant and Reserve are set only on the
// first holding of each variety.
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
			if key := l.Kind + "/" + h.Variety.Name; !asked[key] { // once for each variety, not for each lot
				h.Plant, h.Reserve = wanted.Plant, wanted.Reserve
				asked[key] = true
			}
			all = append(all, h)
		}
	}
	return all
}

// Round is the result of a round for one lot at one spot.
type Round struct {
	Entry                      ID
	On                         civil.Date
	Lot                        LotID
	Kind                       string
	Variety                    string
	Spot                       Spot
	Pack                       string
	Since                      civil.Date // since when any of it stands there
	Whole                      bool
	Firm, Wrinkled, Soft, Lost int
	Unaccounted                int // of a whole round: found plus lost, minus the book's count
}

// Rounds returns all rounds in the order of events.
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

// round makes the Round of a line; before is the book's count before it.
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

// Yield is the result of dividing clumps.
type Yield struct {
	Entry                         ID
	On                            civil.Date
	Mother                        LotID
	Kind                          string
	Variety                       string
	Clumps, Good, Doubtful, Waste int
}

// Yields returns all divisions in the order of events.
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

// Mention is one event in a lot's history.
type Mention struct {
	Entry ID
	Kind  string
	On    civil.Date
	Says  string
}

// Life returns the history of a lot in the order of events.
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
		life[n] = Mention{b.entries[m.seat].id, kinds[b.entries[m.seat].kind].name, m.on, b.lineEffect(i)}
	}
	return life, nil
}
