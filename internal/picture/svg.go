package picture

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
)

// width of every drawing, in its own units: the pixels of a small phone.
const width = 390.0

// drawing is an SVG being written.
type drawing struct {
	bytes.Buffer
}

// tag writes an element with attributes given as name, value, name, value …; a value may be a
// number or text.
func (d *drawing) tag(name string, attributes ...any) {
	d.open(name, "/>", attributes...)
}

func (d *drawing) open(name, end string, attributes ...any) {
	d.WriteString("<" + name)
	for i := 0; i+1 < len(attributes); i += 2 {
		fmt.Fprintf(d, ` %s="%s"`, attributes[i], attribute(attributes[i+1]))
	}
	d.WriteString(end + "\n")
}

func attribute(v any) string {
	if x, isNumber := v.(float64); isNumber {
		return number(x)
	}
	return escaped(fmt.Sprint(v))
}

// number writes a coordinate to a tenth of a pixel, without trailing zeros.
func number(x float64) string {
	s := strings.TrimSuffix(fmt.Sprintf("%.1f", x), ".0")
	if s == "-0" {
		return "0"
	}
	return s
}

func escaped(s string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // writing to a Buffer can't fail
	return b.String()
}

// text writes words at a point; more attributes as in tag.
func (d *drawing) text(x, y float64, words string, attributes ...any) {
	d.WriteString("<text")
	for i := 0; i+1 < len(attributes); i += 2 {
		fmt.Fprintf(d, ` %s="%s"`, attributes[i], attribute(attributes[i+1]))
	}
	fmt.Fprintf(d, ` x="%s" y="%s">%s</text>`+"\n", number(x), number(y), escaped(words))
}

// titled writes a group with a title, which is shown as a tooltip and read by screen readers.
func (d *drawing) titled(title string, draw func()) {
	fmt.Fprintf(d, "<g><title>%s</title>\n", escaped(title))
	draw()
	d.WriteString("</g>\n")
}

// style is the look of all drawings: one typeface, ink on paper, light on dark at night.
const style = `<style>
text{font:11px system-ui,sans-serif;fill:#1d1d1b}
.small{font-size:9.5px}.head{font-size:13px;font-weight:600}.end{text-anchor:end}.mid{text-anchor:middle}
.paper{fill:#fffdf8}.band{fill:#f1eee6;stroke:#8b867a;stroke-width:.6}.ink{fill:#1d1d1b}
.line{stroke:#8b867a;stroke-width:.6;fill:none}.room{stroke:#1d1d1b;stroke-width:1;stroke-dasharray:3 2;fill:none}
.used{fill:#6f6a5e}.over{fill:#1d1d1b}.halo{paint-order:stroke;stroke:#fffdf8;stroke-width:2.5px;stroke-linejoin:round}
.ribbon{stroke:#1d1d1b;stroke-width:.7;stroke-linejoin:round}.frost{fill:#4a6a8a}
@media (prefers-color-scheme:dark){text{fill:#efece4}.paper{fill:#191916}.band{fill:#26251f;stroke:#7d786b}.room{stroke:#efece4}
.used{fill:#a8a294}.over{fill:#efece4}.halo{stroke:#191916}.ribbon{stroke:#efece4}.ink{fill:#efece4}.frost{fill:#7d9dbd}}
</style>
`

// begin starts a drawing of the given height, with a name and description for screen readers.
func begin(height float64, title, description string) *drawing {
	d := &drawing{}
	fmt.Fprintf(d, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" width="%s" height="%s" role="img" aria-labelledby="t d">`+"\n",
		number(width), number(height), number(width), number(height))
	fmt.Fprintf(d, `<title id="t">%s</title>`+"\n"+`<desc id="d">%s</desc>`+"\n", escaped(title), escaped(description))
	d.WriteString(style)
	d.tag("rect", "class", "paper", "width", width, "height", height)
	return d
}

// end closes a drawing and returns it.
func (d *drawing) end() []byte {
	d.WriteString("</svg>\n")
	return d.Bytes()
}
