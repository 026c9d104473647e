package page

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"eyeup/internal/desk"
)

// gardenView is how the garden is described, part by part.
type gardenView struct {
	Parts    []desk.Part
	Sketches []desk.Sketch
	Part     string // the one that is open
	Bad      []string
}

// garden shows the settings of the garden, each part as a form. part is the one that is
// open: its name, or place/NAME.
func (s *server) garden(r *request) error {
	part := r.FormValue("part")
	if part != "" && !strings.Contains(part, "/") {
		part = "garden/" + part
	}
	return s.showGarden(r, http.StatusOK, part, nil, nil)
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
		if v.Parts[i].What+"/"+v.Parts[i].Name == part {
			retype(v.Parts[i].Groups, typed)
		}
	}
	return s.show(r, status, "garden", view{Title: "Garden settings", Main: v})
}

// retype puts what was typed of a part back into its fields.
func retype(groups []desk.PartGroup, typed url.Values) {
	more := moreOf(typed)
	for i := range groups {
		for j, f := range groups[i].Fields {
			if typed.Has("key." + f.Key) {
				groups[i].Fields[j].Value = typed.Get("key." + f.Key)
			}
		}
		if m := groups[i].More; m != nil {
			at := slices.IndexFunc(more, func(t typedMore) bool { return t.under == m.Under })
			if at >= 0 {
				m.Key, m.Value = more[at].key, more[at].value
			}
		}
	}
}

// typedMore is a key that was added to a part.
type typedMore struct{ under, key, value string }

// moreOf returns the keys that were added; those without a name are left out.
func moreOf(typed url.Values) []typedMore {
	var all []typedMore
	for i, key := range typed["new"] {
		m := typedMore{key: strings.TrimSpace(key)}
		if i < len(typed["under"]) {
			m.under = typed["under"][i]
		}
		if i < len(typed["value"]) {
			m.value = typed["value"][i]
		}
		if m.key != "" {
			all = append(all, m)
		}
	}
	return all
}

// describe replaces the description of a part: what (garden, place), name, key.KEY for every
// key, new and value for an added key (repeated for several; under is the prefix of the key),
// next (where to go then). Empty fields are left out.
func (s *server) describe(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	what, name := r.FormValue("what"), r.FormValue("name")
	if what != "garden" && what != "place" || name == "" {
		return refused("the form does not say which part of the garden it describes. Open the garden settings and send it from there")
	}
	said := map[string]string{}
	for field := range r.Form {
		if key, is := strings.CutPrefix(field, "key."); is {
			said[key] = r.FormValue(field)
		}
	}
	for _, m := range moreOf(r.Form) {
		if m.under != "" && strings.Contains(m.key, ".") && what+"/"+name != "garden/figures" {
			return s.showGarden(r, http.StatusUnprocessableEntity, what+"/"+name, r.Form, fmt.Errorf("%q has a dot in it; use a name without a dot", m.key))
		}
		said[m.under+m.key] = m.value
	}
	if len(said) == 0 {
		return s.showGarden(r, http.StatusUnprocessableEntity, what+"/"+name, r.Form, errors.New("every field is empty; fill in at least one"))
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

// addPlace adds a place made from a sketch: sketch (its key), name.
func (s *server) addPlace(r *request) error {
	if err := s.desk.AddPlace(r.FormValue("sketch"), r.FormValue("name"), s.today(), s.writer(r.Context())); err != nil {
		return s.showGarden(r, http.StatusUnprocessableEntity, "", nil, err)
	}
	r.goTo("/garden")
	return nil
}

// removePlace removes a place: name.
func (s *server) removePlace(r *request) error {
	if err := s.desk.RemovePlace(r.FormValue("name"), s.today(), s.writer(r.Context())); err != nil {
		return s.showGarden(r, http.StatusUnprocessableEntity, "", nil, err)
	}
	r.goTo("/garden")
	return nil
}
