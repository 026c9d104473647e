package page

import (
	"net/http"
	"slices"

	"eyeup/internal/desk"
	"eyeup/internal/planting"
	"eyeup/internal/sources"
)

// patchView is what stands on the page of the patch.
type patchView struct {
	*desk.PlantingList
	Chosen   *desk.Chosen // nil where the garden asks for no list
	Unchosen string       // why there is none though it asks
	Lines    []planting.PatchLine
	Shelf    *desk.Shelf
	All      int // varieties
	Page     int
	Pages    int
	Since    int // how many entries were written since the older of the two was worked out
}

// patchOnPage is how many varieties the patch's page lists in each of its tables, which have
// many columns.
const patchOnPage = 50

// patch shows which varieties get how many places, where the garden asks for that, and what
// is wanted, raised and planted as it stands: page, of 50 varieties each.
func (s *server) patch(r *request) error {
	list, err := s.desk.PlantingList(s.today())
	if err != nil {
		return err
	}
	v := patchView{PlantingList: list, Shelf: s.desk.Shelf(), All: len(list.Rows), Since: list.Behind}
	if v.Chosen, err = s.desk.Chosen(s.today()); err != nil {
		v.Unchosen = err.Error()
	}
	if c := v.Chosen; c != nil {
		v.All, v.Since = max(v.All, len(c.List)), max(v.Since, c.Behind)
	}
	v.Page, v.Pages = pageNumber(r, v.All, patchOnPage)
	v.Rows = rowsOnPage(v.Rows, v.Page)
	if v.Chosen != nil {
		v.Lines = rowsOnPage(v.Chosen.List, v.Page)
	}
	return s.show(r, http.StatusOK, "patch", view{Title: "Patch", Here: "patch", Main: v, From: sources.OfPatch(s.desk, v.Chosen, v.kinds())})
}

// rowsOnPage returns the part of a list that stands on a page; the list may end on one before.
func rowsOnPage[T any](all []T, page int) []T {
	return all[min(len(all), (page-1)*patchOnPage):min(len(all), page*patchOnPage)]
}

// Gives reports whether anything is in reserve, spare or missing.
func (v patchView) Gives() bool {
	return v.Chosen.KeptBack() != "" || v.Chosen.ToGive() != "" || v.Chosen.ToGet() != ""
}

// Why is the lines of the page whose number of plants differs from the number wanted.
func (v patchView) Why() []planting.PatchLine {
	var all []planting.PatchLine
	for _, l := range v.Lines {
		if l.Changed() {
			all = append(all, l)
		}
	}
	return all
}

// kinds are those of the lines of the page, each once.
func (v patchView) kinds() []string {
	var all []string
	for _, l := range v.Lines {
		if !slices.Contains(all, l.Kind) {
			all = append(all, l.Kind)
		}
	}
	return all
}
