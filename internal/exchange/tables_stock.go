package exchange

import (
	"eyeup/stock"
)

// StockTable makes the table of stock: the columns of a stock list, which reads it back.
func StockTable(holdings []stock.Holding) Table {
	t := Table{Name: "stock", Says: "What stands in the garden; it can be read back as a stock list.", Fields: stockFields}
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
	{"code", Text, "", "the lot's, for life"},
	{"variety", Text, "", "its name"},
	{"kind", Text, "", "what it is for its culture, such as dahlia"},
	{"form", Text, "", "clump, division, corm, seed, cutting, tray, pot or plant"},
	{"count", Whole, "individuals", "how many stand there; packets of seed"},
	{"place", Text, "", "where they stand"},
	{"crate", Text, "", "crate, tray or pot within the place"},
	{"bed", Text, "", "bed in open ground"},
	{"row", Text, "", "row within the bed"},
	{"pack", Text, "", "what they are packed in"},
	{"timing", Text, "", "early, mid or late beside others of the kind"},
	{"colour", Text, "", "# and six hexadecimal digits, red, green, blue"},
	{"height", Text, "", "a length with its unit"},
	{"plant", Whole, "individuals", "how many are wanted in the patch"},
	{"reserve", Whole, "individuals", "how many are kept back as insurance"},
	{"note", Text, "", "the grower's own"},
}
