package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"eyeup/quantity"
)

// Layout is the arrangement of labels on a page, in millimetres. Its name consists of measures
// only.
type Layout struct {
	Page         Size
	Across, Down int // labels in a row, rows on a page; one each on a roll

	Left, Top     float64 // margins before the first label
	Right, Bottom float64 // margins after the last
	GapX, GapY    float64 // between labels
}

// Default margins and gaps, in millimetres: reachable by most printers, with room for
// scissors.
const (
	usualMargin = 8.0
	usualGap    = 2.0
	rollLength  = 29.0 // default length of a label from a roll
)

// Limits that catch typing errors: millimetres of a page's side, labels in a row or column.
const (
	greatestSide = 1200.0
	mostLabels   = 50
)

// layoutForms says how a layout is written.
const layoutForms = "write it like a4:3x8 (3 across, 8 down), letter:2x5,margin=12mm,gap=3mm, roll:62mm, roll:62x40mm or stake:125x15mm"

// ParseLayout reads a layout by its measures:
//
//	a4:3x8, letter:3x10        so many across and down
//	  ,margin=8mm ,gap=2mm     round all labels, between them; or one by one:
//	  ,left= ,right= ,top= ,bottom= ,across= ,down=
//	roll:62mm, roll:62x40mm    one label a page, so wide (and long)
//	stake:125x15mm             one tag a page, so long and wide
//
// It fails, saying what to write, for anything else, and where labels come out too small
// for a code that can be read.
func ParseLayout(typed string) (Layout, error) {
	parts := strings.Split(strings.ToLower(strings.ReplaceAll(typed, " ", "")), ",")
	name, measures, found := strings.Cut(parts[0], ":")
	if !found {
		return Layout{}, fmt.Errorf("%q is not a layout for labels; %s", typed, layoutForms)
	}
	var l Layout
	var err error
	switch name {
	case "a4":
		l, err = sheetOf(A4, measures, parts[1:])
	case "letter":
		l, err = sheetOf(Letter, measures, parts[1:])
	case "roll", "stake":
		if len(parts) > 1 {
			return Layout{}, fmt.Errorf("labels %q: a %s has no margins or gaps; give its measures only", typed, name)
		}
		l, err = singleOf(measures, name == "roll")
	default:
		err = fmt.Errorf("there is no %q", name)
	}
	if err != nil {
		return Layout{}, fmt.Errorf("labels %q: %w; %s", typed, err, layoutForms)
	}
	return l, l.check(typed)
}

func sheetOf(page Size, counts string, rest []string) (Layout, error) {
	l := Layout{Page: page, Left: usualMargin, Right: usualMargin, Top: usualMargin, Bottom: usualMargin, GapX: usualGap, GapY: usualGap}
	across, down, found := strings.Cut(counts, "x")
	var errs [2]error
	l.Across, errs[0] = strconv.Atoi(across)
	l.Down, errs[1] = strconv.Atoi(down)
	if !found || errs[0] != nil || errs[1] != nil {
		return l, fmt.Errorf("%q does not give the number across and down", counts)
	}
	if min(l.Across, l.Down) < 1 || max(l.Across, l.Down) > mostLabels {
		return l, fmt.Errorf("1 to %d labels go across and down", mostLabels)
	}
	for _, part := range rest {
		if err := l.set(part); err != nil {
			return l, err
		}
	}
	return l, nil
}

// set reads one margin or gap.
func (l *Layout) set(part string) error {
	name, typed, _ := strings.Cut(part, "=")
	targets := map[string][]*float64{
		"margin": {&l.Left, &l.Right, &l.Top, &l.Bottom}, "gap": {&l.GapX, &l.GapY},
		"left": {&l.Left}, "right": {&l.Right}, "top": {&l.Top}, "bottom": {&l.Bottom}, "across": {&l.GapX}, "down": {&l.GapY},
	}
	into, known := targets[name]
	if !known {
		return fmt.Errorf("there is no %q", name)
	}
	mm, err := millimetres(typed)
	if err != nil {
		return err
	}
	for _, to := range into {
		*to = mm
	}
	return nil
}

// singleOf reads the measures of a page that is one label.
func singleOf(measures string, roll bool) (Layout, error) {
	number := func(s string) bool { return s != "" && strings.Trim(s, "0123456789.") == "" }
	first, second, both := strings.Cut(measures, "x")
	if both && number(first) {
		first += strings.TrimLeft(second, "0123456789.") // 62x40mm: one unit for both
	}
	width, err := millimetres(first)
	if err != nil {
		return Layout{}, err
	}
	height := rollLength
	if both {
		if height, err = millimetres(second); err != nil {
			return Layout{}, err
		}
	} else if !roll {
		return Layout{}, fmt.Errorf("a stake has a length and a width")
	}
	return Layout{Page: Size{width, height}, Across: 1, Down: 1}, nil
}

func millimetres(typed string) (float64, error) {
	length, err := quantity.ParseLength(typed)
	if err != nil {
		return 0, err
	}
	mm := float64(length) * 1000
	if mm < 0 || mm > greatestSide {
		return 0, fmt.Errorf("%s is not plausible: lengths are from 0 to %.0f mm", typed, greatestSide)
	}
	return mm, nil
}

// Label returns the size of one label.
func (l Layout) Label() Size {
	return Size{
		(l.Page.Width - l.Left - l.Right - float64(l.Across-1)*l.GapX) / float64(l.Across),
		(l.Page.Height - l.Top - l.Bottom - float64(l.Down-1)*l.GapY) / float64(l.Down),
	}
}

// PerPage returns how many labels a page holds.
func (l Layout) PerPage() int { return l.Across * l.Down }

// corner returns the upper left corner of the n-th label of a page, from 0, row by row.
func (l Layout) corner(n int) (x, y float64) {
	size := l.Label()
	return l.Left + float64(n%l.Across)*(size.Width+l.GapX), l.Top + float64(n/l.Across)*(size.Height+l.GapY)
}

// check refuses labels too small for a readable code.
func (l Layout) check(typed string) error {
	size := l.Label()
	sides := []float64{size.Width, size.Height}
	slices.Sort(sides)
	if sides[0] < leastShort || sides[1] < leastLong {
		return fmt.Errorf("labels %q: each would be %.1f by %.1f mm; the least is %.0f by %.0f mm, so that the square code can be read; use fewer labels, smaller margins or a larger page",
			typed, size.Width, size.Height, leastShort, leastLong)
	}
	return nil
}

// The smallest label, in millimetres: room for a square code of 8 mm, and for the lot's code
// and a name beside it.
const (
	leastShort = 10.0
	leastLong  = 28.0
)
