package page

import (
	"embed"
	"fmt"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"eyeup/quantity"
)

//go:embed look
var files embed.FS

// look is every page, ready to be filled, for one taste.
type look struct{ pages map[string]*template.Template }

// newLooks reads the templates, once for each taste.
func newLooks() (map[taste]*look, error) {
	looks := map[taste]*look{}
	for _, units := range []quantity.System{quantity.US, quantity.Metric} {
		for _, iso := range []bool{false, true} {
			t := taste{units, iso}
			l, err := newLook(t)
			if err != nil {
				return nil, err
			}
			looks[t] = l
		}
	}
	return looks, nil
}

func newLook(t taste) (*look, error) {
	frame, err := template.New("frame").Funcs(words(t)).ParseFS(files, "look/frame.html", "look/parts.html")
	if err != nil {
		return nil, fmt.Errorf("the pages' frame: %w", err)
	}
	names, err := fs.Glob(files, "look/*.html")
	if err != nil {
		return nil, err
	}
	l := &look{map[string]*template.Template{}}
	for _, file := range names {
		name := strings.TrimSuffix(path.Base(file), ".html")
		if name == "frame" || name == "parts" {
			continue
		}
		one, err := frame.Clone()
		if err == nil {
			one, err = one.ParseFS(files, file)
		}
		if err != nil {
			return nil, fmt.Errorf("the page %s: %w", name, err)
		}
		l.pages[name] = one.Lookup("frame.html")
	}
	return l, nil
}

// looked serves the style sheet and the script.
func looked() http.Handler {
	sub, err := fs.Sub(files, "look")
	if err != nil {
		panic(err) // the folder is part of the program
	}
	serve := http.StripPrefix("/look/", http.FileServerFS(sub))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if ext := path.Ext(r.URL.Path); ext != ".css" && ext != ".js" {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Cache-Control", "no-cache")
		serve.ServeHTTP(w, r)
	})
}
