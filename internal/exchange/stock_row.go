package exchange

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"eyeup/quantity"
	"eyeup/stock"
)

var colourCode = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

func (r *stockReader) spot(field int) spot {
	line, column := r.csv.FieldPos(field)
	return spot{line, column}
}

// at returns the place of a column in the row.
func (r *stockReader) at(column string) spot {
	i, there := r.columns[column]
	if !there {
		return r.spot(0)
	}
	return r.spot(i)
}

// field returns a column of the row without surrounding spaces; empty if there is none.
func (r *stockReader) field(column string) string {
	text := r.typed(column)
	if strings.ContainsFunc(text, unicode.IsControl) {
		r.refuse(r.at(column), "%s: %q contains a character that can't be printed; retype it on one line", column, text)
		return ""
	}
	return text
}

// typed is field without the check for unprintable characters.
func (r *stockReader) typed(column string) string {
	i, there := r.columns[column]
	if !there {
		return ""
	}
	return strings.TrimSpace(Armed(strings.TrimSpace(r.row[i]))) // exported tables are defused
}

func (r *stockReader) holding() stock.Holding {
	h := stock.Holding{
		Variety: stock.Variety{Name: r.text("variety"), Kind: r.text("kind")},
		Place:   r.text("place"), Crate: r.field("crate"), Bed: r.field("bed"), Row: r.field("row"), Pack: r.field("pack"), Note: r.field("note"),
		Line: r.at("variety").line,
	}
	h.Code = r.code()
	h.Form = stock.Form(r.choice("form", stock.Clump, stock.Division, stock.Corm, stock.Seed, stock.Cutting, stock.Tray, stock.Pot, stock.Plant))
	h.Variety.Timing = stock.Timing(r.timing())
	h.Variety.Colour = r.colour()
	h.Variety.Height = r.height()
	h.Count = r.count("count", 1)
	h.Plant = r.count("plant", 0)
	h.Reserve = r.count("reserve", 0)
	if h.Crate != "" && h.Bed != "" {
		r.refuse(r.at("bed"), "crate %s and bed %s exclude each other; leave one empty", h.Crate, h.Bed)
	}
	if _, known := r.garden.Place(h.Place); h.Place != "" && !known {
		names := make([]string, len(r.garden.Places))
		for i, p := range r.garden.Places {
			names[i] = p.Name
		}
		r.refuse(r.at("place"), "%s", notKnown("place", h.Place, names)+"; "+gardenFile+" names the places")
	}
	return h
}

// text returns a field that must not be empty.
func (r *stockReader) text(column string) string {
	s := r.field(column)
	if s == "" {
		r.refuse(r.at(column), "the %s is missing", column)
	}
	return s
}

func (r *stockReader) code() string {
	typed := r.field("code")
	if typed == "" {
		return ""
	}
	code, err := stock.ParseCode(typed)
	if err != nil {
		r.refuse(r.at("code"), "%v", err)
		return ""
	}
	return string(code)
}

func (r *stockReader) choice(column string, known ...stock.Form) string {
	word := r.text(column)
	words := make([]string, len(known))
	for i, k := range known {
		words[i] = string(k)
	}
	if word != "" && !slices.Contains(words, word) {
		r.refuse(r.at(column), "%s", notKnown(column, word, words))
	}
	return word
}

func (r *stockReader) timing() string {
	word := r.field("timing")
	known := []string{string(stock.Early), string(stock.Mid), string(stock.Late)}
	if word != "" && !slices.Contains(known, word) {
		r.refuse(r.at("timing"), "%s", notKnown("timing", word, known)+"; leave it empty where it is not known")
	}
	return word
}

func (r *stockReader) colour() string {
	code := r.field("colour")
	if code != "" && !colourCode.MatchString(code) {
		r.refuse(r.at("colour"), "%q is not a colour; write it as # and six of 0-9 and a-f, such as #b3261e, or leave it empty", code)
	}
	return strings.ToLower(code)
}

func (r *stockReader) height() quantity.Length {
	typed := r.field("height")
	if typed == "" {
		return 0
	}
	l, err := quantity.ParseLength(typed)
	switch {
	case err != nil:
		r.refuse(r.at("height"), "height: %v", err)
	case l <= 0 || l > tallest:
		r.refuse(r.at("height"), "a plant height of %s is not plausible; check the number and its unit", r.garden.System.Length(l))
	}
	return l
}

// count returns a whole number of at least least. An empty field is 0 if that is allowed.
func (r *stockReader) count(column string, least int) int {
	typed := r.field(column)
	if typed == "" && least == 0 {
		return 0
	}
	n, err := strconv.Atoi(typed)
	if err != nil || n < least || n > mostCount {
		r.refuse(r.at(column), "%s: expected a whole number from %d to %d, not %q", column, least, mostCount, typed)
		return 0
	}
	return n
}

// agree reports a row that contradicts an earlier row of the same lot or variety.
func (r *stockReader) agree(h stock.Holding) {
	if h.Code != "" {
		first, again := r.codes[h.Code]
		if again && (first.Variety.Name != h.Variety.Name || first.Variety.Kind != h.Variety.Kind) {
			r.refuse(r.at("code"), "the code %s already belongs to %s in line %d; give every lot its own", h.Code, first.Variety.Name, first.Line)
		}
		if !again {
			r.codes[h.Code] = h
		}
	}
	key := h.Variety.Kind + "\x00" + h.Variety.Name
	first, again := r.varieties[key]
	if !again {
		r.varieties[key] = h
		return
	}
	r.same("timing", string(h.Variety.Timing), string(first.Variety.Timing), first.Line)
	r.same("colour", h.Variety.Colour, first.Variety.Colour, first.Line)
	r.same("height", r.garden.System.Length(h.Variety.Height), r.garden.System.Length(first.Variety.Height), first.Line)
}

func (r *stockReader) same(column, here, there string, line int) {
	if r.typed(column) != "" && here != there {
		r.refuse(r.at(column), "the %s is %s, but line %d has another for the same variety; make them agree", column, here, line)
	}
}
