package growth

import "math"

// PotShare returns the share of full growth of a plant in a pot at a progress (share of the
// way to flowering, 0 to 1): 1 up to the pot's limit, then falling linearly to floor over the
// next half limit, floor beyond.
func PotShare(progress, limit, floor float64) float64 {
	if progress <= limit {
		return 1
	}
	return max(floor, 1-(1-floor)*(progress-limit)/(limit/2))
}

// InPot returns the growth of a plant in a pot that would grow by full with free roots, both
// as shares of the way to flowering. It integrates PotShare along the way, so that a day
// equals the sum of its hours. It needs a limit above 0.
func InPot(progress, full, limit, floor float64) float64 {
	free := max(0, min(full, limit-progress))
	left := full - free
	share := PotShare(progress+free, limit, floor)
	if left == 0 || share <= floor {
		return free + floor*left
	}
	slope := (1 - floor) / (limit / 2)
	if end := share * math.Exp(-slope*left); end >= floor {
		return free + (share-end)/slope
	}
	falling := math.Log(share/floor) / slope // until the floor is reached
	return free + (share-floor)/slope + floor*(left-falling)
}

// DayLengthShare returns the share of full progress to flower at a day length in hours: 0 up
// to none, then linear to 1 at full. It needs none < full.
func DayLengthShare(hours, none, full float64) float64 {
	return max(0, min(1, (hours-none)/(full-none)))
}

// LightShare returns the share of full growth at a daily light of dli mol/m²: linear from 0 to
// 1 at enough, the most that the plant can use.
func LightShare(dli, enough float64) float64 { return max(0, min(1, dli/enough)) }

// TransplantShare returns the share of full growth since days after transplanting: share for
// the given days, then 1.
func TransplantShare(since, days, share float64) float64 {
	if since >= 0 && since < days {
		return share
	}
	return 1
}
