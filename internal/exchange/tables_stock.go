package exchange

import (
	"eyeup/stock"
)

// StockTable makes the table of stock, with the columns of a stock list.
func StockTable(holdings []stock.Holding) Table {
	t := Table{Name: "stock", Says: "What the garden holds; it can be read back as a stock list.", Fields: stockFields}
	for _, h := range holdings {
		height := ""
		if h.Variety.Height != 0 {
			height = h.Variety.Height.Written()
		}
		t.Rows = append(t.Rows, []any{
			h.Code, h.Variety.Name, h.Variety.Kind, string(h.Form), h.Count, h.Place, h.Crate, h.Bed, h.Row, h.Pack,
			string(h.Variety.Timing), h.Variety.Colour, height, h.Plant, h.Reserve, h.Note,
		})
	}
	return t
}

// stockFields are the columns of a stock list, in the order of stockColumns.
var stockFields = []Field{
	{"code", Text, "", "the lot's code, which never changes"},
	{"variety", Text, "", "its name"},
	{"kind", Text, "", "kind of plant, such as dahlia"},
	{"form", Text, "", "clump, division, corm, seed, cutting, tray, pot or plant"},
	{"count", Whole, "individuals", "how many stand there; for seed, packets"},
	{"place", Text, "", "where they stand"},
	{"crate", Text, "", "crate, tray or pot within the place"},
	{"bed", Text, "", "bed in open ground"},
	{"row", Text, "", "row within the bed"},
	{"pack", Text, "", "what they are packed in"},
	{"timing", Text, "", "early, mid or late compared with others of the kind"},
	{"colour", Text, "", "# and six hexadecimal digits, red, green, blue"},
	{"height", Text, "", "a length with its unit"},
	{"plant", Whole, "individuals", "how many are wanted in the patch"},
	{"reserve", Whole, "individuals", "how many are kept back as insurance"},
	{"note", Text, "", "the grower's note"},
}
