package book

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"testing"

	"eyeup/internal/opendata"
	"eyeup/stock"
)

// TestTheEntriesOfTheExample adds three entries as a stranger to the program wrote them: of
// fourteen clumps five are divided, which gives 17 good divisions and 4 doubtful ones.
func TestTheEntriesOfTheExample(t *testing.T) {
	b, _ := newBook(t)
	err := ReadLines(opendata.Open(t, "example/entries.jsonl"), func(one []Line) error {
		for _, l := range one {
			must(t)(b.Append(l.Entry))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	got := map[stock.Form]int{}
	for _, l := range b.Stock().Lots() {
		got[l.Standing[0].Spot.Form] += l.Count()
	}
	if want := (map[stock.Form]int{stock.Clump: 9, stock.Division: 21}); !maps.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// FuzzReadLines: whatever is sent, it is read or refused, never a panic; what is read
// comes out again the same.
func FuzzReadLines(f *testing.F) {
	log, err := os.ReadFile(filepath.Join("testdata", "frozen", "form1", "log.jsonl"))
	if err != nil {
		f.Fatal(err)
	}
	for _, line := range bytes.SplitAfter(log, []byte("\n")) {
		f.Add(line)
	}
	f.Add([]byte(`[{"id":"0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11","kind":"note","v":1,"on":"2027-01-01","body":{"text":"a"}}]`))
	f.Add([]byte("{\"sequence\":1,\"id\":1}\n\n\xff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		_ = ReadLines(bytes.NewReader(data), func(one []Line) error {
			for _, l := range one {
				again, err := stock.ReadEntry(l.Entry.Canonical())
				if err != nil || !bytes.Equal(again.Canonical(), l.Entry.Canonical()) {
					t.Errorf("%s comes out otherwise: %v", l.Entry.Canonical(), err)
				}
				s := stock.New()
				if _, err := s.Add(l.Entry); err == nil {
					s.TakeBack()
				}
			}
			return nil
		})
	})
}
