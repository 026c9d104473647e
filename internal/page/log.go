package page

import (
	"net/http"

	"eyeup/internal/desk"
	"eyeup/stock"
)

// logView is the entries, newest first.
type logView struct {
	Lines []logLine
	All   int
	Page  int
	Pages int
}

// logLine is one entry with who wrote it, and on what.
type logLine struct {
	desk.LogLine
	By string
}

// log lists all entries, newest first: page, of 100 entries each.
func (s *server) log(r *request) error {
	var v logView
	s.desk.Read(func(b *stock.Book) { v.All = b.Entries() })
	v.Page, v.Pages = pageNumber(r, v.All, onePage)
	lines, _, err := s.desk.Log((v.Page-1)*onePage, onePage)
	if err != nil {
		return err
	}
	names := s.names()
	for _, l := range lines {
		v.Lines = append(v.Lines, logLine{l, byWords(l.Entry, names)})
	}
	return s.show(r, http.StatusOK, "log", view{Title: "Log", Main: v})
}

// byWords says who wrote an entry, and on what; nothing where neither was said.
func byWords(e stock.Entry, names map[string]string) string {
	by := ""
	if e.Who != "" {
		name, known := names[e.Who]
		switch {
		case !known:
			name = e.Who
		case name == "":
			name = "someone whose name was removed"
		}
		by = "by " + name
	}
	if e.Device != "" && e.Device != "browser" {
		if by != "" {
			by += " "
		}
		by += "on " + e.Device
	}
	return by
}
