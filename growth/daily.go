package growth

// hoursADay is how many hours a day has in the hourly figures.
const hoursADay = 24

// DailyRates returns the mean of a rate over the 24 hours of each day. The hourly
// temperatures are in °C and begin at midnight; hours beyond the last whole day are left out.
func DailyRates(hourly []float64, rate func(celsius float64) float64) []float64 {
	days := make([]float64, len(hourly)/hoursADay)
	for d := range days {
		sum := 0.0
		for _, t := range hourly[d*hoursADay : (d+1)*hoursADay] {
			sum += rate(t)
		}
		days[d] = sum / hoursADay
	}
	return days
}

// Reached returns the first day, counted from the start of the daily rates, at whose end the
// rates from day from on add up to sum. It is false if they never do, or if from is not one of
// the days. A sum of 0 or less is reached on day from.
func Reached(daily []float64, from int, sum float64) (int, bool) {
	if from < 0 {
		return 0, false
	}
	total := 0.0
	for d := from; d < len(daily); d++ {
		total += daily[d]
		if total >= sum {
			return d, true
		}
	}
	return 0, false
}

// Generations returns the days at whose end each generation of a pest is complete. daily is
// the share of a generation completed each day (DailyRates of Pest.Rate); the first generation
// begins on day from.
func Generations(daily []float64, from int) []int {
	var done []int
	if from < 0 {
		return nil
	}
	total := 0.0
	for d := from; d < len(daily); d++ {
		total += daily[d]
		for total >= float64(len(done)+1) {
			done = append(done, d)
		}
	}
	return done
}
