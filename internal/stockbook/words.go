package stockbook

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eyeup/quantity"
	"eyeup/stock"
)

// Body makes the body of an entry from words like count=3 or to.place=glass, typed after a command. It
// converts each value to the type of its member, and refuses members that the kind does not have.
func Body(kind string, words []string) ([]byte, error) {
	shape, known := stock.Shape(kind)
	if !known {
		return nil, unknownKind(kind)
	}
	body := map[string]any{}
	for _, w := range words {
		name, value, cut := strings.Cut(w, "=")
		if !cut {
			return nil, fmt.Errorf("%q is not name=value, such as count=3; the names are: %s", w, strings.Join(memberNames(shape, ""), ", "))
		}
		if err := setMember(body, shape, strings.Split(name, "."), name, value); err != nil {
			return nil, err
		}
	}
	return json.Marshal(body)
}

func unknownKind(kind string) error {
	if near, like := quantity.Nearest(kind, stock.Kinds()); like {
		return fmt.Errorf("there is no kind of entry %q; is %q meant?", kind, near)
	}
	return fmt.Errorf("there is no kind of entry %q; there are: %s", kind, strings.Join(stock.Kinds(), ", "))
}

// setMember sets one member, given by its path, to a value as typed. full is the path as typed.
func setMember(body map[string]any, shape []stock.Member, path []string, full, value string) error {
	at := slices.IndexFunc(shape, func(m stock.Member) bool { return m.Name == path[0] })
	if at < 0 {
		names := memberNames(shape, "")
		var first []string
		for _, m := range shape {
			first = append(first, m.Name)
		}
		if near, like := quantity.Nearest(path[0], first); like {
			return fmt.Errorf("%q is not known here; is %q meant?", full, near)
		}
		return fmt.Errorf("%q is not known here; known are: %s", full, strings.Join(names, ", "))
	}
	m := shape[at]
	if len(path) > 1 {
		if m.Sort != stock.Group {
			return fmt.Errorf("%q: %s has no parts", full, m.Name)
		}
		inner, _ := body[m.Name].(map[string]any)
		if inner == nil {
			inner = map[string]any{}
			body[m.Name] = inner
		}
		return setMember(inner, m.Of, path[1:], full, value)
	}
	parsed, err := parseValue(m, value)
	if err != nil {
		return fmt.Errorf("%s: %w", full, err)
	}
	body[m.Name] = parsed
	return nil
}

// parseValue converts a value as typed to the type of a member.
func parseValue(m stock.Member, value string) (any, error) {
	switch m.Sort {
	case stock.Number:
		n, err := strconv.Atoi(value)
		if err != nil {
			return nil, fmt.Errorf("%q is not a whole number", value)
		}
		return n, nil
	case stock.Truth:
		switch value {
		case "yes", "true":
			return true, nil
		case "no", "false":
			return false, nil
		}
		return nil, fmt.Errorf("%q is neither yes nor no", value)
	case stock.Text:
		return value, nil
	case stock.List:
		if len(m.Of) == 0 {
			return strings.Split(value, ","), nil
		}
	case stock.Group:
		if isMeasure(m) {
			return parseMeasure(m, value)
		}
	}
	var parsed any
	if err := json.Unmarshal([]byte(value), &parsed); err != nil {
		return nil, fmt.Errorf("%q must be JSON here: %w", value, err)
	}
	return parsed, nil
}

// isMeasure reports whether a group is a number with its unit or currency.
func isMeasure(m stock.Member) bool { return len(m.Of) == 2 && m.Of[0].Name == "v" }

// parseMeasure splits a number from its unit or currency, as in "12 kg" or "4.50 USD".
func parseMeasure(m stock.Member, value string) (any, error) {
	at := strings.LastIndexAny(value, "0123456789")
	if at < 0 || strings.TrimSpace(value[at+1:]) == "" {
		return nil, fmt.Errorf("%q needs a number with its %s, such as 12 kg or 4.50 USD", value, map[string]string{"u": "unit", "currency": "currency"}[m.Of[1].Name])
	}
	return map[string]any{"v": strings.TrimSpace(value[:at+1]), m.Of[1].Name: strings.TrimSpace(value[at+1:])}, nil
}

// memberNames lists the members of a shape. Members of groups are written with a dot, such as to.place.
func memberNames(shape []stock.Member, before string) []string {
	var names []string
	for _, m := range shape {
		if m.Sort == stock.Group && !isMeasure(m) {
			names = append(names, memberNames(m.Of, before+m.Name+".")...)
			continue
		}
		names = append(names, before+m.Name)
	}
	return names
}

// Question is a member of an entry that a grower is asked for.
type Question struct {
	Name string // count, to.place …
	Due  bool   // whether it must be given
}

// Questions lists the questions for an entry of a kind, required ones first.
func Questions(kind string) ([]Question, error) {
	shape, known := stock.Shape(kind)
	if !known {
		return nil, unknownKind(kind)
	}
	due := map[string]bool{"count": true}
	for _, m := range shape {
		due[m.Name] = due[m.Name] || m.Due
	}
	var first, then []Question
	for _, name := range memberNames(shape, "") {
		switch q := (Question{name, due[name]}); {
		case name == "born" || kind == "taken in" && name == "lot":
			// the book gives new lots their ids
		case q.Due:
			first = append(first, q)
		default:
			then = append(then, q)
		}
	}
	return append(first, then...), nil
}
