package stock

// roundBody records the result of checking a store. A whole round counted every individual of
// the lot there, a sampled round only some.
type roundBody struct {
	Lot string `json:"lot"`
	Spot
	Whole       bool    `json:"whole"`
	Firm        int     `json:"firm"`
	Wrinkled    int     `json:"wrinkled,omitzero"`
	Soft        int     `json:"soft,omitzero"`
	Lost        int     `json:"lost,omitzero"` // thrown out, or past saving
	Unaccounted *int    `json:"unaccounted,omitzero"`
	Weight      Measure `json:"weight,omitzero"` // of all individuals looked at
	Note        string  `json:"note,omitzero"`
}

func (s *roundBody) apply(t *turn) {
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
		t.fail("the round found %d of %s and %d lost where the book has %d: that is unaccounted %+d, not %+d; write that, or leave it out", found, t.book.name(l), s.Lost, before, unaccounted, *s.Unaccounted)
	}
	if unaccounted != 0 && t.err == nil {
		t.notice("%s: %d found and %d lost where the book had %d; unaccounted %+d", t.book.name(l), found, s.Lost, before, unaccounted)
	}
	t.write(kindRound, set, h, found, t.figures(figures{int32(s.Firm), int32(s.Wrinkled), int32(s.Soft), int32(s.Lost), 1}))
}

func (s *roundBody) sample(t *turn, l int32) {
	h := t.standing(l, s.Spot)
	if s.Unaccounted != nil && *s.Unaccounted != 0 {
		t.fail("a sampled round changes no count, so nothing can be unaccounted for; count all of them and write whole")
	}
	n := s.Firm + s.Wrinkled + s.Soft + s.Lost
	if n == 0 {
		t.fail("a sampled round looks at 1 or more")
	}
	t.see(kindRound, h, n, t.figures(figures{int32(s.Firm), int32(s.Wrinkled), int32(s.Soft), int32(s.Lost), 0}))
}

// everStood is standing, but also finds the only empty holding: a round may find individuals
// that the book had given up.
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

// seenBody records what individuals showed, or work that moves nothing.
type seenBody struct {
	Lot string `json:"lot"`
	Spot
	Count int    `json:"count,omitzero"` // 0: all that stand there
	Note  string `json:"note,omitzero"`
}

func (s *seenBody) apply(t *turn) {
	h := t.standing(t.lot(s.Lot), s.Spot)
	if s.Count < 0 {
		t.fail("%d is not a count; a count is 1 or more", s.Count)
	}
	t.see(t.kind, h, max(s.Count, 1), t.figures(figures{int32(s.Count)}))
}

// wateredBody records that a lot, or everything in a place or crate, got water or feed.
type wateredBody struct {
	Lot string `json:"lot,omitzero"`
	Spot
	Feed string `json:"feed,omitzero"`
	Note string `json:"note,omitzero"`
}

func (s *wateredBody) apply(t *turn) {
	switch {
	case s.Lot != "":
		t.see(t.kind, t.standing(t.lot(s.Lot), s.Spot), 1, -1)
	case s.Place == "":
		t.fail("say what was watered: a lot, or a place")
	}
}

// stemsBody records how many stems were cut.
type stemsBody struct {
	Lot string `json:"lot"`
	Spot
	Stems int    `json:"stems"`
	Note  string `json:"note,omitzero"`
}

func (s *stemsBody) apply(t *turn) {
	if s.Stems < 1 || s.Stems > maxCount {
		t.fail("say how many stems were cut (stems, 1 or more)")
	}
	t.see(t.kind, t.standing(t.lot(s.Lot), s.Spot), 1, t.figures(figures{int32(s.Stems)}))
}

// provedBody records whether a lot in flower matches its name.
type provedBody struct {
	Lot        string `json:"lot"`
	TrueToName bool   `json:"true_to_name"`
	Note       string `json:"note,omitzero"`
}

func (s *provedBody) apply(t *turn) {
	l := t.lot(s.Lot)
	says := "true to name"
	if !s.TrueToName {
		says = "not true to name"
		t.notice("write a named entry with what it is instead, and its reach: lot, down (with its offspring) or all (all its kin)")
	}
	t.write(t.kind, need, t.anywhere(l), 0, t.book.text(says))
}

// anywhere returns some holding of the lot, for a line that concerns the lot as a whole.
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

// markedBody records which plants to keep and which to discard, as seen in flower.
type markedBody struct {
	Lot string `json:"lot"`
	Spot
	Mark  string `json:"mark"` // keep or go
	Count int    `json:"count,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *markedBody) apply(t *turn) {
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

// sickBody records that plants look sick, and with what.
type sickBody struct {
	Lot string `json:"lot"`
	Spot
	What  string `json:"what"`
	Sure  bool   `json:"sure,omitzero"` // confirmed, not only suspected
	Count int    `json:"count,omitzero"`
	Note  string `json:"note,omitzero"`
}

func (s *sickBody) apply(t *turn) {
	if s.What == "" {
		t.fail("say what is wrong with them (what), as far as you know")
	}
	l := t.lot(s.Lot)
	h := t.standing(l, s.Spot)
	t.see(t.kind, h, max(s.Count, 1), t.text(s.What))
	if t.err == nil {
		t.notice("see which lots may have caught it: book kin %s", t.book.lots[l].code)
	}
}

// noteBody is free text.
type noteBody struct {
	Lot   string `json:"lot,omitzero"`
	Place string `json:"place,omitzero"`
	Text  string `json:"text"`
}

func (s *noteBody) apply(t *turn) {
	if s.Text == "" {
		t.fail("write the note's text (text)")
	}
	if s.Lot != "" {
		l := t.lot(s.Lot)
		t.write(t.kind, need, t.anywhere(l), 0, -1)
	}
}
