package page

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
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

// look holds the template of every page, for one display.
type look struct{ pages map[string]*template.Template }

// newLooks reads the templates once for each display.
func newLooks() (map[display]*look, error) {
	looks := map[display]*look{}
	for _, units := range []quantity.System{quantity.US, quantity.Metric} {
		for _, iso := range []bool{false, true} {
			t := display{units, iso}
			l, err := newLook(t)
			if err != nil {
				return nil, err
			}
			looks[t] = l
		}
	}
	return looks, nil
}

func newLook(t display) (*look, error) {
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

// looked serves the style sheet and the script. A browser that has them already gets 304.
func looked() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name := strings.TrimPrefix(r.URL.Path, "/")
		sort := map[string]string{".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8"}[path.Ext(name)]
		text, err := files.ReadFile(name)
		if sort == "" || err != nil {
			http.NotFound(w, r)
			return
		}
		sum := sha256.Sum256(text)
		tag := `"` + hex.EncodeToString(sum[:8]) + `"`
		h := w.Header()
		h.Set("Cache-Control", "no-cache")
		h.Set("Etag", tag)
		if r.Header.Get("If-None-Match") == tag {
			w.WriteHeader(http.StatusNotModified)
			return
		}
		h.Set("Content-Type", sort)
		_, _ = w.Write(text) // an error means that the reader has gone: nothing to do
	})
}
