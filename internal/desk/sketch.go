package desk

import (
	"strconv"
	"strings"

	"eyeup/quantity"
)

// Sketch is a worked place of a common sort, to begin with and to change: its figures are
// made up to be plausible, and are the grower's own once they are typed.
type Sketch struct {
	Key    string // in forms
	Name   string
	About  string
	Fields []SketchField
	body   func(said func(key string) string) map[string]any
}

// SketchField is one measure of a sketch, typed with its unit.
type SketchField struct{ Key, Label, Start string }

// Place makes the place of what was typed.
func (s Sketch) Place(name string, said func(key string) string) DraftPlace {
	return DraftPlace{name, s.body(said)}
}

// Sketches returns the worked places in the measures of a system.
func Sketches(u quantity.System) []Sketch {
	m := func(metric, us string) string {
		if u == quantity.US {
			return us
		}
		return metric
	}
	return []Sketch{
		{"cellar", "cellar", "dark and cool: clumps and corms wait here in crates", []SketchField{
			{"temperature", "warmth over the winter", m("6C", "42F")}, {"humidity", "humidity of its air", "60%"}, {"crates", "crates it takes", "40"}}, storeBody},
		{"room", "spare room", "warm anyway: trays wake here, seedlings stand under lamps", []SketchField{
			{"temperature", "warmth", m("20C", "68F")}, {"shelf", "shelf", m("3 m2", "32 ft2")}, {"area", "of it under lamps", m("1.5 m2", "16 ft2")},
			{"light", "light of the lamps", "150 umol/m2/s"}, {"hours", "hours a day", "14 h"}, {"power", "power of the lamps", "180 W"}}, roomBody},
		{"leanto", "lean-to", "single glass against a wall, with an electric heater", append(house(m, m("4 m", "13 ft"), m("2.4 m", "8 ft"), m("1.9 m", "6 ft"), m("2.8 m", "9 ft"), m("6 m2", "64 ft2")),
			SketchField{"heater", "heater", "2 kW"}), houseBody("single-glass", true)},
		{"tunnel", "tunnel", "film over hoops, not heated", house(m, m("8 m", "26 ft"), m("4 m", "13 ft"), m("1.2 m", "4 ft"), m("2.2 m", "7 ft"), m("20 m2", "215 ft2")), houseBody("single-film", false)},
		{"frame", "cold frame", "low, not heated: plants harden here", []SketchField{{"bench", "floor", m("6 m2", "64 ft2")}}, func(said func(string) string) map[string]any {
			return map[string]any{"sort": "frame", "bench": said("bench")}
		}},
		{"patch", "patch", "the open ground", []SketchField{{"bench", "size", m("60 m2", "640 ft2")}, {"spacing", "from dahlia to dahlia", m("45 cm", "18 in")}}, func(said func(string) string) map[string]any {
			return map[string]any{"sort": "ground", "bench": said("bench"), "spacing": said("spacing")}
		}},
	}
}

func house(m func(metric, us string) string, length, width, eaves, ridge, bench string) []SketchField {
	return []SketchField{{"length", "length", length}, {"width", "width", width}, {"eaves", "height at the eaves", eaves},
		{"ridge", "height at the ridge", ridge}, {"bench", "bench", bench}, {"opens", "is aired by hand from", m("24C", "75F")}}
}

func storeBody(said func(string) string) map[string]any {
	return map[string]any{"sort": "store", "temperature": said("temperature"), "humidity": said("humidity"), "crates": wholeOr(said("crates"))}
}

func roomBody(said func(string) string) map[string]any {
	return map[string]any{"sort": "room", "temperature": said("temperature"), "shelf": said("shelf"), "heat": "0 W/K",
		"lamps": map[string]any{"area": said("area"), "light": said("light"), "hours": said("hours"), "power": said("power")}}
}

func houseBody(cover string, heated bool) func(func(string) string) map[string]any {
	return func(said func(string) string) map[string]any {
		body := map[string]any{"sort": "glass", "cover": cover, "air_changes": "1.5 /h", "vent": map[string]any{"opens": said("opens"), "by": "hand"}}
		for _, key := range []string{"length", "width", "eaves", "ridge", "bench"} {
			body[key] = said(key)
		}
		if heated {
			body["heater"] = map[string]any{"power": said("heater"), "fuel": "electricity", "efficiency": "100%"}
			body["levels"] = []string{"off", "40F", "45F", "50F", "55F", "60F"}
		}
		return body
	}
}

// wholeOr gives a whole number as such, and anything else as it was typed, to be refused.
func wholeOr(typed string) any {
	if n, err := strconv.Atoi(strings.TrimSpace(typed)); err == nil {
		return n
	}
	return typed
}
