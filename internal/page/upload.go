package page

import (
	"errors"
	"io"
	"net/http"
	"path/filepath"
	"strings"
)

// uploaded reads a file that was sent. Its name is cut to the last part, so that it names no
// folder.
func uploaded(r *request, field string) (name string, content []byte, err error) {
	if r.MultipartForm == nil {
		if err := r.ParseMultipartForm(1 << 20); err != nil && !errors.Is(err, http.ErrNotMultipart) {
			return "", nil, err
		}
	}
	file, header, err := r.FormFile(field)
	if errors.Is(err, http.ErrMissingFile) || errors.Is(err, http.ErrNotMultipart) {
		return "", nil, nil
	}
	if err != nil {
		return "", nil, err
	}
	defer file.Close()
	content, err = io.ReadAll(file)
	return safeName(header.Filename), content, err
}

// safeName keeps letters, figures, points, dashes and lines of the last part of a name.
func safeName(name string) string {
	name = filepath.Base(strings.ReplaceAll(name, "\\", "/"))
	safe := strings.Map(func(c rune) rune {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '.' || c == '-' || c == '_' {
			return c
		}
		return '-'
	}, name)
	if safe = strings.TrimLeft(safe, ".-"); safe == "" {
		return "weather"
	}
	return safe[:min(len(safe), 80)]
}
