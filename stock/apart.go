package stock

// setApartBody records that some individuals of a lot become a lot of their own.
type setApartBody struct {
	Lot string `json:"lot"`
	Spot
	Count int      `json:"count,omitzero"`
	All   bool     `json:"all,omitzero"`
	Why   string   `json:"why"` // sick, promised …
	Born  []string `json:"born,omitzero"`
	Into  Spot     `json:"to,omitzero"`
	Note  string   `json:"note,omitzero"`
}

func (s *setApartBody) apply(t *turn) {
	l := t.lot(s.Lot)
	t.checkBorn(0, s.Born...)
	if s.Why == "" {
		t.fail("say why they were set apart (why), such as sick or promised")
	}
	h := t.standing(l, s.Spot)
	n := t.howMany(h, s.Count, s.All)
	t.take(h, n)
	if t.err != nil {
		return
	}
	to := t.book.spots[t.book.holdings[h].spot].moved(s.Into)
	own := t.put(t.newLot(0, setApart, -1, t.book.words(t.book.lots[l].kind), l), to, n)
	t.write(kindSetApart, need, own, 0, t.book.text(s.Why))
}

// mixedBody records that individuals of several lots were mixed up and can't be told apart.
type mixedBody struct {
	From []mixedPart `json:"from"`
	Born []string    `json:"born,omitzero"`
	Into Spot        `json:"to"`
	Note string      `json:"note,omitzero"`
}

// mixedPart is what one lot contributed to the mixture.
type mixedPart struct {
	Lot string `json:"lot"`
	Spot
	Count int  `json:"count,omitzero"`
	All   bool `json:"all,omitzero"`
}

func (s *mixedBody) apply(t *turn) {
	t.checkBorn(0, s.Born...)
	if len(s.From) < 2 {
		t.fail("say which lots were mixed (from, two or more)")
	}
	var parents, unsure []int32
	total, kind := 0, ""
	for _, part := range s.From {
		l := t.lot(part.Lot)
		h := t.standing(l, part.Spot)
		n := t.howMany(h, part.Count, part.All)
		t.take(h, n)
		if t.err != nil {
			return
		}
		total += n
		parents = append(parents, l)
		kind = t.book.words(t.book.lots[l].kind)
		unsure = append(unsure, t.book.couldBe(l, &t.moment)...)
		if s.Into.Form == "" {
			s.Into.Form = t.book.spots[t.book.holdings[h].spot].Form
		}
	}
	l := t.newLot(0, mixed, -1, kind, parents...)
	if t.err == nil {
		t.book.lots[l].unsure = unsure
	}
	t.put(l, s.Into, total)
}
