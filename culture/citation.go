package culture

import "strings"

// Citation is what the short name of a source stands for.
type Citation struct {
	Name string // such as "Harrington & Minges 1954"
	Text string // authors, year, title, where
	Read string // how it was seen: read, as quoted, society, producer, weak
}

// Cited returns the citations behind a source as figures give it, in its order. What is
// common practice, an assumption or from memory has none.
func Cited(source string) []Citation {
	var all []Citation
	for _, name := range namesIn(source) {
		if c, ok := stocked().citations[name]; ok {
			all = append(all, c)
		}
	}
	return all
}

// namesIn takes a source apart: names are parted by semicolons, each ending at a comma
// or colon where a remark follows.
func namesIn(source string) []string {
	var names []string
	for _, part := range strings.Split(source, ";") {
		name, _, _ := strings.Cut(part, ":")
		name, _, _ = strings.Cut(name, ",")
		names = append(names, strings.TrimSpace(name))
	}
	return names
}
