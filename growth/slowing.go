package growth

import "math"

// PotShare returns the share of full growth left to a plant in a pot, when its progress
// (share of the way to flowering, 0 to 1) meets the pot's limit: 1 up to the limit, then
// falling in a line to floor over the next half limit, floor beyond.
func PotShare(progress, limit, floor float64) float64 {
	if progress <= limit {
		return 1
	}
	return max(floor, 1-(1-floor)*(progress-limit)/(limit/2))
}

// InPot returns how much a plant in a pot grows while it would grow by full with its roots free,
// both as shares of the way to flowering: PotShare followed through all that it passes on
// the way, so that a day comes to the same as its hours. It needs a limit above 0.
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
	falling := math.Log(share/floor) / slope // till the floor is met
	return free + (share-floor)/slope + floor*(left-falling)
}

// DayLengthShare returns the share of full growth towards flowering in days of so many
// hours: 0 up to none, rising in a line to 1 at full. It needs none < full.
func DayLengthShare(hours, none, full float64) float64 {
	return max(0, min(1, (hours-none)/(full-none)))
}

// LightShare returns the share of full growth in a daily light of dli mol/m², where
// enough is all the plant can use. It is a line from 0 to enough, and 1 beyond.
func LightShare(dli, enough float64) float64 { return max(0, min(1, dli/enough)) }

// TransplantShare returns the share of full growth so many days after a transplanting
// that sets a plant back to share for days: share before those days are over, 1 after.
func TransplantShare(since, days, share float64) float64 {
	if since >= 0 && since < days {
		return share
	}
	return 1
}
