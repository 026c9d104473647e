package exchange

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2/unstable"

	"eyeup/quantity"
)

// section reads one table of a file. It remembers which keys were asked for, so that
// what was never asked for can be refused, and gathers what is wrong instead of stopping.
type section struct {
	file   string
	name   string // as it is called in messages, such as "[season]" or `place "glass"`
	group  *group // nil where the file has none
	asked  []string
	faults *Faults

	part string // of garden.toml, as Words names it; empty outside of all
	path string // of this table in the part, with a dot at its end; empty for the part itself
}

// need is whether a key must be there.
type need bool

const (
	due  need = true
	free need = false
)

// refuse notes that something is wrong at a spot.
func (s *section) refuse(at spot, format string, args ...any) {
	what := fmt.Sprintf(format, args...)
	s.refuseAs(at, "", what, what)
}

// refuseKey notes that what a key is set to can't be.
func (s *section) refuseKey(key, format string, args ...any) {
	s.refuseAt(s.place(key), key, format, args...)
}

// refuseAt notes the same of something at a spot within.
func (s *section) refuseAt(at spot, key, format string, args ...any) {
	what := fmt.Sprintf(format, args...)
	s.refuseAs(at, key, key+": "+what, what)
}

// refuseAs notes what is wrong with a key, in the words of the file and in those of a form
// that asks for it.
func (s *section) refuseAs(at spot, key, file, form string) {
	if s.name != "" {
		file = s.name + ": " + file
	}
	*s.faults = append(*s.faults, Fault{s.file, at.line, at.column, file, s.part, strings.TrimSuffix(s.path+key, "."), form})
}

// called says another key of the section as a form asks for it.
func (s *section) called(key string) string { return "“" + Called(s.part, s.path+key) + "”" }

// place returns where the value of a key stands, or the table where the key is missing.
func (s *section) place(key string) spot {
	switch v, there := s.look(key); {
	case there:
		return v.at
	case s.group != nil:
		return s.group.at
	}
	return spot{}
}

func (s *section) look(key string) (value, bool) {
	if s.group == nil {
		return value{}, false
	}
	v, there := s.group.of[key]
	return v, there
}

// has reports whether a key is set.
func (s *section) has(key string) bool {
	_, there := s.look(key)
	return there
}

// get returns what a key is set to; it notes a key that is due and missing.
func (s *section) get(key string, n need) (value, bool) {
	if !slices.Contains(s.asked, key) {
		s.asked = append(s.asked, key)
	}
	v, there := s.look(key)
	if !there && n == due {
		s.refuseAs(s.place(key), key, fmt.Sprintf("%s is missing; write it as %s = …", key, key), "it is missing, and must be said")
	}
	return v, there
}

// text returns a text, which stands in quotes.
func (s *section) text(key string, n need) string {
	v, there := s.get(key, n)
	if !there {
		return ""
	}
	if v.kind != unstable.String {
		s.refuseAs(v.at, key, key+": a text is due here; write it in quotes", "a text is due here")
		return ""
	}
	switch {
	case n == due && strings.TrimSpace(v.text) == "":
		s.refuseAs(v.at, key, key+" is empty; write it in the quotes", "it is empty, and must be said")
	case strings.ContainsFunc(v.text, unicode.IsControl):
		s.refuseAt(v.at, key, "%q holds a sign that can't be printed; type it anew on one line", v.text)
	}
	return v.text
}

// choice returns one of the known words; empty where it is missing or refused.
func (s *section) choice(key string, n need, known ...string) string {
	word := s.text(key, n)
	if word == "" || slices.Contains(known, word) {
		return word
	}
	s.refuseKey(key, "%s", noneOf(word, known))
	return ""
}

// notKnown says that a word is none of the known ones, and which is nearest.
func notKnown(what, word string, known []string) string { return what + ": " + noneOf(word, known) }

// noneOf says the same without what the word is.
func noneOf(word string, known []string) string {
	message := fmt.Sprintf("%q is none of %s", word, strings.Join(known, ", "))
	if near, ok := quantity.Nearest(word, known); ok {
		message += fmt.Sprintf("; did you mean %s", near)
	}
	return message
}

