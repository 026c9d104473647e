package page

import (
	"net/url"

	"eyeup/internal/sources"
)

// addresses are those of the pages that sources name as a whole.
var addresses = map[sources.Page]string{
	sources.Log: "/log", sources.Patch: "/patch", sources.Rounds: "/rounds", sources.Season: "/season", sources.Change: "/season#change",
	sources.Stock: "/stock", sources.StockByLot: "/stock?by=lot", sources.Weather: "/weather#source",
}

// addressOf is the address of a page that a source names; empty where it names none.
func addressOf(w sources.Where) string {
	switch w.Page {
	case sources.Here:
		return whyAt + w.Source
	case sources.Lot:
		address := "/stock/" + string(w.Code)
		if !w.Entry.IsZero() {
			address += "#" + w.Entry.String()
		}
		return address
	case sources.Described:
		if w.Part == "" {
			return "/garden"
		}
		return "/garden?part=" + url.QueryEscape(w.Part) + "#garden/" + url.PathEscape(w.Part)
	}
	return addresses[w.Page]
}
