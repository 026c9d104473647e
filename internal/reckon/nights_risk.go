package reckon

import (
	"eyeup/culture"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/stock"
)

// AtRisk is a lot that the cold may damage where it stands.
type AtRisk struct {
	Code    string   `json:"code,omitempty"`
	Variety string   `json:"variety"`
	Kind    string   `json:"kind"`
	Form    string   `json:"form"`
	Count   int      `json:"count"`
	Harm    *float64 `json:"harmed_below_c" jsonschema:"oneof_type=number;null,description=leaves are harmed below; null where that is not known or there are none"`
	Harmed  float64  `json:"harmed_share" jsonschema:"description=share of the years in which it gets so cold"`
	Kills   *float64 `json:"frozen_at_c" jsonschema:"oneof_type=number;null,description=leaves or tubers freeze at; null where that is not known"`
	Frozen  float64  `json:"frozen_share" jsonschema:"description=share of the years in which it gets so cold"`
	Effect  string   `json:"effect" jsonschema:"description=what freezing does: set back or dead"`
}

// storedFreezes is where tubers and corms freeze in a store.
var storedFreezes = quantity.Celsius(culture.Usual("store.freezes"))

// atRisk lists the stock in a place that is damaged in some of the years. inside is the coldest hour of
// each year, in °C.
func atRisk(g *garden.Garden, p exchange.Place, inside []float64) []AtRisk {
	risks := []AtRisk{}
	for _, h := range g.Stock {
		if h.Place != p.Name || h.Form == stock.Seed {
			continue
		}
		kind, known := g.Kind(h.Variety.Kind)
		if !known {
			continue
		}
		r := AtRisk{Code: h.Code, Variety: h.Variety.Name, Kind: kind.Name, Form: string(h.Form), Count: h.Count}
		harm, kills := limits(kind, h.Form, p.Sort)
		r.Harm, r.Harmed = limitAndShare(inside, harm)
		r.Kills, r.Frozen = limitAndShare(inside, kills)
		r.Effect = string(effect(kind, h.Form))
		if r.Harmed > 0 || r.Frozen > 0 {
			risks = append(risks, r)
		}
	}
	return risks
}

// IsDormant reports whether stock of the form has no leaves yet.
func IsDormant(f stock.Form) bool {
	return f == stock.Clump || f == stock.Division || f == stock.Corm
}

// limits returns the temperatures below which leaves are harmed and at which leaves or tubers freeze. A limit
// that does not apply is unknown: dormant stock in the ground is sheltered.
func limits(k *culture.Kind, f stock.Form, where exchange.Sort) (harm, kills quantity.Temperature) {
	switch {
	case IsDormant(f) && where == exchange.Ground:
		return quantity.Unknown(), quantity.Unknown()
	case IsDormant(f):
		return quantity.Unknown(), storedFreezes
	}
	return k.ColdDamage, k.Frost.Kills
}

func effect(k *culture.Kind, f stock.Form) culture.Effect {
	switch {
	case IsDormant(f):
		return culture.Dead
	case f == stock.Cutting:
		return k.Frost.Cutting
	}
	return k.Frost.Leafy
}

// limitAndShare returns a limit in °C, nil if unknown, and the share of the years that reach it.
func limitAndShare(inside []float64, limit quantity.Temperature) (*float64, float64) {
	if !limit.IsKnown() {
		return nil, 0
	}
	return report.Rounded(limit.Celsius(), 2), shareBelow(inside, limit.Celsius())
}
