package exchange

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2/unstable"

	"eyeup/culture"
	"eyeup/patch"
	"eyeup/quantity"
)

// section reads one table of a file. It remembers which keys were read, so that the others can
// be reported, and collects errors instead of stopping at the first.
type section struct {
	file   string
	name   string // for messages, such as "[season]" or `place "glass"`
	group  *group // nil if the file has none
	asked  []string
	faults *Faults

	part string // part of garden.toml, as in Words; empty if it is in none
	path string // of this table within the part, with a dot at the end; empty for the part itself
}

// need is whether a key is required.
type need bool

const (
	due  need = true
	free need = false
)

// refuse reports an error at a spot.
func (s *section) refuse(at spot, format string, args ...any) {
	what := fmt.Sprintf(format, args...)
	s.refuseAs(at, "", what, what)
}

// refuseKey reports that the value of a key is wrong.
func (s *section) refuseKey(key, format string, args ...any) {
	s.refuseAt(s.place(key), key, format, args...)
}

// refuseAt reports that something within the value of a key is wrong.
func (s *section) refuseAt(at spot, key, format string, args ...any) {
	what := fmt.Sprintf(format, args...)
	s.refuseAs(at, key, key+": "+what, what)
}

// refuseAs reports an error of a key with one message for the file and another for a form.
func (s *section) refuseAs(at spot, key, file, form string) {
	if s.name != "" {
		file = s.name + ": " + file
	}
	*s.faults = append(*s.faults, Fault{s.file, at.line, at.column, file, s.part, strings.TrimSuffix(s.path+key, "."), form})
}

// called names another key of the section as a form labels it.
func (s *section) called(key string) string { return "“" + Called(s.part, s.path+key) + "”" }

// place returns the place of a key's value, or of the table if the key is missing.
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

// get returns the value of a key; a missing key that is required is an error.
func (s *section) get(key string, n need) (value, bool) {
	if !slices.Contains(s.asked, key) {
		s.asked = append(s.asked, key)
	}
	v, there := s.look(key)
	if !there && n == due {
		s.refuseAs(s.place(key), key, fmt.Sprintf("%s is missing; write it as %s = …", key, key), "it is missing; give it")
	}
	return v, there
}

// text returns a text, which must be quoted.
func (s *section) text(key string, n need) string {
	v, there := s.get(key, n)
	if !there {
		return ""
	}
	if v.kind != unstable.String {
		s.refuseAs(v.at, key, key+": expected a text; write it in quotes", "expected a text")
		return ""
	}
	switch {
	case n == due && strings.TrimSpace(v.text) == "":
		s.refuseAs(v.at, key, key+" is empty; write it between the quotes", "it is empty; give it")
	case strings.ContainsFunc(v.text, unicode.IsControl):
		s.refuseAt(v.at, key, "%q contains a character that can't be printed; retype it on one line", v.text)
	}
	return v.text
}

// choice returns one of the known words; empty if it is missing or wrong.
func (s *section) choice(key string, n need, known ...string) string {
	word := s.text(key, n)
	if word == "" || slices.Contains(known, word) {
		return word
	}
	s.refuseKey(key, "%s", noneOf(word, known))
	return ""
}

// notKnown returns the message for an unknown word, with the nearest known one.
func notKnown(what, word string, known []string) string { return what + ": " + noneOf(word, known) }

// noneOf is the message of notKnown without what the word is for.
func noneOf(word string, known []string) string {
	message := fmt.Sprintf("%q is not one of %s", word, strings.Join(known, ", "))
	if near, ok := quantity.Nearest(word, known); ok {
		message += fmt.Sprintf("; did you mean %s", near)
	}
	return message
}

// whole returns a whole number from low to high; 0 if it is missing or wrong.
func (s *section) whole(key string, n need, low, high int) (int, bool) {
	v, there := s.get(key, n)
	if !there {
		return 0, false
	}
	i, err := strconv.Atoi(strings.ReplaceAll(v.text, "_", ""))
	if v.kind != unstable.Integer || err != nil || i < low || i > high {
		form := fmt.Sprintf("expected a whole number from %d to %d", low, high)
		s.refuseAs(v.at, key, key+": "+form+", without quotes", form)
		return 0, false
	}
	return i, true
}

