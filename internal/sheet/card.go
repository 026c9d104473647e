package sheet

import (
	"fmt"
	"io"

	"eyeup/civil"
)

// Card is the card of a crate: its number, readable from the cellar door, and its contents.
type Card struct {
	Crate string
	Place string
	Lots  []CardLot
}

// CardLot is one lot in a crate.
type CardLot struct {
	Code    string
	Variety string
	Colour  string // #rrggbb
	Holds   string // such as 14 clumps in vermiculite
}

// Cards writes cards for crates as PDF; the layout's cards must be at least 90 by 60 mm. It
// fails without cards, and if a crate has more lots than fit on its card.
func Cards(w io.Writer, l Layout, cards []Card, outline bool, today civil.Date) (Told, error) {
	size := l.Label()
	if len(cards) == 0 {
		return Told{}, fmt.Errorf("there are no crates to print cards for; first assign crates to the stock")
	}
	if size.Width < 90 || size.Height < 60 {
		return Told{}, fmt.Errorf("a card of %.0f by %.0f mm is too small for a crate; take 90 by 60 mm at least, such as a4:2x4", size.Width, size.Height)
	}
	p := newPaper("crate cards", l.Page, today)
	for i, card := range cards {
		if i%l.PerPage() == 0 {
			p.page()
		}
		x, y := l.corner(i % l.PerPage())
		p.card(card, x, y, size)
		if outline {
			p.frame(x, y, size.Width, size.Height, 0.1, rule)
		}
		if p.err != nil {
			return Told{}, fmt.Errorf("the card of crate %s: %w", card.Crate, p.err)
		}
	}
	return p.finish(w)
}

// leastRow is the smallest height of a lot's row on a card, in millimetres, at which its
// square code can be read.
const leastRow = 11.0

// roomyRow is the height of a lot's row, in millimetres, at which its lines fit below each
// other.
const roomyRow = 24.0

func (p *paper) card(c Card, x, y float64, size Size) {
	const pad = 4.0
	head := size.Height * 0.24
	p.draw(p.fit("crate", 20, 6, 10, plain), x+pad, y+pad, grey)
	number := p.fit(c.Crate, size.Width*0.5, head, head/(point*leading), bold)
	p.draw(number, x+pad+14, y+pad-1, black)
	p.textEnd(x+size.Width-pad, y+pad+4, c.Place, 12, plain, black)
	p.line(x+pad, y+pad+head, x+size.Width-pad, y+pad+head, 0.3, rule)

	room := size.Height - 2*pad - head
	each := min(room/float64(len(c.Lots)), 38)
	if each < leastRow {
		p.fail(fmt.Errorf("%d lots do not fit on a card of %.0f by %.0f mm; use larger cards", len(c.Lots), size.Width, size.Height))
		return
	}
	for i, lot := range c.Lots {
		p.cardLot(lot, x+pad, y+pad+head+float64(i)*each, size.Width-2*pad, each)
	}
}

// cardLot draws one lot of a crate: name, code and contents below each other if the crate has
// few lots, beside each other if it has many.
func (p *paper) cardLot(lot CardLot, x, y, width, height float64) {
	p.drawSquare(lot.Code, x+width-height+quietOf(lot.Code, height), y, height)
	inner := width - height - 2
	if height > roomyRow {
		p.draw(p.fit(lot.Variety, inner, height*0.44, height*0.38/point, bold), x, y+height*0.04, black)
		p.draw(p.fit(lot.Code, inner, height*0.26, height*0.21/point, bold), x, y+height*0.48, black)
		p.cardHolds(lot, x, y+height*0.76, inner, height*0.24)
		return
	}
	code := p.fit(lot.Code, inner*0.35, height*0.5, height*0.42/point, bold)
	p.draw(code, x, y+height*0.5, black)
	p.draw(p.fit(lot.Variety, inner, height*0.46, height*0.42/point, bold), x, y+height*0.05, black)
	after := p.width(lot.Code, code.size, bold) + 3
	p.cardHolds(lot, x+after, y+height*0.54, inner-after, height*0.44)
}

// cardHolds draws a lot's colour and amount.
func (p *paper) cardHolds(lot CardLot, x, y, width, height float64) {
	words := ColourWords(lot.Colour)
	if words != "" {
		p.swatch(x, y+0.6, 5, min(4, height*0.7), lot.Colour)
		x, width = x+6.5, width-6.5
		words += ", "
	}
	p.draw(p.fit(words+lot.Holds, width, height, 11, plain), x, y, black)
}
