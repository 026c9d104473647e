package weather

import (
	"fmt"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
)

// Normals are the monthly mean lows and highs of a place, January first, as published in
// climate tables.
type Normals struct {
	Low, High [12]quantity.Temperature
}

// leastRange is the smallest plausible monthly mean of the daily range. Our choice, below that
// of foggy coasts (5.3 K in an Irish December).
const leastRange quantity.Difference = 3

// Check returns an error that names the first impossible month: a monthly mean beyond those
// measured on Earth, or a high less than 3 K above its low.
func (n Normals) Check() error {
	coldest, warmest := quantity.Celsius(-80), quantity.Celsius(55)
	for m := range n.Low {
		low, high := n.Low[m], n.High[m]
		month := time.Month(m + 1)
		switch {
		case !low.IsKnown() || !high.IsKnown():
			return fmt.Errorf("the normals of %s are not known; give a mean low and a mean high for each month", month)
		case low.Below(coldest) || high.Above(warmest):
			return fmt.Errorf("the normals of %s, %.1f to %.1f °C, are outside -80 to 55 °C; check the figures and their unit",
				month, low.Celsius(), high.Celsius())
		case high.Sub(low) < leastRange:
			return fmt.Errorf("the mean high of %s, %.1f °C, is not at least 3 K above its mean low, %.1f °C; check whether they are reversed",
				month, high.Celsius(), low.Celsius())
		}
	}
	return nil
}

// celsius returns the twelve lows and highs in °C.
func (n Normals) celsius() (low, high [12]float64) {
	for m := range n.Low {
		low[m], high[m] = n.Low[m].Celsius(), n.High[m].Celsius()
	}
	return low, high
}

// course is a quantity over the year: its value at the middle of each month, interpolated
// linearly.
type course [12]float64

// on returns the course's value on a date.
func (c course) on(d civil.Date) float64 {
	m := int(d.Month()) - 1
	past := (float64(d.Day())-0.5)/float64(lengthOf(d)) - 0.5 // of a month, since its middle
	if past < 0 {
		return c[m] + past*(c[m]-c[(m+11)%12])
	}
	return c[m] + past*(c[(m+1)%12]-c[m])
}

// lengthOf returns how many days the month of d has.
func lengthOf(d civil.Date) int {
	return time.Date(d.Year(), d.Month()+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// With linear interpolation between mid-month values, a month's mean is three quarters of its
// own value and an eighth of each neighbour's.
const own, neighbour = 0.75, 0.125

// keeping returns the course with the given monthly means. Plain interpolation would flatten
// summer and winter.
func keeping(means [12]float64) course {
	c := course(means)
	for range 100 { // each round at least halves the error
		var next course
		for m := range c {
			mean := own*c[m] + neighbour*(c[(m+11)%12]+c[(m+1)%12])
			next[m] = c[m] + means[m] - mean
		}
		c = next
	}
	return c
}
