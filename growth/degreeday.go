package growth

import (
	"fmt"
	"math"
)

// SineDegreeDays returns the degree-days of a day between a lower and an upper threshold for a
// temperature that follows one sine from low to high, with the horizontal cutoff: above the
// upper threshold the count does not rise further. All in °C. It fails if low is above high or
// the thresholds are out of order. Use it where hourly temperatures are not known.
func SineDegreeDays(low, high, lower, upper float64) (float64, error) {
	if err := inOrder(low, high, lower, upper); err != nil {
		return 0, err
	}
	mean, swing := (low+high)/2, (high-low)/2
	return sineAbove(lower, mean, swing) - sineAbove(upper, mean, swing), nil
}

// TriangleDegreeDays is SineDegreeDays for a temperature that changes linearly.
func TriangleDegreeDays(low, high, lower, upper float64) (float64, error) {
	if err := inOrder(low, high, lower, upper); err != nil {
		return 0, err
	}
	return triangleAbove(lower, low, high) - triangleAbove(upper, low, high), nil
}

func inOrder(low, high, lower, upper float64) error {
	if !(low <= high) || !(lower < upper) {
		return fmt.Errorf("degree-days need low ≤ high and lower < upper, not %g, %g and %g, %g °C", low, high, lower, upper)
	}
	return nil
}

// sineAbove returns the mean height of mean + swing·sin above a threshold over a full period.
func sineAbove(threshold, mean, swing float64) float64 {
	switch {
	case mean-swing >= threshold:
		return mean - threshold
	case mean+swing <= threshold:
		return 0
	}
	θ := math.Asin((threshold - mean) / swing)
	return ((mean-threshold)*(math.Pi/2-θ) + swing*math.Cos(θ)) / math.Pi
}

// triangleAbove returns the mean height above a threshold of a straight line from low to high.
func triangleAbove(threshold, low, high float64) float64 {
	switch {
	case low >= threshold:
		return (low+high)/2 - threshold
	case high <= threshold:
		return 0
	}
	return (high - threshold) * (high - threshold) / (2 * (high - low))
}
