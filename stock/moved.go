package stock

// moveBody records that individuals moved to another spot or took another form. Lifting,
// waking, starting, potting up, hardening and planting out are moves.
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

	form Form // their new form if the entry gives none
	gone bool // whether Lost is allowed
}

func (s *moveBody) apply(t *turn) {
	l := t.lot(s.Lot)
	h := t.standing(l, s.Spot)
	if s.Lost < 0 || s.Lost > 0 && !s.gone {
		t.fail("lost is a whole number from 0 and belongs to lifting only; otherwise write a destroyed entry or a round")
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

// goal is the spot they move to.
func (s *moveBody) goal(t *turn, at Spot) Spot {
	into := s.Into
	if into.Form == "" {
		into.Form = s.form
	}
	switch {
	case t.kind == kindStarted && into.Form == "" && at.Form != Tray && at.Form != Pot:
		t.fail("say what they were started in (to form): pot or tray")
	case t.kind == kindLifted && into.Form == "" && (at.Form == Plant || at.Form == Pot):
		t.fail("say what they were lifted as (to form): clump, corm …")
	case t.kind == kindPlantedOut && into.Place == "":
		t.fail("say where they were planted out (to place), with bed and row if they have one")
	}
	return at.moved(into)
}

// stay records a move without a change of spot, such as waking or hardening in place.
func (s *moveBody) stay(t *turn, h int32, n int) {
	if t.kind == kindMoved {
		t.fail("they already stand there; say where they were moved (to)")
	}
	t.see(t.kind, h, n, -1)
}

// packedBody records that stock was packed for the winter.
type packedBody struct {
	Lot string `json:"lot"`
	Spot
	Into     Spot    `json:"to,omitzero"`
	Count    int     `json:"count,omitzero"`
	All      bool    `json:"all,omitzero"`
	Medium   string  `json:"medium"` // bare, vermiculite, dry …
	Moisture string  `json:"moisture,omitzero"`
	Weight   Measure `json:"weight,omitzero"` // of all of them, without the packing
	Note     string  `json:"note,omitzero"`
}

func (s *packedBody) apply(t *turn) {
	if s.Medium == "" {
		t.fail("say what they were packed in (medium); bare if in nothing")
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

// goneBody records that individuals left the garden: destroyed, given away or sold.
type goneBody struct {
	Lot string `json:"lot"`
	Spot
	Count int    `json:"count,omitzero"`
	All   bool   `json:"all,omitzero"`
	Why   string `json:"why,omitzero"`
	Whom  string `json:"whom,omitzero"` // the id of the person who has them now
	Price Price  `json:"price,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *goneBody) apply(t *turn) {
	l := t.lot(s.Lot)
	t.checkPrice(s.Price)
	h := t.standing(l, s.Spot)
	n := t.howMany(h, s.Count, s.All)
	t.take(h, n)
	if t.err == nil && t.kind != kindDestroyed {
		if i := t.book.lastLine(l, kindSick, &t.moment); i >= 0 {
			t.notice("%s was marked sick (%s) on %s; tell whoever has them now", t.book.name(l), t.book.words(t.book.lines[i].note), t.book.lines[i].moment.on)
		}
	}
}
