// Package sun tells where the sun stands, when it rises and sets, how long the day is,
// and how much light and warmth reach the ground.
package sun
