package page

import (
	"html"
	"html/template"
	"strings"

	"eyeup/internal/desk"
)

// sureWords give the words by which a source may begin, by how sure it is.
var sureWords = map[string]string{"assumption": "assumption: ", "practice": "common practice: ", "memory": "from memory: "}

// sourced says how sure a figure is and where it is from, each once.
func sourced(f desk.FigureAnswer) string {
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
	return template.HTML(`<a class="why" href="` + whyAt + html.EscapeString(desk.GroundsKey(key...)) + `">` + html.EscapeString(says) + `</a>`)
}

// asked returns the sources that a page links to, and those that these link to in turn.
func asked(all []desk.Grounds, page []byte) []desk.Grounds {
	wanted := map[string]bool{}
	for part := range strings.SplitSeq(string(page), `href="`+whyAt) {
		key, _, _ := strings.Cut(part, `"`)
		wanted[html.UnescapeString(key)] = true
	}
	for more := true; more; {
		more = false
		for _, g := range all {
			for _, r := range g.Records {
				if key, is := strings.CutPrefix(r.At, whyAt); is && wanted[g.Key] && !wanted[key] {
					wanted[key], more = true, true
				}
			}
		}
	}
	var those []desk.Grounds
	for _, g := range all {
		if wanted[g.Key] {
			those = append(those, g)
		}
	}
	return those
}
