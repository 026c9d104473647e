package culture

import "strings"

// Citation is the full reference for the short name of a source.
type Citation struct {
	Name string // such as "Harrington & Minges 1954"
	Text string // authors, year, title, where
	Read string // how it was used: read, as quoted, society, producer, weak
}

// Cited returns the citations of a figure's source, in its order. Common practice, assumptions
// and values from memory have none.
func Cited(source string) []Citation {
	var all []Citation
	for _, name := range namesIn(source) {
		if c, ok := stocked().citations[name]; ok {
			all = append(all, c)
		}
	}
	return all
}

// namesIn splits a source into names: they are separated by semicolons, and each ends at a
// comma or colon before a remark.
func namesIn(source string) []string {
	var names []string
	for _, part := range strings.Split(source, ";") {
		name, _, _ := strings.Cut(part, ":")
		name, _, _ = strings.Cut(name, ",")
		names = append(names, strings.TrimSpace(name))
	}
	return names
}
