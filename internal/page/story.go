package page

import "html/template"

// story is one part of the pages with made-up data.
type story struct {
	Name  string
	Drawn template.HTML
}

// storyParts draws every part by itself.
func storyParts() []story {
	return nil
}
