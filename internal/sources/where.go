package sources

import "eyeup/stock"

// Page is a page on which a record is shown, or can be changed.
type Page int

// The pages that records name.
const (
	Nowhere    Page = iota // no page shows it
	Here                   // the same page: Where.Source says which of its figures
	Log                    // every entry
	Lot                    // one lot: Where.Code and Where.Entry say which, and which entry of its life
	Patch                  // the planting list
	Rounds                 // going through a store
	Season                 // the plans
	Change                 // where a change of the season is tried
	Stock                  // the stock
	StockByLot             // the stock, lot by lot
	Weather                // where the weather of the garden is from
	Described              // the garden's description: Where.Part says which part, empty for all
)

// Where is a page, or a part of one. It is not a web address: package page writes that.
type Where struct {
	Page   Page
	Source string     // key of other figures on the same page; see Key
	Code   stock.Code // of Lot
	Entry  stock.ID   // of Lot; zero for the lot itself
	Part   string     // of Described, such as "figures"
}

// at is a page as a whole.
func at(p Page) Where { return Where{Page: p} }

// here is another Basis on the same page; see Key.
func here(parts ...string) Where { return Where{Page: Here, Source: Key(parts...)} }

// part is a part of the garden's description.
func part(name string) Where { return Where{Page: Described, Part: name} }
