package page

import (
	"fmt"
	"html/template"
	"net/http"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
	"eyeup/internal/sources"
	"eyeup/quantity"
)

// placesView is every place.
type placesView struct {
	Places []desk.PlaceNow
}

// places shows every place with what stands there.
func (s *server) places(r *request) error {
	all := s.desk.Places(s.today())
	return s.show(r, http.StatusOK, "places", view{Title: "Places", Here: "places", Main: placesView{all}, From: sources.OfPlaces(s.desk, all)})
}

// placeView is one place.
type placeView struct {
	desk.PlaceNow
	Today      civil.Date
	Climes     []clime
	Heat       *reckon.HeatAnswer
	HeatLevels []heatLevel
	Light      *reckon.LightAnswer
	Night      *reckon.NightPlace
	Shelf      *desk.Shelf
	Bench      template.HTML
	First      []desk.CrateOnShelf // of those there
	More       int                 // crates beyond
	Years      int
	From       []sources.Basis
}

// heatLevel is what one level takes.
type heatLevel struct {
	reckon.HeatLevel
	Celsius *float64 // nil: off
}

// heatLevels gives the answer's levels their temperatures, in the order in which they
// were asked.
func heatLevels(p desk.PlaceNow, a *reckon.HeatAnswer) []heatLevel {
	if len(a.Levels) == 0 {
		return []heatLevel{{HeatLevel: a.HeatLevel}}
	}
	var all []heatLevel
	for i, l := range a.Levels {
		all = append(all, heatLevel{l, p.Levels[i].Celsius})
	}
	return all
}

// clime is what a steady place is like in one month.
type clime struct {
	Month    string
	Warmth   float64
	Humidity *float64
}

func (s *server) place(r *request) error {
	name := r.PathValue("place")
	for _, p := range s.desk.Places(s.today()) {
		if p.Name != name {
			continue
		}
		v := placeView{PlaceNow: p, Today: s.today(), Shelf: s.desk.Shelf(), Climes: climes(p)}
		v.From = sources.OfThere(s.desk, p)
		if err := s.inside(&v); err != nil {
			return err
		}
		v.First = firstCrates(p.There.Crates)
		v.More = len(p.There.Crates) - len(v.First)
		if p.Plan != nil {
			v.Bench = drawBench(p.Plan, r.display)
			v.From = append(v.From, sources.OfBench(s.desk, p.Plan)...)
		}
		return s.show(r, http.StatusOK, "place", view{Title: upper(name), Here: "places", Main: v, From: v.From})
	}
	return notFound(fmt.Sprintf("the garden has no place named %q. Choose one under places", name))
}

// firstCrates returns as many crates as hold some hundred rows, one at least.
func firstCrates(all []desk.CrateOnShelf) []desk.CrateOnShelf {
	rows := 0
	for i, c := range all {
		if rows += len(c.Holdings); rows > onePage && i > 0 {
			return all[:i]
		}
	}
	return all
}

// inside asks what the place's nights, heat and light are like.
func (s *server) inside(v *placeView) error {
	if v.Sort == "" { // stock stands there, but the garden does not describe it
		return nil
	}
	nights, err := s.desk.Nights(reckon.NightsQuestion{From: v.Today, Nights: nightsAhead})
	if err != nil {
		return err
	}
	v.Years = nights.Years
	for i := range nights.Places {
		if nights.Places[i].Name == v.Name {
			v.Night = &nights.Places[i]
			own := *nights
			own.Places = nights.Places[i : i+1]
			v.From = append(v.From, sources.OfNights(s.desk, &own)...)
		}
	}
	if v.Covered != nil {
		if v.Heat, err = s.desk.Heat(v.Name); err != nil {
			return err
		}
		v.HeatLevels = heatLevels(v.PlaceNow, v.Heat)
		v.From = append(v.From, sources.OfHeat(s.desk, v.Heat)...)
	}
	if v.Sort == "store" {
		return nil
	}
	if v.Light, err = s.desk.Light(v.Name); err != nil {
		return err
	}
	v.From = append(v.From, sources.OfLight(s.desk, v.Light)...)
	return nil
}

func climes(p desk.PlaceNow) []clime {
	if p.Steady == nil {
		return nil
	}
	var all []clime
	temperature, humidity := p.Steady.Months()
	for m := range 12 {
		c := clime{Month: time.Month(m + 1).String(), Warmth: temperature[m].Celsius()}
		if h := humidity[m]; h == h {
			share := float64(h)
			c.Humidity = &share
		}
		all = append(all, c)
	}
	return all
}

// areaWords says an area in the units of the display.
func (t display) areaWords(m2 float64) string { return t.Units.Area(quantity.Area(m2)) }
