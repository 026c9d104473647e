package weather

import "eyeup/civil"

// Member is one real year of weather laid on the days of a season. Its days are
// complete: gaps of up to three days are bridged and counted, years with longer ones are
// left out and named.
type Member struct {
	Year    int        // calendar year of the record in which the season's growing year falls
	Span    civil.Span // the season's days
	Days    []Day      // one for each day of Span, extremes known
	Bridged int        // days whose extremes were drawn between neighbours
}

// LeftOut is a year of the record that could not serve, and why.
type LeftOut struct {
	Year int    `json:"year"`
	Why  string `json:"why"`
}
