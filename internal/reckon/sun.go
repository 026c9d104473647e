package reckon

import (
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/sun"
)

// SunQuestion asks where the sun stands at a moment, when it rises and sets on a day, or
// both.
type SunQuestion struct {
	Latitude, Longitude float64         // degrees north and east
	Elevation           quantity.Length // above the sea
	At                  time.Time       // zero: not asked
	Date                civil.Date      // none: not asked
	Zone                *time.Location  // in which the day is told
}

// SunAnswer is where the sun stands, and the day's course. What was not asked is absent.
type SunAnswer struct {
	Latitude   float64 `json:"latitude_deg" jsonschema_description:"degrees north"`
	Longitude  float64 `json:"longitude_deg" jsonschema_description:"degrees east"`
	ElevationM float64 `json:"elevation_m"`

	At         *time.Time `json:"at,omitempty"`
	Zenith     *float64   `json:"zenith_deg,omitempty" jsonschema_description:"from straight overhead as seen through the air: 90 and more is below the horizon"`
	Azimuth    *float64   `json:"azimuth_deg,omitempty" jsonschema_description:"clockwise from north"`
	Refraction *float64   `json:"refraction_deg,omitempty" jsonschema_description:"by how much the air lifts the sun"`
	ClearSun   *float64   `json:"clear_sky_w_m2,omitempty" jsonschema_description:"on level ground under a cloudless sky"`

	Date       *civil.Date `json:"date,omitempty"`
	Zone       string      `json:"zone,omitempty" jsonschema_description:"time zone in which the day is told"`
	Rise       *time.Time  `json:"rise,omitempty" jsonschema_description:"upper edge of the sun on a level horizon; absent when it does not rise"`
	Noon       *time.Time  `json:"noon,omitempty" jsonschema_description:"when the sun stands highest"`
	Set        *time.Time  `json:"set,omitempty" jsonschema_description:"absent when it does not set"`
	DayLength  *float64    `json:"day_length_h,omitempty" jsonschema_description:"from rise to set"`
	ClearDay   *float64    `json:"clear_day_mj_m2,omitempty" jsonschema_description:"on level ground over a cloudless day"`
	ClearLight *float64    `json:"clear_day_mol_m2,omitempty" jsonschema_description:"the light that plants use in it at 2.02 mol/MJ"`
	Reason     string      `json:"reason,omitempty" jsonschema_description:"why there is no rise or set"`
}

// The years for which the sun's position has the stated accuracy.
const firstSunYear, lastSunYear = 1900, 2100

// Sun answers a SunQuestion. It refuses an impossible place, a year outside 1900 to 2100, and a question
// with neither a moment nor a day.
func Sun(q SunQuestion) (*SunAnswer, error) {
	site := sun.Site{Latitude: q.Latitude, Longitude: q.Longitude, Elevation: q.Elevation}
	if err := site.Check(); err != nil {
		return nil, err
	}
	a := &SunAnswer{Latitude: q.Latitude, Longitude: q.Longitude, ElevationM: float64(q.Elevation)}
	if q.At.IsZero() && q.Date.IsZero() {
		return nil, errors.New("ask for a moment with --at 2027-03-20T12:00:00-04:00, for a day with --date 2027-03-20, or both")
	}
	if !q.At.IsZero() {
		if err := checkSunYear(q.At.Year()); err != nil {
			return nil, err
		}
		a.position(site, q.At)
	}
	if !q.Date.IsZero() {
		if err := checkSunYear(q.Date.Year()); err != nil {
			return nil, err
		}
		return a, a.day(site, q.Date, q.Zone)
	}
	return a, nil
}

func checkSunYear(year int) error {
	if year < firstSunYear || year > lastSunYear {
		return fmt.Errorf("the sun is computed for the years %d to %d only; give one of those in place of %d", firstSunYear, lastSunYear, year)
	}
	return nil
}

