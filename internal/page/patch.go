package page

import (
	"net/http"

	"eyeup/internal/desk"
)

// patchView is the planting list.
type patchView struct {
	*desk.PlantingList
	Shelf *desk.Shelf
}

// patch shows the planting list as it stands.
func (s *server) patch(r *request) error {
	list, err := s.desk.PlantingList(s.today())
	if err != nil {
		return err
	}
	return s.show(r, http.StatusOK, "patch", view{Title: "Patch", Here: "patch", Main: patchView{list, s.desk.Shelf()}})
}
