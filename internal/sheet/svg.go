package sheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// svgDrawing draws one of package picture's SVGs on paper, so that the print matches the
// screen. It supports only the elements of those pictures, and any other is an error.
type svgDrawing struct {
	*paper
	x, y, scale float64 // of its corner in millimetres; millimetres for one of its units
	rules       []svgRule
}

var errNoSize = errors.New("the picture does not give its size")

// svgElement is an element with its attributes and style.
type svgElement struct {
	name       string
	attributes map[string]string
	style      map[string]string
}

// picture draws an SVG as large as fits a width and height, and returns its size.
func (p *paper) picture(svg []byte, x, y, width, height float64) Size {
	d := &svgDrawing{paper: p, x: x, y: y}
	var size Size
	decoder := xml.NewDecoder(bytes.NewReader(svg))
	var open []svgElement
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			if size.Width == 0 {
				p.fail(errNoSize)
			}
			return size
		}
		if err != nil {
			p.fail(fmt.Errorf("the picture can't be read: %w", err))
			return size
		}
		switch t := token.(type) {
		case xml.StartElement:
			e := d.element(t)
			if e.name == "svg" {
				own := Size{e.number("width"), e.number("height")}
				if own.Width <= 0 || own.Height <= 0 {
					p.fail(errNoSize)
					return size
				}
				d.scale = min(width/own.Width, height/own.Height)
				size = Size{own.Width * d.scale, own.Height * d.scale}
			}
			d.shape(e)
			open = append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				d.words(open[len(open)-1], string(t))
			}
		}
	}
}

func (d *svgDrawing) element(t xml.StartElement) svgElement {
	e := svgElement{t.Name.Local, map[string]string{}, map[string]string{}}
	for _, a := range t.Attr {
		e.attributes[a.Name.Local] = a.Value
	}
	classes := strings.Fields(e.attributes["class"])
	for _, r := range d.rules {
		if r.holds(e.name, classes) {
			r.apply(e.style)
		}
	}
	if fill := e.attributes["fill"]; fill != "" {
		e.style["fill"] = fill
	}
	return e
}

func (e svgElement) number(name string) float64 {
	v, _ := strconv.ParseFloat(e.attributes[name], 64)
	return v
}

// words takes the text within an element: style rules, or the words of a text.
func (d *svgDrawing) words(e svgElement, said string) {
	switch e.name {
	case "style":
		d.rules = svgRules(said)
	case "text":
		d.write(e, said)
	}
}

// write draws the words of a text element.
func (d *svgDrawing) write(e svgElement, said string) {
	size := styleNumber(e.style["font-size"], 11) * d.scale / point
	heavy := e.style["font-weight"] == "600"
	x, y := d.x+e.number("x")*d.scale, d.y+e.number("y")*d.scale
	switch e.style["text-anchor"] {
	case "end":
		x -= d.width(said, size, heavy)
	case "middle":
		x -= d.width(said, size, heavy) / 2
	}
	if halo, ok := inkOf(e.style["stroke"]); ok && e.style["paint-order"] == "stroke" {
		d.pdf.SetTextRenderingMode(1)
		d.pdf.SetLineWidth(styleNumber(e.style["stroke-width"], 1) * d.scale)
		d.pdf.SetDrawColor(halo[0], halo[1], halo[2])
		d.text(x, y, said, size, heavy, halo)
		d.pdf.SetTextRenderingMode(0)
	}
	colour, ok := inkOf(e.style["fill"])
	if !ok {
		colour = black
	}
	d.text(x, y, said, size, heavy, colour)
}

// shape draws an element that is a shape. The picture's own ground is left out: paper has
// its own.
func (d *svgDrawing) shape(e svgElement) {
	if e.attributes["class"] == "paper" {
		return
	}
	switch e.name {
	case "rect":
		d.paint(e, func(how string) {
			d.pdf.Rect(d.x+e.number("x")*d.scale, d.y+e.number("y")*d.scale, e.number("width")*d.scale, e.number("height")*d.scale, how)
		})
	case "circle":
		d.paint(e, func(how string) {
			d.pdf.Circle(d.x+e.number("cx")*d.scale, d.y+e.number("cy")*d.scale, e.number("r")*d.scale, how)
		})
	case "path":
		d.paint(e, func(how string) { d.path(e.attributes["d"], how) })
	case "svg", "style", "title", "desc", "g", "text":
	default:
		d.fail(fmt.Errorf("the picture has an element that paper does not know, %q", e.name))
	}
}

// paint sets an element's inks and draws it, filled, outlined or both.
func (d *svgDrawing) paint(e svgElement, draw func(how string)) {
	how := ""
	if fill, ok := inkOf(e.style["fill"]); ok {
		d.pdf.SetFillColor(fill[0], fill[1], fill[2])
		how += "F"
	}
	if stroke, ok := inkOf(e.style["stroke"]); ok {
		d.pdf.SetDrawColor(stroke[0], stroke[1], stroke[2])
		d.pdf.SetLineWidth(styleNumber(e.style["stroke-width"], 1) * d.scale)
		how += "D"
	}
	if how == "" {
		return
	}
	var dashes []float64
	for _, dash := range strings.Fields(e.style["stroke-dasharray"]) {
		dashes = append(dashes, styleNumber(dash, 1)*d.scale)
	}
	d.pdf.SetDashPattern(dashes, 0)
	if opacity := e.attributes["opacity"]; opacity != "" {
		d.pdf.SetAlpha(styleNumber(opacity, 1), "Normal")
		defer d.pdf.SetAlpha(1, "Normal")
	}
	draw(how)
	d.pdf.SetDashPattern(nil, 0)
}
