package page

import (
	"net/http"

	"eyeup/quantity"
)

// display is how units and dates are shown.
type display struct {
	Units quantity.System
	ISO   bool // dates as 2027-05-31 instead of 31 May
}

// displayOf returns what is set in the browser, or the garden's own.
func (s *server) displayOf(r *http.Request) display {
	var t display
	if s.desk != nil {
		t.Units = s.desk.Site().System
	}
	if c, err := r.Cookie("units"); err == nil {
		switch c.Value {
		case "us":
			t.Units = quantity.US
		case "metric":
			t.Units = quantity.Metric
		}
	}
	if c, err := r.Cookie("dates"); err == nil {
		t.ISO = c.Value == "figures"
	}
	return t
}

func (s *server) displayPage(r *request) error {
	return s.show(r, http.StatusOK, "display", view{Title: "Display: units and dates", Main: r.display})
}

// setDisplay keeps units (us, metric) and dates (words, figures) in two cookies.
func (s *server) setDisplay(r *request) error {
	units, dates := r.FormValue("units"), r.FormValue("dates")
	if units != "us" && units != "metric" || dates != "words" && dates != "figures" {
		return refused("units are us or metric, dates are words or figures")
	}
	for name, value := range map[string]string{"units": units, "dates": dates} {
		http.SetCookie(r.w, &http.Cookie{Name: name, Value: value, Path: "/", MaxAge: 400 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode})
	}
	r.goTo(local(r.FormValue("next")))
	return nil
}
