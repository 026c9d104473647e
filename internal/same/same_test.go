package main

import (
	"strings"
	"testing"
)

// TestDifferences plants a change of each sort and looks at what is told of it.
func TestDifferences(t *testing.T) {
	was := map[string][]byte{
		"a.json": []byte(`{"plants":12,"plan":"no added heat","why":"14 nights are too cold","on":"2027-03-29","id":"0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11"}`),
		"t.csv":  []byte("lot,cost\nMRMM5,3.5\n"),
		"j.ics":  []byte("DTSTART:20270329\nSUMMARY:Pot 12 clumps\n"),
	}
	for _, c := range []struct {
		name, file, from, to string
		hard, soft, told     int
	}{
		{name: "nothing"},
		{"a number", "a.json", "12", "13", 1, 0, 0},
		{"a date", "a.json", "03-29", "04-05", 1, 0, 0},
		{"a name", "a.json", "no added heat", "without heat", 1, 0, 0},
		{"a key", "a.json", `"plants"`, `"count"`, 2, 0, 0},
		{"words", "a.json", "nights are too cold", "cold nights", 0, 1, 0},
		{"a number in words", "a.json", "14 nights", "15 nights", 0, 0, 1},
		{"another id", "a.json", "0a11", "0a12", 0, 0, 0},
		{"a cell", "t.csv", "3.5", "3.6", 1, 0, 0},
		{"a heading", "t.csv", "cost", "price", 1, 0, 0},
		{"words of a text", "j.ics", "Pot 12", "Fill pots: 12", 0, 1, 0},
		{"a number of a text", "j.ics", "12", "13", 1, 0, 0},
	} {
		is := map[string][]byte{}
		for name, data := range was {
			is[name] = data
			if name == c.file {
				is[name] = []byte(strings.Replace(string(data), c.from, c.to, 1))
			}
		}
		var d differences
		d.compare(was, is)
		if len(d.hard) != c.hard || len(d.soft) != c.soft || len(d.told) != c.told {
			t.Errorf("%s: %q, %q, %q", c.name, d.hard, d.soft, d.told)
		}
	}
}
