// Package place reckons what it is like inside: in a store or a room, under glass or
// film, in a frame, or in the open ground. It knows no plants. Given a season's weather
// hour by hour and the levels to be held, a Place returns its Course: the temperature of
// air and pots, the light, the heat it asks for and the heat its heater can give, hours
// short of the level and hours too hot.
//
// The covered place is two bodies, the air with all that stands in it and the floor,
// stepped hour by hour with the exact solution, so that what goes in, what goes out and
// what is stored agree to rounding. It is written to be read beside its equations and is
// what anything faster is measured against.
//
// Everything here is by the sun's clock, and works in either hemisphere. What is not
// modelled: humidity and the heat that watering and growth take up (a fixed part of the
// sun's warmth stands for both), wind, a slope, shade, and neighbouring buildings.
package place
