package page

import (
	"net/http"
	"net/url"
	"strings"

	"eyeup/internal/desk"
)

// gardenView is how the garden is described, part by part.
type gardenView struct {
	Parts    []desk.Part
	Sketches []desk.Sketch
	Part     string // the one that was refused
	Bad      []string
}

// garden shows how the garden is described, each part a form.
func (s *server) garden(r *request) error {
	return s.showGarden(r, http.StatusOK, "", nil, nil)
}

// showGarden shows it, with what was typed of a part and what is wrong with it.
func (s *server) showGarden(r *request, status int, part string, typed url.Values, bad error) error {
	parts, err := s.desk.Parts()
	if err != nil {
		return err
	}
	v := gardenView{Parts: parts, Sketches: desk.Sketches(s.desk.Site().System), Part: part}
	if bad != nil {
		v.Bad = strings.Split(bad.Error(), "\n")
	}
	for i := range v.Parts {
		if v.Parts[i].What+"/"+v.Parts[i].Name != part {
			continue
		}
		for j, f := range v.Parts[i].Fields {
			if typed.Has("key." + f.Key) {
				v.Parts[i].Fields[j].Value = typed.Get("key." + f.Key)
			}
		}
	}
	return s.show(r, status, "garden", view{Title: "The garden", Main: v})
}

// describe describes a part anew: what (garden, place), name, key.KEY for every key, and
// new and value for one more, next (where to go then). What is left empty is left out.
func (s *server) describe(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	what, name := r.FormValue("what"), r.FormValue("name")
	if what != "garden" && what != "place" || name == "" {
		return refused("say which part of the garden is meant: what is garden or place, and its name")
	}
	said := map[string]string{}
	for field := range r.Form {
		if key, is := strings.CutPrefix(field, "key."); is {
			said[key] = r.FormValue(field)
		}
	}
	if key := strings.TrimSpace(r.FormValue("new")); key != "" {
		said[key] = r.FormValue("value")
	}
	if len(said) == 0 {
		return refused("nothing is said of it; send its keys as key.KEY")
	}
	if err := s.desk.Describe(what, name, said, s.today(), s.writer(r.Context())); err != nil {
		return s.showGarden(r, http.StatusUnprocessableEntity, what+"/"+name, r.Form, err)
	}
	to := "/garden"
	if next := r.FormValue("next"); next != "" {
		to = local(next)
	}
	r.goTo(to)
	return nil
}

// addPlace adds a worked place: sketch (its key), name.
func (s *server) addPlace(r *request) error {
	if err := s.desk.AddPlace(r.FormValue("sketch"), r.FormValue("name"), s.today(), s.writer(r.Context())); err != nil {
		return s.showGarden(r, http.StatusUnprocessableEntity, "", nil, err)
	}
	r.goTo("/garden")
	return nil
}

// removePlace says that a place is gone: name.
func (s *server) removePlace(r *request) error {
	if err := s.desk.RemovePlace(r.FormValue("name"), s.today(), s.writer(r.Context())); err != nil {
		return s.showGarden(r, http.StatusUnprocessableEntity, "", nil, err)
	}
	r.goTo("/garden")
	return nil
}
