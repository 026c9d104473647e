package growth

import (
	"fmt"
	"math"
)

// SineDegreeDays returns the degree-days of a day between a lower and an upper threshold
// whose temperature runs as one sine from low to high, with the horizontal cutoff: above
// the upper threshold no more is counted than at it. All in °C. It fails where low lies
// above high or the thresholds are out of order. For use where hours are not known.
func SineDegreeDays(low, high, lower, upper float64) (float64, error) {
	if err := inOrder(low, high, lower, upper); err != nil {
		return 0, err
	}
	mean, swing := (low+high)/2, (high-low)/2
	return sineAbove(lower, mean, swing) - sineAbove(upper, mean, swing), nil
}

// TriangleDegreeDays is SineDegreeDays for a temperature that runs in straight lines.
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

// sineAbove is the mean over a turn of how far mean + swing·sin lies above a threshold.
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

// triangleAbove is the mean of how far a straight run from low to high lies above a threshold.
func triangleAbove(threshold, low, high float64) float64 {
	switch {
	case low >= threshold:
		return (low+high)/2 - threshold
	case high <= threshold:
		return 0
	}
	return (high - threshold) * (high - threshold) / (2 * (high - low))
}
