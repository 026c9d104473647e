package stock

// takenInBody records that stock came into the garden or into the book.
type takenInBody struct {
	Lot        string   `json:"lot,omitzero"`  // this entry's id and /0
	Code       string   `json:"code,omitzero"` // if it already has a label
	Variety    string   `json:"variety,omitzero"`
	Candidates []string `json:"candidates,omitzero"` // instead of Variety, where it is unsure
	Kind       string   `json:"kind"`
	Spot
	Count int    `json:"count"`
	Pack  string `json:"pack,omitzero"`
	From  string `json:"from,omitzero"`
	How   string `json:"how,omitzero"` // bought, swapped, given, own, found
	Price Price  `json:"price,omitzero"`
	Seeds int    `json:"seeds,omitzero"` // to a packet
	Year  int    `json:"year,omitzero"`  // in which seed was packed
	Note  string `json:"note,omitzero"`
}

func (s *takenInBody) apply(t *turn) {
	t.checkKind(s.Kind)
	t.checkBorn(0, s.Lot)
	t.checkPrice(s.Price)
	if s.Count < 0 {
		t.fail("%d can't be taken in; a count is 1 or more", s.Count)
	}
	variety := int32(-1)
	switch {
	case s.Variety != "" && len(s.Candidates) > 0:
		t.fail("give the variety, or the candidates where it is unsure, not both")
	case s.Variety != "":
		t.nameNotice(s.Kind, s.Variety)
		variety = t.variety(s.Kind, s.Variety)
	case len(s.Candidates) < 2:
		t.fail("say which variety it is (variety), or which it may be (candidates, two or more)")
	}
	l := t.newLot(0, takenIn, variety, s.Kind)
	if t.err == nil {
		t.book.lots[l].unsure = nil
		for _, c := range s.Candidates {
			t.book.lots[l].unsure = append(t.book.lots[l].unsure, t.variety(s.Kind, c))
		}
	}
	t.label(l, s.Code)
	h := t.put(l, s.Spot, s.Count)
	if s.Pack != "" {
		t.write(kindPacked, need, h, 0, t.book.text(s.Pack))
	}
}

// variety finds a variety or adds a new one; -1 after a failure.
func (t *turn) variety(kind, name string) int32 {
	if t.err != nil {
		return -1
	}
	return t.book.variety(kind, name)
}

func (t *turn) checkPrice(p Price) {
	if t.err == nil && !p.IsZero() {
		if _, err := p.Money(); err != nil {
			t.fail("price: %w", err)
		}
	}
}

// checkBorn checks that new lots named by the sender bear this entry's id and number.
func (t *turn) checkBorn(first int, named ...string) {
	for i, name := range named {
		if name == "" || t.err != nil {
			continue
		}
		if want := (LotID{t.id, first + i}); name != want.String() {
			t.fail("the lot %s does not belong to this entry; a new lot takes the entry's id: write %s", name, want)
		}
	}
}

// dividedBody records that clumps were divided.
type dividedBody struct {
	From string `json:"from"`
	Spot
	Clumps   int      `json:"clumps"`
	Good     int      `json:"good"`
	Doubtful int      `json:"doubtful,omitzero"`
	Waste    int      `json:"waste,omitzero"`
	Sitting  string   `json:"sitting,omitzero"` // the same for everything cut in one session
	Knife    string   `json:"knife,omitzero"`   // which one
	Tools    string   `json:"tools,omitzero"`   // how they were kept clean
	Born     []string `json:"born,omitzero"`    // the lot of good divisions, then the lot of doubtful ones
	Into     Spot     `json:"to,omitzero"`
	Note     string   `json:"note,omitzero"`
}

func (s *dividedBody) apply(t *turn) {
	mother := t.lot(s.From)
	if s.Good < 0 || s.Doubtful < 0 || s.Waste < 0 {
		t.fail("good, doubtful and waste are whole numbers from 0")
	}
	t.checkBorn(0, s.Born...)
	at := s.Spot
	if at.Form == "" {
		at.Form = Clump
	}
	h := t.standing(mother, at)
	if s.Clumps < 1 {
		t.fail("say how many were cut (clumps)")
	}
	t.take(h, s.Clumps)
	if t.err != nil {
		return
	}
	t.warnSick(mother)
	to := t.book.spots[t.book.holdings[h].spot]
	if to.Form == Clump {
		to.Form = Division
	}
	to = to.moved(s.Into)
	kind := t.book.words(t.book.lots[mother].kind)
	good := t.newLot(0, divided, -1, kind, mother)
	t.put(good, to, s.Good)
	if s.Doubtful > 0 {
		t.put(t.newLot(1, doubtful, -1, kind, mother), to, s.Doubtful)
	}
	numbers := t.figures(figures{int32(s.Clumps), int32(s.Good), int32(s.Doubtful), int32(s.Waste)})
	t.write(kindDivided, need, h, 0, numbers)
	t.cut(h, s.Sitting, s.Knife, s.Tools)
}

