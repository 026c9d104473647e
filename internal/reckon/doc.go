// Package reckon holds the single calculations, each a question with its answer: frost, nights, heat,
// light, soil, air, sun, sowing, keeping, mixes and the like, and what is read from weather and logger
// files. Some are about a garden, none about its book: the stock they know is the one they are given.
package reckon
