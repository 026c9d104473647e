package culture

import (
	"maps"
	"slices"
	"strings"
	"testing"
)

// No figure goes in without a source, a range that holds it, and a word on how sure it is.
func TestEveryFigureIsVouchedFor(t *testing.T) {
	vouchedFor(t, "general", GeneralFigures())
	for _, name := range Kinds() {
		k, _ := Lookup(name)
		vouchedFor(t, name, k.Figures())
		for _, f := range k.Facts() {
			if err := vouched(f.Source, f.Sure); err != "" {
				t.Errorf("%s, fact about %s: %s", name, f.About, err)
			}
			if f.About == "" || !strings.HasSuffix(f.Text, ".") {
				t.Errorf("%s, fact about %q is not a sentence: %q", name, f.About, f.Text)
			}
		}
	}
}

// vouchedFor tells of each figure that lacks its source, its range, its meaning or a word on how
// sure it is.
func vouchedFor(t *testing.T, of string, figures []NamedFigure) {
	t.Helper()
	for _, f := range figures {
		if err := vouched(f.Source, f.Sure); err != "" {
			t.Errorf("%s, %s: %s", of, f.Key, err)
		}
		if !(f.Low <= f.Value && f.Value <= f.High) {
			t.Errorf("%s, %s: %g lies outside %g to %g", of, f.Key, f.Value, f.Low, f.High)
		}
		if f.Low == f.High && of == "general" {
			t.Errorf("%s, %s: no range", of, f.Key)
		}
		for _, v := range []float64{f.Low, f.Value, f.High} {
			if err := f.Unit.check(v); err != nil {
				t.Errorf("%s, %s: %v", of, f.Key, err)
			}
		}
		if f.Meaning == "" {
			t.Errorf("%s, %s: no meaning", of, f.Key)
		}
	}
}

// vouched says what is wrong with a source, or nothing. A measured figure, and a practice
// that is not common to all, names a source that is cited; a figure of ours says so.
func vouched(source string, sure Sureness) string {
	first, rest, _ := strings.Cut(source, ":")
	switch sure {
	case Measured:
		if len(Cited(source)) == 0 {
			return "measured, but no cited source in " + source
		}
	case Practice:
		if len(Cited(source)) == 0 && (first != "common practice" || strings.TrimSpace(rest) == "") {
			return "practice, but neither common nor cited: " + source
		}
	case Assumption:
		if first != "assumption" || strings.TrimSpace(rest) == "" {
			return "an assumption that does not say so, or why: " + source
		}
	case Memory:
		if !strings.HasPrefix(source, "from memory") {
			return "from memory, and does not say so: " + source
		}
	default:
		return "how sure? " + string(sure)
	}
	return ""
}

// The test above can fail: these must not pass.
func TestUnvouchedFiguresAreFound(t *testing.T) {
	for _, c := range []struct {
		source string
		sure   Sureness
	}{
		{"", Measured}, {"somewhere", Measured}, {"common practice", Practice}, {"a friend", Practice},
		{"assumption", Assumption}, {"Delaware", Assumption}, {"Delaware", Memory}, {"Delaware", ""}, {"Delaware", "certain"},
	} {
		if vouched(c.source, c.sure) == "" {
			t.Errorf("%q, %q passed", c.source, c.sure)
		}
	}
}

// Every name before a colon or comma in a source is cited, and every citation is used.
func TestSourcesAreCited(t *testing.T) {
	used := map[string]bool{}
	tables := map[string]map[string]string{"general": sourcesOf(GeneralFigures())}
	for _, name := range Kinds() {
		k, _ := Lookup(name)
		tables[name] = sourcesOf(k.Figures())
		for _, f := range k.Facts() {
			tables[name]["fact about "+f.About] = f.Source
		}
	}
	for _, name := range slices.Sorted(maps.Keys(tables)) {
		sources := tables[name]
		for _, key := range slices.Sorted(maps.Keys(sources)) {
			for i, part := range namesIn(sources[key]) {
				_, cited := stocked().citations[part]
				used[part] = true
				if !cited && i == 0 && !slices.Contains([]string{"common practice", "assumption", "from memory"}, part) {
					t.Errorf("%s, %s: %q is not in sources.csv", name, key, part)
				}
			}
			for cited := range stocked().citations {
				if strings.Contains(sources[key], cited) {
					used[cited] = true
				}
			}
		}
	}
	for name, c := range stocked().citations {
		if !used[name] {
			t.Errorf("%s is cited nowhere", name)
		}
		if c.Text == "" || !slices.Contains([]string{"read", "as quoted", "society", "trade", "weak"}, c.Read) {
			t.Errorf("%s: %q, %q", name, c.Text, c.Read)
		}
	}
}

func sourcesOf(figures []NamedFigure) map[string]string {
	all := map[string]string{}
	for _, f := range figures {
		all[f.Key] = f.Source
	}
	return all
}

func TestWordsOfTheTables(t *testing.T) {
	for _, name := range Kinds() {
		k, _ := Lookup(name)
		if !slices.Contains([]Life{Store, Soak, Sow}, k.Life) {
			t.Errorf("%s: life %q", name, k.Life)
		}
		if !slices.Contains([]Goal{ForFlower, ForFruit, ForLeaf, ForBulb, ForRoot}, k.Goal) {
			t.Errorf("%s: goal %q", name, k.Goal)
		}
		for _, e := range []Effect{k.Frost.Dormant, k.Frost.Leafy, k.Frost.Cutting} {
			if !slices.Contains([]Effect{Unhurt, SetBack, Dead}, e) {
				t.Errorf("%s: effect of frost %q", name, e)
			}
		}
		if k.StartIn == "" || k.PotOnIn == "" || k.Form == "" {
			t.Errorf("%s: form or container missing", name)
		}
	}
}
