package page

import "net/http"

// stories shows each part of the pages with made-up data: for tests and the invented
// garden alone.
func (s *server) stories(r *request) error {
	return s.show(r, http.StatusOK, "stories", view{Title: "Stories", Main: storyParts()})
}
