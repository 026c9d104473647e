package page

import (
	"errors"
	"net/http"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
	"eyeup/internal/sources"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/week"
)

// weekView is the first page.
type weekView struct {
	Today    civil.Date
	Week     *desk.Week
	NoPlan   string // why there is no season
	Empty    bool   // there is no stock yet
	Unwanted bool   // none of it is wanted in the patch
	Shelf    *desk.Shelf
	Nights   *reckon.NightsAnswer
	Low      string // tonight's low as it was typed
	LowBad   string // what is wrong with it
	Off      bool   // the heaters are off
	Heated   bool   // some place has a heater
	Carry    []reckon.NightPlace
	Late     []jobView
	Behind   []desk.AgainstLot // lots that are later than the plan promised
	Due      []jobView
	Rounds   []week.RoundDue // that are due
}

// jobView is a job with the lots it can be done with.
type jobView struct {
	week.JobState
	Lots []stock.Lot
	Kind string // of the entry that says that it was done
}

// entryOf names the kind of entry that says that a job was done.
var entryOf = map[string]string{
	"start": "started", "sow": "sown", "hand on": "moved", "harden": "hardened", "plant": "planted out", "plant out": "planted out",
	"wake": "woken", "divide": "divided", "start mothers for": "cuttings taken", "prove the names": "name proved",
	"mark keepers and sick": "marked", "lift": "lifted", "cure and pack": "packed", "prick out": "potted up",
}

// jobs gives jobs their lots.
func jobs(all []week.JobState, shelf *desk.Shelf) []jobView {
	var views []jobView
	for _, j := range all {
		v := jobView{JobState: j, Kind: entryOf[j.What]}
		for _, i := range j.Lots {
			v.Lots = append(v.Lots, shelf.Lots[i])
		}
		views = append(views, v)
	}
	return views
}

// nightsAhead is how many nights the first page looks ahead.
const nightsAhead = 7

// week shows what is due, what is late, and the nights ahead. low is tonight's low as the
// grower has it, with its unit; off (yes) where the heaters are off.
func (s *server) week(r *request) error {
	var from []sources.Basis // of the jobs; none where there is no season
	v := weekView{Today: s.today(), Shelf: s.desk.Shelf(), Low: r.FormValue("low"), Off: r.FormValue("off") != ""}
	w, err := s.desk.Week(v.Today)
	switch {
	case len(v.Shelf.Lots) == 0:
		v.Empty = true
	case err != nil:
		v.NoPlan, v.Unwanted = err.Error(), !s.desk.IsAnyWanted()
	default:
		v.Week, v.Late, v.Due = w, jobs(w.Late, v.Shelf), jobs(w.Due, v.Shelf)
		v.Behind, from = s.desk.Against(v.Today).Late(), sources.OfWeek(s.desk, w)
	}
	for _, round := range s.desk.RoundsDue(v.Today) {
		if round.Due {
			v.Rounds = append(v.Rounds, round)
		}
	}
	for _, p := range s.desk.Site().Places {
		v.Heated = v.Heated || len(p.Levels) > 0
	}
	q := reckon.NightsQuestion{From: v.Today, Nights: nightsAhead, Off: v.Off}
	if v.Low != "" {
		low, err := typedTemperature(v.Low, r.FormValue("unit"))
		if err != nil {
			v.LowBad = err.Error()
		} else {
			q.Low, q.Nights = &low, 1
		}
	}
	if v.Nights, err = s.desk.Nights(q); err != nil {
		v.LowBad = err.Error()
		q.Low, q.Nights = nil, nightsAhead
		if v.Nights, err = s.desk.Nights(q); err != nil {
			return err
		}
	}
	from = append(from, sources.OfNights(s.desk, v.Nights)...)
	for _, p := range v.Nights.Places {
		if len(p.AtRisk) > 0 {
			v.Carry = append(v.Carry, p)
		}
	}
	return s.show(r, http.StatusOK, "week", view{Title: "This week", Here: "this week", Main: v, From: from})
}

// typedTemperature reads a temperature with its unit, or a number whose unit stands in a
// field beside it.
func typedTemperature(text, unit string) (quantity.Temperature, error) {
	t, err := quantity.ParseTemperature(text)
	if err == nil || unit != "F" && unit != "C" {
		return t, err
	}
	if t, uerr := quantity.ParseTemperature(text + unit); uerr == nil {
		return t, nil
	}
	return t, errors.Join(err)
}
