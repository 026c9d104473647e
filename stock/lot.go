package stock

import (
	"fmt"
	"strings"
)

// newLot creates the nth lot of this entry.
func (t *turn) newLot(nth int, how birth, variety int32, kind string, parents ...int32) int32 {
	if t.err != nil {
		return -1
	}
	b := t.book
	id := LotID{t.id, nth}
	i, again := b.byLot[id]
	if !again {
		i = b.openLot(id)
	} else if b.recording {
		before := b.lots[i]
		b.undo = append(b.undo, func() { last := b.lots[i].last; b.lots[i] = before; b.lots[i].last = last })
	}
	l := &b.lots[i]
	l.born, l.stands, l.how, l.variety, l.kind = t.seat, true, how, variety, b.text(kind)
	l.parents = parents
	for _, p := range parents {
		b.addChild(p, i)
	}
	t.born = append(t.born, i)
	return i
}

func (b *Book) addChild(parent, child int32) {
	for _, y := range b.lots[parent].children {
		if y == child {
			return
		}
	}
	b.lots[parent].children = append(b.lots[parent].children, child)
	if b.recording {
		b.undo = append(b.undo, func() {
			p := &b.lots[parent]
			p.children = p.children[:len(p.children)-1]
		})
	}
}

func (b *Book) openLot(id LotID) int32 {
	i := int32(len(b.lots))
	code := drawCode(id, func(c Code) bool { _, used := b.byCode[c]; return used })
	b.lots = append(b.lots, lot{id: id, code: code, last: -1})
	b.byLot[id], b.byCode[code] = i, i
	if b.recording {
		b.undo = append(b.undo, func() {
			delete(b.byCode, b.lots[i].code)
			delete(b.byLot, id)
			b.lots = b.lots[:i]
		})
	}
	return i
}

// label gives a lot the code that is already on its label.
func (t *turn) label(l int32, typed string) {
	if t.err != nil || typed == "" {
		return
	}
	b := t.book
	code, err := ParseCode(typed)
	if err != nil {
		t.err = err
		return
	}
	drawn := b.lots[l].code
	if drawn == code {
		return
	}
	if other, used := b.byCode[code]; used {
		t.fail("the code %s already belongs to %s; a code is never used twice", code, b.name(other))
		return
	}
	delete(b.byCode, drawn)
	b.lots[l].code = code
	b.byCode[code] = l
	if b.recording {
		b.undo = append(b.undo, func() {
			delete(b.byCode, code)
			b.lots[l].code = drawn
			b.byCode[drawn] = l
		})
	}
}

// find returns the lot with the given id or code.
func (b *Book) find(ref string) (int32, error) {
	if strings.Contains(ref, "/") {
		id, err := ParseLotID(ref)
		if err != nil {
			return -1, err
		}
		if i, known := b.byLot[id]; known {
			return i, nil
		}
		if i, known := b.byID[id.Entry]; known {
			return -1, fmt.Errorf("there is no lot %s: the entry of %s created no lot with that number", id, b.entries[i].moment.on)
		}
		return -1, fmt.Errorf("there is no lot %s in this book", id)
	}
	if ref == "" {
		return -1, fmt.Errorf("say which lot: its code, like MRMM5, or its id")
	}
	code, err := ParseCode(ref)
	if err != nil {
		return -1, fmt.Errorf("%w%s", err, b.nearCodes(plainCode(ref)))
	}
	if i, known := b.byCode[code]; known {
		return i, nil
	}
	return -1, fmt.Errorf("no lot has the code %s%s", code, b.nearCodes(string(code)))
}

// nearCodes suggests at most three codes in use that differ in one character or by a swap.
func (b *Book) nearCodes(typed string) string {
	var near []string
	offer := func(s string) {
		if l, used := b.byCode[Code(s)]; used && s != typed && len(near) < 3 {
			near = append(near, s+" ("+b.varietyName(l)+")")
		}
	}
	if len(typed) != codeSigns {
		return ""
	}
	for i := range codeSigns {
		for _, sign := range signs {
			offer(typed[:i] + string(sign) + typed[i+1:])
		}
		for j := i + 1; j < codeSigns; j++ {
			s := []byte(typed)
			s[i], s[j] = s[j], s[i]
			offer(string(s))
		}
	}
	if len(near) == 0 {
		return ""
	}
	return "; is " + strings.Join(near, " or ") + " meant?"
}

// name names a lot for the grower, like "Pale Heron (MRMM5)".
func (b *Book) name(l int32) string {
	return fmt.Sprintf("%s (%s)", b.varietyName(l), b.lots[l].code)
}

func (b *Book) varietyName(l int32) string {
	if v := b.varietyOf(l, nil); v >= 0 {
		view, _, _ := b.varietyView(v)
		return view.Name
	}
	var names []string
	for _, v := range b.lots[l].unsure {
		names = append(names, b.varieties[v].name)
	}
	if len(names) == 0 {
		return b.words(b.lots[l].kind) + " of no known name"
	}
	return strings.Join(names, " or ")
}

// holdingsOf returns the numbers of all holdings that a lot ever had, in no fixed order.
func (b *Book) holdingsOf(l int32) []int32 {
	var all []int32
	for i := b.lots[l].last; i >= 0; i = b.lines[i].before {
		h := b.lines[i].holding
		seen := false
		for _, a := range all {
			seen = seen || a == h
		}
		if !seen {
			all = append(all, h)
		}
	}
	return all
}

// checkKind fails if no kind is given.
func (t *turn) checkKind(kind string) {
	if kind == "" && t.err == nil {
		t.fail("say what kind of plant it is (kind), such as dahlia")
	}
}

// nameNotice adds a notice if a new variety's name is nearly the name of another.
func (t *turn) nameNotice(kind, name string) {
	if t.err != nil || !t.book.recording {
		return
	}
	if _, known := t.book.byName[nameOf(kind, name)]; known {
		return
	}
	for _, v := range t.book.varieties {
		if v.kind == kind && slip(v.name, name) {
			t.notice("%s is a new variety in this book; did you mean %s, which is already there?", name, v.name)
			return
		}
	}
}

// slip reports whether two names differ only in one or two neighbouring letters.
func slip(a, b string) bool {
	x, y := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	longer := max(len(x), len(y))
	same := 0
	for len(x) > 0 && len(y) > 0 && x[0] == y[0] {
		x, y = x[1:], y[1:]
		same++
	}
	for len(x) > 0 && len(y) > 0 && x[len(x)-1] == y[len(y)-1] {
		x, y = x[:len(x)-1], y[:len(y)-1]
		same++
	}
	return longer > 3 && longer-same <= 2
}
