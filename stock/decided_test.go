package stock_test

import (
	"fmt"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/stock"
)

// TestDecisionsOfBothVersions writes down decisions as programs of both versions do: what only the
// second knows is refused in the first, and the last that counts is the one that stands.
func TestDecisionsOfBothVersions(t *testing.T) {
	b, nth := stock.New(), 0
	write := func(kind string, version int, body string) (stock.ID, error) {
		nth++
		id, err := stock.ParseID(fmt.Sprintf("01a21f04-60a6-7c5f-9f7f-%012d", nth))
		if err != nil {
			t.Fatal(err)
		}
		said, err := stock.Canonical([]byte(body))
		if err != nil {
			t.Fatal(err)
		}
		_, err = b.Add(stock.Entry{ID: id, Kind: kind, Version: version, On: civil.MustOn(2027, 1, nth), Body: said})
		b.Keep()
		return id, err
	}
	if _, _, is := b.LastOf("decided"); is {
		t.Error("an empty book has a decision")
	}
	byName, err := write("decided", 1, `{"plan":"usual","lines":[]}`)
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range []struct {
		version     int
		body, wants string
	}{
		{1, `{"plan":"held: usual","lines":[],"held":{}}`, `needs "v":2`},
		{2, `{"plan":"held: usual","lines":[],"held":[]}`, "an object"},
		{2, `{"plan":"held: usual","held":{}}`, "a list"},
		{3, `{"plan":"held: usual","lines":[],"held":{}}`, "newer"},
	} {
		if _, err := write("decided", one.version, one.body); err == nil || !strings.Contains(err.Error(), one.wants) {
			t.Errorf("version %d, %s: %v, want %q", one.version, one.body, err, one.wants)
		}
	}
	held, err := write("decided", stock.Version("decided"), `{"plan":"held: usual","lines":[],"held":{}}`)
	if err != nil {
		t.Fatal(err)
	}
	if root, head, is := b.LastOf("decided"); !is || root != held || head != held {
		t.Errorf("the last decision is %v, %v, %v, not %v", root, head, is, held)
	}
	undone, err := write("put right", 1, fmt.Sprintf(`{"target":%q,"nothing":true}`, held))
	if err != nil {
		t.Fatal(err)
	}
	if root, _, is := b.LastOf("decided"); !is || root != byName {
		t.Errorf("undone, the last decision is %v, %v, not %v", root, is, byName)
	}
	again, err := write("put right", 1, fmt.Sprintf(`{"target":%q,"body":{"plan":"held: early","lines":[],"held":{}}}`, undone))
	if err != nil {
		t.Fatal(err)
	}
	if root, head, is := b.LastOf("decided"); !is || root != held || head != again {
		t.Errorf("put right, the last decision is %v by %v, %v", root, head, is)
	}
}
