package page

import (
	"strings"

	"eyeup/internal/desk"
)

// sureWords is how a source begins that says how sure it is.
var sureWords = map[string]string{"assumption": "assumption: ", "practice": "common practice: ", "memory": "from memory: "}

// sourced says how sure a figure is and where it is from, each once.
func sourced(f desk.FigureAnswer) string {
	if begins := sureWords[f.Sure]; begins != "" && strings.HasPrefix(f.Source, begins) {
		return f.Source
	}
	return f.Sure + ": " + f.Source
}
