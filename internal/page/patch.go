package page

import (
	"net/http"

	"eyeup/internal/desk"
)

// patchView is the planting list.
type patchView struct {
	*desk.PlantingList
	Shelf *desk.Shelf
	All   int // varieties
	Page  int
	Pages int
}

// patch shows the planting list as it stands: page, of 100 varieties each.
func (s *server) patch(r *request) error {
	list, err := s.desk.PlantingList(s.today())
	if err != nil {
		return err
	}
	v := patchView{PlantingList: list, Shelf: s.desk.Shelf(), All: len(list.Rows)}
	v.Page, v.Pages = pageNumber(r, v.All, onePage)
	v.Rows = v.Rows[(v.Page-1)*onePage : min(v.All, v.Page*onePage)]
	return s.show(r, http.StatusOK, "patch", view{Title: "Patch", Here: "patch", Main: v})
}
