package page

import (
	"html"
	"html/template"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/internal/sources"
)

// sureWords is how a source begins that says how sure it is.
var sureWords = map[string]string{"assumption": "assumption: ", "practice": "common practice: ", "memory": "from memory: "}

// sourced says how sure a figure is and where it is from, each once.
func sourced(f reckon.FigureAnswer) string {
	if begins := sureWords[f.Sure]; begins != "" && strings.HasPrefix(f.Source, begins) {
		return f.Source
	}
	return f.Sure + ": " + f.Source
}

// whyAt begins the address at which grounds stand on their page.
const whyAt = "#why-"

// why is a figure, or the head of a row or column of figures, that leads to its grounds: of
// what they are, and of which place or kind.
func why(says string, key ...string) template.HTML {
	return template.HTML(`<a class="why" href="` + whyAt + html.EscapeString(sources.Key(key...)) + `">` + html.EscapeString(says) + `</a>`)
}

// asked returns those grounds that are asked for on a page, or that others of these name.
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
