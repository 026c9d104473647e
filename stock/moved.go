package stock

// moveBody says that individuals were brought to another spot, or from one form to
// another; lifting, waking, starting, potting up, hardening and planting out are moves.
type moveBody struct {
	Lot string `json:"lot"`
	Spot
	Into      Spot   `json:"to,omitzero"`
	Count     int    `json:"count,omitzero"`
	All       bool   `json:"all,omitzero"`
	Lost      int    `json:"lost,omitzero"` // at lifting: dead or not to be found
	Container string `json:"container,omitzero"`
	Plan      string `json:"plan,omitzero"` // the plan followed
	Line      string `json:"line,omitzero"` // of that plan
	Note      string `json:"note,omitzero"`

	form Form // what they become where nothing is said
	gone bool // whether some may be lost on the way
}

func (s *moveBody) tell(t *turn) {
	l := t.lot(s.Lot)
	h := t.standing(l, s.Spot)
	if s.Lost < 0 || s.Lost > 0 && !s.gone {
		t.fail("lost is told at lifting alone, as a whole number from 0; elsewhere write destroyed, or a round")
	}
	n := s.Count
	if s.Lost == 0 || s.Count > 0 || s.All {
		n = t.howMany(h, s.Count, s.All)
	}
	if t.err != nil {
		return
	}
	to := s.goal(t, t.book.spots[t.book.holdings[h].spot])
	if t.err == nil && to == t.book.spots[t.book.holdings[h].spot] && s.Lost == 0 {
		s.stay(t, h, n)
		return
	}
	t.take(h, n+s.Lost)
	t.put(l, to, n)
}

// goal is where they come to stand.
func (s *moveBody) goal(t *turn, at Spot) Spot {
	into := s.Into
	if into.Form == "" {
		into.Form = s.form
	}
	switch {
	case t.kind == kindStarted && into.Form == "" && at.Form != Tray && at.Form != Pot:
		t.fail("say in what they are started (to form): pot or tray")
	case t.kind == kindLifted && into.Form == "" && (at.Form == Plant || at.Form == Pot):
		t.fail("say as what they were lifted (to form): clump, corm …")
	case t.kind == kindPlantedOut && into.Place == "":
		t.fail("say where they were planted out (to place), with bed and row if they have one")
	}
	return at.moved(into)
}

// stay is a move to where they stand already: waking or hardening in place.
func (s *moveBody) stay(t *turn, h int32, n int) {
	if t.kind == kindMoved {
		t.fail("they stand there already; say where they were moved (to)")
	}
	t.see(t.kind, h, n, -1)
}

// packedBody says that stock was packed for the winter.
type packedBody struct {
	Lot string `json:"lot"`
	Spot
	Into     Spot    `json:"to,omitzero"`
	Count    int     `json:"count,omitzero"`
	All      bool    `json:"all,omitzero"`
	Medium   string  `json:"medium"` // bare, vermiculite, dry …
	Moisture string  `json:"moisture,omitzero"`
	Weight   Measure `json:"weight,omitzero"` // of all of them, packing apart
	Note     string  `json:"note,omitzero"`
}

func (s *packedBody) tell(t *turn) {
	if s.Medium == "" {
		t.fail("say in what they were packed (medium); bare where in nothing")
	}
	l := t.lot(s.Lot)
	h := t.standing(l, s.Spot)
	n := s.Count
	if t.err == nil {
		if n == 0 {
			n = t.count(h)
		}
		t.howMany(h, n, false)
	}
	if t.err != nil {
		return
	}
	t.checkWeight(s.Weight)
	at := t.book.spots[t.book.holdings[h].spot]
	if to := at.moved(s.Into); to != at {
		t.take(h, n)
		h = t.put(l, to, n)
		n = 0
	}
	t.see(kindPacked, h, n, t.book.text(s.Medium))
}

func (t *turn) checkWeight(m Measure) {
	if t.err == nil && !m.IsZero() {
		if _, err := m.Mass(); err != nil {
			t.fail("weight: %w", err)
		}
	}
}

// goneBody says that individuals left the garden: destroyed, given away or sold.
type goneBody struct {
	Lot string `json:"lot"`
	Spot
	Count int    `json:"count,omitzero"`
	All   bool   `json:"all,omitzero"`
	Why   string `json:"why,omitzero"`
	Whom  string `json:"whom,omitzero"` // the id of whoever has them now
	Price Price  `json:"price,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *goneBody) tell(t *turn) {
	l := t.lot(s.Lot)
	t.checkPrice(s.Price)
	h := t.standing(l, s.Spot)
	n := t.howMany(h, s.Count, s.All)
	t.take(h, n)
	if t.err == nil && t.kind != kindDestroyed {
		if i := t.book.lastLine(l, kindSick, &t.moment); i >= 0 {
			t.notice("%s was marked sick (%s) on %s; whoever has them now should know", t.book.name(l), t.book.words(t.book.lines[i].note), t.book.lines[i].moment.on)
		}
	}
}