func (a *SunAnswer) position(site sun.Site, at time.Time) {
	s := sun.Position(site, at)
	a.At = &at
	a.Zenith, a.Azimuth, a.Refraction = report.Rounded(s.Zenith, 5), report.Rounded(s.Azimuth, 5), report.Rounded(s.Refraction, 5)
	a.ClearSun = report.Rounded(float64(sun.Haurwitz(s)), 1)
}

func (a *SunAnswer) day(site sun.Site, d civil.Date, zone *time.Location) error {
	day, err := sun.RiseSet(site, d, zone)
	isPolar := errors.Is(err, sun.ErrPolarDay) || errors.Is(err, sun.ErrPolarNight)
	switch {
	case isPolar:
		a.Reason = err.Error()
	case err != nil:
		return err
	default:
		a.Rise, a.Set = second(day.Rise), second(day.Set)
	}
	a.Date, a.Zone, a.Noon = &d, zone.String(), second(day.Noon)
	a.DayLength = report.Rounded(day.Length.Hours(), 4)
	clear := sun.ClearSky(site, d)
	a.ClearDay, a.ClearLight = report.Rounded(clear.Megajoules(), 3), report.Rounded(float64(sun.Light(clear)), 3)
	return nil
}

// second returns t to the second.
func second(t time.Time) *time.Time {
	t = t.Round(time.Second)
	return &t
}

// Print writes the answer for the grower.
func (a *SunAnswer) Print(w io.Writer, _ quantity.System) {
	fmt.Fprintf(w, "The sun at %s\n", coordinates(a.Latitude, a.Longitude))
	if a.At != nil {
		a.printPosition(w)
	}
	if a.Date != nil {
		a.printDay(w)
	}
}

// coordinates writes latitude and longitude as a grower says them.
func coordinates(latitude, longitude float64) string {
	side := func(x float64, positive, negative string) string {
		if x < 0 {
			return fmt.Sprintf("%.4g° %s", -x, negative)
		}
		return fmt.Sprintf("%.4g° %s", x, positive)
	}
	return side(latitude, "north", "south") + ", " + side(longitude, "east", "west")
}

func (a *SunAnswer) printPosition(w io.Writer) {
	fmt.Fprintf(w, "\n%s\n", a.At.Format("2006-01-02 15:04:05 -07:00"))
	if *a.Zenith >= 90 {
		fmt.Fprintf(w, "  is down, %.2f° below the horizon, at %.2f° clockwise from north\n", *a.Zenith-90, *a.Azimuth)
		return
	}
	fmt.Fprintf(w, "  stands %.2f° high, %.2f° from overhead, at %.2f° clockwise from north\n", 90-*a.Zenith, *a.Zenith, *a.Azimuth)
	fmt.Fprintf(w, "  gives about %.0f W/m² on level ground under a cloudless sky\n", *a.ClearSun)
}

func (a *SunAnswer) printDay(w io.Writer) {
	fmt.Fprintf(w, "\n%v, in the time zone %s\n", a.Date, a.Zone)
	if a.Reason != "" {
		fmt.Fprintf(w, "  %s; it stands highest at %s\n", a.Reason, a.Noon.Format("15:04"))
	} else {
		fmt.Fprintf(w, "  rises %s, stands highest %s, sets %s: a day of %s\n",
			a.Rise.Format("15:04"), a.Noon.Format("15:04"), a.Set.Format("15:04"), hoursAndMinutes(*a.DayLength))
		fmt.Fprintln(w, "  (to the minute, on a level horizon; hills and hedges shorten the day)")
	}
	fmt.Fprintf(w, "  a cloudless day brings about %.1f MJ/m², %.0f mol/m² of light for plants\n", *a.ClearDay, *a.ClearLight)
}

func hoursAndMinutes(hours float64) string {
	minutes := int(math.Round(hours * 60))
	return fmt.Sprintf("%d h %02d min", minutes/60, minutes%60)
}
