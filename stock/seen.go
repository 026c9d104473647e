package stock

// roundBody says what was found when a store was gone through. A whole round counted all
// of the lot that stand there, a sampled one some of them.
type roundBody struct {
	Lot string `json:"lot"`
	Spot
	Whole       bool    `json:"whole"`
	Firm        int     `json:"firm"`
	Wrinkled    int     `json:"wrinkled,omitzero"`
	Soft        int     `json:"soft,omitzero"`
	Lost        int     `json:"lost,omitzero"` // thrown out, or past saving
	Unaccounted *int    `json:"unaccounted,omitzero"`
	Weight      Measure `json:"weight,omitzero"` // of all that were looked at
	Note        string  `json:"note,omitzero"`
}

func (s *roundBody) tell(t *turn) {
	l := t.lot(s.Lot)
	for _, n := range []int{s.Firm, s.Wrinkled, s.Soft, s.Lost} {
		if n < 0 || n > maxCount {
			t.fail("firm, wrinkled, soft and lost are whole numbers from 0")
		}
	}
	t.checkWeight(s.Weight)
	if !s.Whole {
		s.sample(t, l)
		return
	}
	h := t.everStood(l, s.Spot)
	if t.err != nil {
		return
	}
	found, before := s.Firm+s.Wrinkled+s.Soft, t.count(h)
	unaccounted := found + s.Lost - before
	if s.Unaccounted != nil && *s.Unaccounted != unaccounted {
		t.fail("the round finds %d of %s and %d lost where the book has %d: that is unaccounted %+d, not %+d; put it so, or leave it out", found, t.book.name(l), s.Lost, before, unaccounted, *s.Unaccounted)
	}
	if unaccounted != 0 && t.err == nil {
		t.notice("%s: %d there and %d lost where the book had %d; unaccounted %+d", t.book.name(l), found, s.Lost, before, unaccounted)
	}
	t.write(kindRound, set, h, found, t.figures(figures{int32(s.Firm), int32(s.Wrinkled), int32(s.Soft), int32(s.Lost), 1}))
}

func (s *roundBody) sample(t *turn, l int32) {
	h := t.standing(l, s.Spot)
	if s.Unaccounted != nil && *s.Unaccounted != 0 {
		t.fail("a sampled round changes no count, so nothing is unaccounted for; go through all of them and say whole")
	}
	n := s.Firm + s.Wrinkled + s.Soft + s.Lost
	if n == 0 {
		t.fail("a sampled round looks at one at least")
	}
	t.see(kindRound, h, n, t.figures(figures{int32(s.Firm), int32(s.Wrinkled), int32(s.Soft), int32(s.Lost), 0}))
}

// everStood is standing for those who may find again what the book gave up.
func (t *turn) everStood(l int32, at Spot) int32 {
	if t.err != nil {
		return -1
	}
	var stand, stood []int32
	for _, h := range t.book.holdingsOf(l) {
		if at.holds(t.book.spots[t.book.holdings[h].spot]) {
			stood = append(stood, h)
			if t.count(h) > 0 {
				stand = append(stand, h)
			}
		}
	}
	if len(stand) == 0 && len(stood) == 1 {
		return stood[0]
	}
	return t.standing(l, at)
}

// seenBody says what individuals showed, or what was done that moves nothing.
type seenBody struct {
	Lot string `json:"lot"`
	Spot
	Count int    `json:"count,omitzero"` // of them; all that stand there where nothing is said
	Note  string `json:"note,omitzero"`
}

func (s *seenBody) tell(t *turn) {
	h := t.standing(t.lot(s.Lot), s.Spot)
	if s.Count < 0 {
		t.fail("%d can't be; a count is 1 or more", s.Count)
	}
	t.see(t.kind, h, max(s.Count, 1), t.figures(figures{int32(s.Count)}))
}

// wateredBody says that a lot, or all in a place or crate, got water or feed.
type wateredBody struct {
	Lot string `json:"lot,omitzero"`
	Spot
	Feed string `json:"feed,omitzero"`
	Note string `json:"note,omitzero"`
}

func (s *wateredBody) tell(t *turn) {
	switch {
	case s.Lot != "":
		t.see(t.kind, t.standing(t.lot(s.Lot), s.Spot), 1, -1)
	case s.Place == "":
		t.fail("say what was watered: a lot, or a place")
	}
}

// stemsBody says how many stems were cut.
type stemsBody struct {
	Lot string `json:"lot"`
	Spot
	Stems int    `json:"stems"`
	Note  string `json:"note,omitzero"`
}

func (s *stemsBody) tell(t *turn) {
	if s.Stems < 1 || s.Stems > maxCount {
		t.fail("say how many stems were cut (stems, 1 or more)")
	}
	t.see(t.kind, t.standing(t.lot(s.Lot), s.Spot), 1, t.figures(figures{int32(s.Stems)}))
}

// provedBody says whether a lot in flower is what its name says.
type provedBody struct {
	Lot        string `json:"lot"`
	TrueToName bool   `json:"true_to_name"`
	Note       string `json:"note,omitzero"`
}

func (s *provedBody) tell(t *turn) {
	l := t.lot(s.Lot)
	says := "true to name"
	if !s.TrueToName {
		says = "not true to name"
		t.notice("write what it is instead (named), and whom it reaches: this lot, its kin down, or all kin")
	}
	t.write(t.kind, need, t.anywhere(l), 0, t.book.text(says))
}

// anywhere is a holding to hang something on that concerns the lot as a whole.
func (t *turn) anywhere(l int32) int32 {
	if t.err != nil {
		return -1
	}
	for _, h := range t.book.holdingsOf(l) {
		if t.count(h) > 0 {
			return h
		}
	}
	return t.book.lines[t.book.lots[l].last].holding
}

// markedBody says which plants are to be kept, and which to go, as seen in flower.
type markedBody struct {
	Lot string `json:"lot"`
	Spot
	Mark  string `json:"mark"` // keep or go
	Count int    `json:"count,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *markedBody) tell(t *turn) {
	if s.Mark != "keep" && s.Mark != "go" {
		t.fail("mark is keep or go, not %q", s.Mark)
	}
	h := t.standing(t.lot(s.Lot), s.Spot)
	t.see(t.kind, h, max(s.Count, 1), t.text(s.Mark))
}

func (t *turn) text(s string) int32 {
	if t.err != nil {
		return -1
	}
	return t.book.text(s)
}

// sickBody says that plants look sick, and with what.
type sickBody struct {
	Lot string `json:"lot"`
	Spot
	What  string `json:"what"`
	Sure  bool   `json:"sure,omitzero"` // proved, not only suspected
	Count int    `json:"count,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *sickBody) tell(t *turn) {
	if s.What == "" {
		t.fail("say what is wrong with them (what), as far as it is known")
	}
	l := t.lot(s.Lot)
	h := t.standing(l, s.Spot)
	t.see(t.kind, h, max(s.Count, 1), t.text(s.What))
	if t.err == nil {
		t.notice("its kin, down, up and sideways, are told by: book kin %s", t.book.lots[l].code)
	}
}

// noteBody is anything worth writing down.
type noteBody struct {
	Lot   string `json:"lot,omitzero"`
	Place string `json:"place,omitzero"`
	Text  string `json:"text"`
}

func (s *noteBody) tell(t *turn) {
	if s.Text == "" {
		t.fail("a note says something (text)")
	}
	if s.Lot != "" {
		l := t.lot(s.Lot)
		t.write(t.kind, need, t.anywhere(l), 0, -1)
	}
}
