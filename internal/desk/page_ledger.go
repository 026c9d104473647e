package desk

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"

	"eyeup/civil"
	"eyeup/stock"
)

// loose is a ledger without a book file: its entries end with the program.
type loose struct {
	mu   sync.Mutex // the book sorts itself when it is read
	book *stock.Book
	sums map[stock.ID][sha256.Size]byte
	log  []stock.Entry
}

// NewLoose returns a ledger whose entries end with the program. It begins with the
// garden's stock as it stands in its folder, each holding taken in on a day.
func NewLoose(g *Garden, on civil.Date) (Ledger, error) {
	l := &loose{book: stock.New(), sums: map[stock.ID][sha256.Size]byte{}}
	entries, err := takenIn(g.Stock, on)
	if err != nil {
		return nil, err
	}
	if len(entries) == 0 {
		return l, nil
	}
	if _, err := l.Append(entries...); err != nil {
		return nil, fmt.Errorf("the garden's stock can't be put into a book: %w", err)
	}
	return l, nil
}

func (l *loose) Read(look func(*stock.Book)) {
	l.mu.Lock()
	defer l.mu.Unlock()
	look(l.book)
}

func (l *loose) Kept() string { return "" }

func (l *loose) Append(entries ...stock.Entry) ([]stock.Added, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	var fresh []stock.Entry
	for i := range entries {
		sum := sha256.Sum256(entries[i].Canonical())
		if known, held := l.sums[entries[i].ID]; held && known != sum {
			return nil, fmt.Errorf("the book has an entry %s that says something else; an id is never used twice", entries[i].ID)
		}
		if !l.book.Holds(entries[i].ID) {
			fresh = append(fresh, entries[i])
		}
	}
	if len(fresh) == 0 {
		return nil, nil
	}
	added, err := l.book.Add(fresh...)
	if err != nil {
		return nil, err
	}
	l.book.Keep()
	for i := range fresh {
		l.sums[fresh[i].ID] = sha256.Sum256(fresh[i].Canonical())
	}
	l.log = append(l.log, fresh...)
	return added, nil
}

func (l *loose) Entry(id stock.ID) (stock.Entry, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	at := slices.IndexFunc(l.log, func(e stock.Entry) bool { return e.ID == id })
	if at < 0 {
		return stock.Entry{}, fmt.Errorf("there is no entry %s in the book", id)
	}
	return l.log[at], nil
}

// takenIn makes the entries by which the stock of a folder comes into a book: each
// holding is taken in as a lot, each variety described.
func takenIn(holdings []stock.Holding, on civil.Date) ([]stock.Entry, error) {
	var entries []stock.Entry
	add := func(kind string, body map[string]any) error {
		e, err := folderEntry(len(entries), kind, on, body)
		entries = append(entries, e)
		return err
	}
	for _, v := range described(holdings) {
		if err := add("described", v); err != nil {
			return nil, err
		}
	}
	for _, h := range holdings {
		body := map[string]any{
			"code": h.Code, "variety": h.Variety.Name, "kind": h.Variety.Kind, "form": h.Form,
			"count": h.Count, "place": h.Place, "crate": h.Crate, "pack": h.Pack, "note": h.Note,
		}
		if err := add("taken in", body); err != nil {
			return nil, err
		}
	}
	return entries, nil
}

// described makes the descriptions of the varieties of some stock, with what is wanted of
// each added up over its rows.
func described(holdings []stock.Holding) []map[string]any {
	type key struct{ kind, name string }
	at := map[key]int{}
	var all []map[string]any
	for _, h := range holdings {
		k := key{h.Variety.Kind, strings.ToLower(h.Variety.Name)}
		if i, known := at[k]; known {
			facts := all[i]["body"].(map[string]any)
			facts["plant"] = facts["plant"].(int) + h.Plant
			facts["reserve"] = facts["reserve"].(int) + h.Reserve
			continue
		}
		at[k] = len(all)
		facts := map[string]any{
			"kind": h.Variety.Kind, "timing": h.Variety.Timing, "colour": h.Variety.Colour,
			"plant": h.Plant, "reserve": h.Reserve, "note": h.Note,
		}
		if h.Variety.Height > 0 {
			facts["height"] = stock.Measure{Figure: fmt.Sprintf("%g", float64(h.Variety.Height)*100), Unit: "cm"}
		}
		all = append(all, map[string]any{"what": "variety", "name": h.Variety.Name, "body": facts})
	}
	return all
}

// folderEntry makes an entry of what a folder says. Its id follows from what it says, so
// that the same folder gives the same book.
func folderEntry(n int, kind string, on civil.Date, body map[string]any) (stock.Entry, error) {
	said, err := json.Marshal(withoutEmpty(body))
	if err != nil {
		return stock.Entry{}, err
	}
	canonical, err := stock.Canonical(said)
	if err != nil {
		return stock.Entry{}, err
	}
	e := stock.Entry{Kind: kind, Version: 1, On: on, Body: canonical}
	sum := sha256.Sum256(fmt.Appendf(nil, "%d %s %s %s", n, kind, on, canonical))
	copy(e.ID[:], sum[:])
	e.ID[6], e.ID[8] = 0x80|e.ID[6]&0x0f, 0x80|e.ID[8]&0x3f // RFC 9562: version 8, of one's own making
	return e, nil
}

// withoutEmpty leaves out what says nothing.
func withoutEmpty(body map[string]any) map[string]any {
	kept := map[string]any{}
	for name, v := range body {
		switch said := v.(type) {
		case map[string]any:
			v = withoutEmpty(said)
		case int:
			if said == 0 {
				continue
			}
		default:
			if fmt.Sprint(v) == "" {
				continue
			}
		}
		kept[name] = v
	}
	return kept
}