// decimal returns a number without a unit; 0 if it is missing or wrong.
func (s *section) decimal(key string, n need) (float64, bool) {
	v, there := s.get(key, n)
	if !there {
		return 0, false
	}
	f, err := strconv.ParseFloat(strings.ReplaceAll(v.text, "_", ""), 64)
	if v.kind != unstable.Integer && v.kind != unstable.Float || err != nil {
		s.refuseAs(v.at, key, key+": expected a number without quotes and unit", "expected a number without a unit")
		return 0, false
	}
	return f, true
}

// measured returns a quantity with its unit; false if it is missing or wrong.
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
		s.refuseAs(v.at, key, key+": expected one measure with its unit, in quotes", "expected one measure with its unit")
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

// within reports a quantity outside low to high; shown formats the three.
func within[T ~float64](s *section, key string, got T, ok bool, low, high T, shown func(T) string) bool {
	if ok && !(got >= low && got <= high) {
		s.refuseKey(key, "%s is outside %s to %s; check the number and its unit", shown(got), shown(low), shown(high))
		return false
	}
	return ok
}

// sub returns the section of a table within this one; nil group if it is missing.
func (s *section) sub(key string, n need) *section {
	v, there := s.get(key, n)
	if !there {
		return nil
	}
	if v.group == nil {
		s.refuseAs(v.at, key, fmt.Sprintf("%s: expected a group, such as %s = { … = … }", key, key), "give its parts separately")
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

// unasked is a form's message for an unknown key.
const unasked = "there is no such setting here; leave it empty"

// rest reports every key that was not read.
func (s *section) rest() {
	if s.group == nil {
		return
	}
	for _, key := range s.group.keys {
		if slices.Contains(s.asked, key) {
			continue
		}
		message := fmt.Sprintf("there is no key %q here; the keys are %s", key, strings.Join(s.asked, ", "))
		if near, ok := quantity.Nearest(key, s.asked); ok {
			message = fmt.Sprintf("there is no key %q here; did you mean %s", key, near)
		}
		s.refuseAs(s.group.key[key], key, message, unasked)
	}
}

// stretch reads a length above 0 and up to most; 0 if it is missing or wrong.
func (s *section) stretch(key string, most quantity.Length) quantity.Length {
	l, ok := measured(s, key, free, quantity.ParseLength)
	if ok && !(l > 0 && l <= most) {
		s.refuseKey(key, "%s is not plausible; check the number and its unit", quantity.Metric.Length(l))
		return 0
	}
	return l
}

// several returns the sections under lines [[patch.KEY]].
func (s *section) several(key string) []*section {
	v, there := s.get(key, free)
	if !there {
		return nil
	}
	var all []*section
	for i, one := range v.list {
		if one.group != nil {
			path := fmt.Sprintf("%s%s.%d.", s.path, key, i+1)
			all = append(all, &section{file: s.file, name: s.name + " " + key, group: one.group, faults: s.faults, part: s.part, path: path})
		}
	}
	if len(all) < max(1, len(v.list)) {
		s.refuseAs(v.at, key, fmt.Sprintf("%s: write each one under its own line [[patch.%s]]", key, key), "give each one separately")
	}
	return all
}

// words are the allowed names of the parts of a mix by a trait; nil where the grower chooses
// them.
func words(by patch.Trait) []string {
	switch by {
	case patch.Timing:
		return []string{"early", "mid", "late"}
	case patch.Height:
		return patch.Heights()
	}
	return nil
}

// kinds reads a list of kinds.
func (s *section) kinds(key string) []string {
	v, there := s.get(key, free)
	if !there {
		return nil
	}
	if len(v.list) == 0 {
		s.refuseAs(v.at, key, key+`: expected a list of kinds, such as ["dahlia", "anemone"]`, "expected kinds separated by commas, such as dahlia, anemone")
	}
	var all []string
	for _, one := range v.list {
		if one.kind != unstable.String || !slices.Contains(culture.Kinds(), one.text) {
			s.refuseAs(one.at, key, notKnown("kind", one.text, culture.Kinds()), noneOf(one.text, culture.Kinds()))
		}
		all = append(all, one.text)
	}
	return all
}
