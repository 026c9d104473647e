// Package reckon holds the calculations of the commands reckon and read, each as a question and its
// answer: frost, nights, heat, light, soil, air, sun, sowing, keeping, mixes, and the content of weather
// and logger files. Some are about a garden. None reads the stock book: they take stock from the garden.
package reckon
