package page

import (
	"net/http"

	"eyeup/quantity"
)

// taste is how measures and dates are shown.
type taste struct {
	Units quantity.System
	ISO   bool // dates as 2027-05-31 instead of 31 May
}

// tasteOf returns what the browser asked for, or the garden's own.
func (s *server) tasteOf(r *http.Request) taste {
	var t taste
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

func (s *server) tastePage(r *request) error {
	return s.show(r, http.StatusOK, "taste", view{Title: "Measures and dates", Main: r.taste})
}

// setTaste keeps units (us, metric) and dates (words, figures) in the browser.
func (s *server) setTaste(r *request) error {
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
