package page

import (
	"html"
	"html/template"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/internal/sources"
)

// sureWords give the words by which a source may begin, by how sure it is.
var sureWords = map[string]string{"assumption": "assumption: ", "practice": "common practice: ", "memory": "from memory: "}

// sourced says how sure a figure is and where it is from, each once.
func sourced(f reckon.FigureAnswer) string {
	if begins := sureWords[f.Sure]; begins != "" && strings.HasPrefix(f.Source, begins) {
		return f.Source
	}
	return f.Sure + ": " + f.Source
}

// whyAt begins the anchor of the sources of a figure on its page.
const whyAt = "#why-"

// why is a figure, or the heading of a row or column, as a link to its sources. key says what
// the figure is and, if needed, of which place or kind.
func why(says string, key ...string) template.HTML {
	return template.HTML(`<a class="why" href="` + whyAt + html.EscapeString(sources.Key(key...)) + `">` + html.EscapeString(says) + `</a>`)
}

// asked returns the sources that a page links to, and those that these link to in turn.
func asked(all []sources.Basis, page []byte) []sources.Basis {
	wanted := map[string]bool{}
	for part := range strings.SplitSeq(string(page), `href="`+whyAt) {
		key, _, _ := strings.Cut(part, `"`)
		wanted[html.UnescapeString(key)] = true
	}
	for more := true; more; {
		more = false
		for _, g := range all {
			for _, r := range g.Records {
				if r.At.Page == sources.Here && wanted[g.Key] && !wanted[r.At.Source] {
					wanted[r.At.Source], more = true, true
				}
			}
		}
	}
	var those []sources.Basis
	for _, g := range all {
		if wanted[g.Key] {
			those = append(those, g)
		}
	}
	return those
}
