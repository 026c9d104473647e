// Package place computes the conditions inside a place: a store or a room, a house of glass or
// film, a frame, or the open ground. It knows no plants. Given a season's hourly weather and
// the levels to be held, a Place returns its Course: the temperatures of air and pots, the
// light, the heat it asks for and the heat that its heater can give, hours short of the level
// and hours that are too hot.
//
// A covered place is modelled as two bodies, the floor and the air with everything in it. Each
// hour is solved exactly, so that heat gained, lost and stored agree to rounding. The code
// follows its equations closely and is the reference for anything faster.
//
// All hours are solar time, and both hemispheres work. Not modelled: humidity and the heat
// used by evaporation and growth (a fixed share of the sun's heat stands for both), wind,
// slope, shade, and neighbouring buildings.
package place