// cut records the session, the knife and how the tools were cleaned.
func (t *turn) cut(h int32, sitting, knife, tools string) {
	for _, f := range []struct {
		kind kindNumber
		says string
	}{{kindSitting, sitting}, {kindKnife, knife}, {kindTools, tools}} {
		if f.says != "" {
			t.write(f.kind, need, h, 0, t.book.text(f.says))
		}
	}
}

func (t *turn) figures(f figures) int32 {
	t.book.figures = append(t.book.figures, f)
	return int32(len(t.book.figures) - 1)
}

// warnSick adds a notice if the lot was marked sick.
func (t *turn) warnSick(l int32) {
	if t.err != nil {
		return
	}
	if i := t.book.lastLine(l, kindSick, &t.moment); i >= 0 {
		sick := &t.book.lines[i]
		t.notice("%s was marked sick (%s) on %s: the knife and all that it cut since may be infected; clean it before the next cut", t.book.name(l), t.book.words(sick.note), sick.moment.on)
	}
}

// cuttingsBody records that cuttings were struck; the mother plants stay.
type cuttingsBody struct {
	From string `json:"from"`
	Spot
	Count   int      `json:"count"`
	Sitting string   `json:"sitting,omitzero"`
	Knife   string   `json:"knife,omitzero"`
	Tools   string   `json:"tools,omitzero"`
	Born    []string `json:"born,omitzero"`
	Into    Spot     `json:"to,omitzero"`
	Note    string   `json:"note,omitzero"`
}

func (s *cuttingsBody) apply(t *turn) {
	mother := t.lot(s.From)
	t.checkBorn(0, s.Born...)
	h := t.standing(mother, s.Spot)
	if s.Count < 1 {
		t.fail("say how many cuttings were struck (count)")
	}
	t.see(kindCuttings, h, 1, -1)
	if t.err != nil {
		return
	}
	t.warnSick(mother)
	to := t.book.spots[t.book.holdings[h].spot]
	to.Form = Cutting
	t.put(t.newLot(0, struck, -1, t.book.words(t.book.lots[mother].kind), mother), to.moved(s.Into), s.Count)
	t.cut(h, s.Sitting, s.Knife, s.Tools)
}

// sownBody records that seed was sown. A packet leaves the count when it is empty.
type sownBody struct {
	From string `json:"from"`
	Spot
	Packets int      `json:"packets,omitzero"` // emptied by this sowing
	Seeds   int      `json:"seeds,omitzero"`
	Count   int      `json:"count"` // plants to expect, such as cells sown
	Born    []string `json:"born,omitzero"`
	Into    Spot     `json:"to"`
	Note    string   `json:"note,omitzero"`
}

func (s *sownBody) apply(t *turn) {
	packet := t.lot(s.From)
	t.checkBorn(0, s.Born...)
	at := s.Spot
	if at.Form == "" {
		at.Form = Seed
	}
	h := t.standing(packet, at)
	if s.Count < 1 || s.Packets < 0 || s.Seeds < 0 {
		t.fail("say how many were sown (count, 1 or more); packets and seeds are whole numbers from 0")
	}
	t.see(kindSown, h, 1, -1)
	t.take(h, s.Packets)
	if t.err != nil {
		return
	}
	to := t.book.spots[t.book.holdings[h].spot]
	to.Form = ""
	t.put(t.newLot(0, sown, -1, t.book.words(t.book.lots[packet].kind), packet), to.moved(s.Into), s.Count)
}

// couldBe lists the varieties that a lot may be.
func (b *Book) couldBe(l int32, until *moment) []int32 {
	if v := b.varietyOf(l, until); v >= 0 {
		return []int32{v}
	}
	return b.lots[l].unsure
}
