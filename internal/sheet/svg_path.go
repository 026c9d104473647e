package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var pathToken = regexp.MustCompile(`[A-Za-z]|-?[0-9]*\.?[0-9]+`)

// pathTakes is how many numbers each command of a path takes.
var pathTakes = map[string]int{"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "Z": 0}

// path draws a path of the absolute commands M, L, H, V, C and Z.
func (d *svgDrawing) path(commands, how string) {
	tokens := pathToken.FindAllString(commands, -1)
	x, y := 0.0, 0.0
	for len(tokens) > 0 {
		command := tokens[0]
		takes, known := pathTakes[command]
		if !known || len(tokens) < 1+takes {
			d.fail(fmt.Errorf("the picture has a path that paper does not know: %q", commands))
			return
		}
		v := make([]float64, takes)
		for i := range v {
			v[i], _ = strconv.ParseFloat(tokens[1+i], 64)
		}
		tokens = tokens[1+takes:]
		x, y = d.step(command, v, x, y)
	}
	d.pdf.DrawPath(how)
}

// step draws one command from a point, and returns the point it leads to.
func (d *svgDrawing) step(command string, v []float64, x, y float64) (toX, toY float64) {
	across := func(x float64) float64 { return d.x + x*d.scale }
	down := func(y float64) float64 { return d.y + y*d.scale }
	switch command {
	case "M":
		d.pdf.MoveTo(across(v[0]), down(v[1]))
		return v[0], v[1]
	case "H":
		v = []float64{v[0], y}
	case "V":
		v = []float64{x, v[0]}
	case "C":
		d.pdf.CurveBezierCubicTo(across(v[0]), down(v[1]), across(v[2]), down(v[3]), across(v[4]), down(v[5]))
		return v[4], v[5]
	case "Z":
		d.pdf.ClosePath()
		return x, y
	}
	d.pdf.LineTo(across(v[0]), down(v[1]))
	return v[0], v[1]
}

// svgRule is a rule of a picture's style sheet: for an element or a class.
type svgRule struct {
	of    string // text, or .small
	style map[string]string
}

var styleRule = regexp.MustCompile(`([.a-z]+)\{([^{}]*)\}`)

// svgRules reads the rules of a style sheet for light paper: what follows @media is for
// screens.
func svgRules(sheet string) []svgRule {
	sheet, _, _ = strings.Cut(sheet, "@media")
	var all []svgRule
	for _, m := range styleRule.FindAllStringSubmatch(sheet, -1) {
		r := svgRule{m[1], map[string]string{}}
		for _, part := range strings.Split(m[2], ";") {
			name, value, _ := strings.Cut(part, ":")
			if name == "font" { // size and family in one
				name, value = "font-size", strings.Fields(value)[0]
			}
			r.style[name] = value
		}
		all = append(all, r)
	}
	return all
}

func (r svgRule) holds(name string, classes []string) bool {
	class, isClass := strings.CutPrefix(r.of, ".")
	return isClass && slices.Contains(classes, class) || !isClass && r.of == name
}

func (r svgRule) apply(style map[string]string) {
	for name, value := range r.style {
		style[name] = value
	}
}

// styleNumber reads a number with or without px.
func styleNumber(text string, otherwise float64) float64 {
	v, err := strconv.ParseFloat(strings.TrimSuffix(text, "px"), 64)
	if err != nil {
		return otherwise
	}
	return v
}
