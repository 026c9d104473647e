package page

import (
	"eyeup/internal/desk"
)

// describeVariety replaces the description of the variety of a lot (code): plant (wanted in the patch),
// reserve, timing (early, mid, late), colour (#rrggbb), height; empty fields are left out.
func (s *server) describeVariety(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	code := r.PathValue("code")
	body, err := s.desk.DescribeVariety(code, desk.VarietyTyped{Plant: r.FormValue("plant"), Reserve: r.FormValue("reserve"),
		Timing: r.FormValue("timing"), Colour: r.FormValue("colour"), Height: r.FormValue("height")})
	if err != nil {
		return err
	}
	id, err := s.append(r, "described", s.today(), body)
	if err != nil {
		return err
	}
	r.goTo("/stock/" + code + "?wrote=" + id.String())
	return nil
}