// whole returns a whole number from low to high; 0 where it is missing or refused.
func (s *section) whole(key string, n need, low, high int) (int, bool) {
	v, there := s.get(key, n)
	if !there {
		return 0, false
	}
	i, err := strconv.Atoi(strings.ReplaceAll(v.text, "_", ""))
	if v.kind != unstable.Integer || err != nil || i < low || i > high {
		form := fmt.Sprintf("a whole number from %d to %d is due here", low, high)
		s.refuseAs(v.at, key, key+": "+form+", without quotes", form)
		return 0, false
	}
	return i, true
}

// decimal returns a number without a unit; 0 where it is missing or refused.
func (s *section) decimal(key string, n need) (float64, bool) {
	v, there := s.get(key, n)
	if !there {
		return 0, false
	}
	f, err := strconv.ParseFloat(strings.ReplaceAll(v.text, "_", ""), 64)
	if v.kind != unstable.Integer && v.kind != unstable.Float || err != nil {
		s.refuseAs(v.at, key, key+": a number is due here, without quotes and unit", "a number is due here, without unit")
		return 0, false
	}
	return f, true
}

// measured returns a quantity typed with its unit, and whether there is one to go by.
func measured[T any](s *section, key string, n need, parse func(string) (T, error)) (T, bool) {
	v, there := s.get(key, n)
	if !there {
		var none T
		return none, false
	}
	return measuredIn(s, key, v, parse)
}

func measuredIn[T any](s *section, key string, v value, parse func(string) (T, error)) (T, bool) {
	var none T
	switch v.kind {
	case unstable.String, unstable.Integer, unstable.Float:
	default:
		s.refuseAs(v.at, key, key+": one measure with its unit is due here, in quotes", "one measure with its unit is due here")
		return none, false
	}
	got, err := parse(v.text)
	if err != nil && v.kind != unstable.String {
		s.refuseAs(v.at, key, fmt.Sprintf("%s: %v, in quotes", key, err), err.Error())
		return none, false
	}
	if err != nil {
		s.refuseAt(v.at, key, "%v", err)
		return none, false
	}
	return got, true
}

// within notes a quantity outside low to high, and says in which words they are shown.
func within[T ~float64](s *section, key string, got T, ok bool, low, high T, shown func(T) string) bool {
	if ok && !(got >= low && got <= high) {
		s.refuseKey(key, "%s lies outside %s to %s; check the number and its unit", shown(got), shown(low), shown(high))
		return false
	}
	return ok
}

// sub returns the section in an inline table or a table beneath; nothing where it is missing.
func (s *section) sub(key string, n need) *section {
	v, there := s.get(key, n)
	if !there {
		return nil
	}
	if v.group == nil {
		s.refuseAs(v.at, key, fmt.Sprintf("%s: a group is due here; write it such as %s = { … = … }", key, key), "its parts are due here, each by itself")
		return nil
	}
	name := strings.TrimSpace(s.name + ", " + key)
	if s.name == "" {
		name = "[" + key + "]"
	}
	inner := &section{file: s.file, name: name, group: v.group, faults: s.faults, part: s.part, path: s.path + key + "."}
	if s.part == "" { // the parts are the tables at the top
		inner.part, inner.path = key, ""
	}
	return inner
}

// unasked is what a form says of a key that nobody asks for.
const unasked = "nothing of that name is asked here; leave it empty"

// rest refuses every key that was not asked for.
func (s *section) rest() {
	if s.group == nil {
		return
	}
	for _, key := range s.group.keys {
		if slices.Contains(s.asked, key) {
			continue
		}
		message := fmt.Sprintf("there is no key %q here; there are %s", key, strings.Join(s.asked, ", "))
		if near, ok := quantity.Nearest(key, s.asked); ok {
			message = fmt.Sprintf("there is no key %q here; did you mean %s", key, near)
		}
		s.refuseAs(s.group.key[key], key, message, unasked)
	}
}
