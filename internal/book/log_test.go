package book

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"eyeup/stock"
)

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
