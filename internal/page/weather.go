package page

import (
	"html/template"
	"net/http"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/internal/sources"
)

// weatherView is the frost, the typical year and where they come from.
type weatherView struct {
	Frost  *reckon.FrostAnswer
	Out    civil.Date // the day of planting out that is asked about
	Curve  template.HTML
	Months []desk.Month
	Source garden.WeatherSource
	Risk   float64
	Table  []reckon.FreezeAfter // every week of the curve
	Year   int                  // of planting out
}

// weather shows the risk of frost after a day of planting out (out, YYYY-MM-DD).
func (s *server) weather(r *request) error {
	v := weatherView{Months: s.desk.TypicalYear(), Source: s.desk.Weather(), Risk: float64(s.desk.Site().Season.FrostRisk)}
	out, err := s.plantingOut(r.FormValue("out"))
	if err != nil {
		return err
	}
	v.Out, v.Year = out, out.Year()
	if v.Frost, err = s.desk.Frost(out.MonthDay()); err != nil {
		return err
	}
	curve := s.desk.FrostCurve()
	v.Curve = drawFrost(curve, v.Frost, r.display)
	for i, d := range curve.Days {
		if i%7 == 0 || d.Share == 0 && i > 0 && curve.Days[i-1].Share > 0 {
			v.Table = append(v.Table, d)
		}
	}
	return s.show(r, http.StatusOK, "weather", view{Title: "Weather", Here: "weather", Main: v, From: sources.OfFrost(s.desk, v.Frost)})
}

// plantingOut reads the day asked about. If none is given, it is the day that the accepted
// risk gives.
func (s *server) plantingOut(asked string) (civil.Date, error) {
	if asked != "" {
		d, err := civil.Parse(asked)
		if err != nil {
			return d, refused("%v", err)
		}
		return d, nil
	}
	return s.desk.SafeDay(), nil
}
