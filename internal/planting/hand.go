package planting

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/stockbook"
	"eyeup/odds"
	"eyeup/outlook"
	"eyeup/place"
	"eyeup/stock"
)

// inHand is the stock of a variety that can be planted.
type inHand struct {
	plants odds.Amount // plants to expect if all clumps are cut; NaN: as many as wanted
	clumps int
	whole  int    // plants that come from no clump
	stands int    // divisions, corms and plants today
	why    string // why the plants can't be predicted
}

// varietyKey identifies a variety: its kind and name.
type varietyKey struct{ kind, name string }

// stores returns the temperature and humidity of the garden's stores.
func stores(g *garden.Garden) map[string]outlook.Store {
	stores := map[string]outlook.Store{}
	for _, p := range g.Places {
		if steady, is := p.Model.(place.Steady); is {
			stores[p.Name] = outlook.Store{Temperature: steady.Temperature, Humidity: steady.Humidity}
		}
	}
	return stores
}

// stockInHand predicts the stock of every variety at a date. It also returns what was assumed.
func stockInHand(g *garden.Garden, book *stock.Book, today, at civil.Date) (map[varietyKey]inHand, []string, error) {
	o, err := outlook.Reckon(outlook.Question{Book: book, Today: today, At: at, Stores: stores(g), Kinds: g.Kind})
	if err != nil {
		return nil, nil, err
	}
	all := map[varietyKey]inHand{}
	for _, v := range o.Varieties {
		all[varietyKey{v.Kind, v.Name}] = plantsOf(g, v)
	}
	for _, h := range g.Stock {
		key := varietyKey{h.Variety.Kind, h.Variety.Name}
		if h.Form == stock.Seed && h.Count > 0 {
			sown := all[key]
			sown.plants = odds.Exactly(math.NaN())
			all[key] = sown
		}
	}
	return all, o.Assumed, nil
}

// plantsOf computes the plants to expect from good divisions and corms, less the share that never shoots.
func plantsOf(g *garden.Garden, v outlook.Variety) inHand {
	h := inHand{plants: odds.Exactly(float64(v.Elsewhere)), clumps: v.Clumps, whole: v.Elsewhere, stands: v.Others + v.Elsewhere}
	if v.Clumps+v.Others == 0 {
		return h
	}
	if v.Why != "" {
		h.plants, h.why = odds.Exactly(math.NaN()), v.Why
		return h
	}
	shoot := 1.0
	if kind, known := g.Kind(v.Kind); known && kind.Sprout.Never > 0 {
		shoot -= float64(kind.Sprout.Never)
	}
	good := v.Good.Times(shoot)
	h.plants = odds.Amount{Low: good.Low + float64(v.Elsewhere), Middle: good.Middle + float64(v.Elsewhere), High: good.High + float64(v.Elsewhere)}
	if n := v.Clumps + v.Others; v.Others > 0 {
		h.whole += int(math.Floor(float64(v.Others) / float64(n) * v.Through.Low * shoot))
	}
	return h
}

// bookOf makes a book in memory of a stock list, all taken in on one day.
func bookOf(holdings []stock.Holding, on civil.Date) (*stock.Book, error) {
	book := stock.New()
	var entries []stock.Entry
	for i, one := range stockbook.StockDrafts(holdings) {
		body, err := json.Marshal(one.Body)
		if err != nil {
			return nil, err
		}
		if body, err = stock.Canonical(body); err != nil {
			return nil, err
		}
		e := stock.Entry{Kind: one.Kind, Version: 1, On: on, Body: body}
		binary.BigEndian.PutUint64(e.ID[8:], uint64(i)+1)
		entries = append(entries, e)
	}
	if len(entries) == 0 {
		return book, nil
	}
	if _, err := book.Add(entries...); err != nil {
		return nil, fmt.Errorf("the stock list can't be used: %w", err)
	}
	book.Keep()
	return book, nil
}

// asked returns the wishes in [patch], or none if the section is absent.
func asked(g *garden.Garden) *exchange.Patch {
	if g.Garden.Patch == nil {
		return &exchange.Patch{}
	}
	return g.Garden.Patch
}
