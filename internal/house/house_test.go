package house

import (
	"bytes"
	"encoding/json"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// listed is what the go command tells of a package.
type listed struct {
	ImportPath, Dir, Doc      string
	Export                    string // the file of what it exports, with -export
	Standard                  bool
	GoFiles                   []string
	Imports, Deps             []string
	TestGoFiles, XTestGoFiles []string
	TestImports, XTestImports []string
	Module                    *struct{ Path string }
}

func list(t *testing.T, flags ...string) map[string]listed {
	t.Helper()
	args := append([]string{"list", "-deps", "-json"}, flags...)
	out, err := exec.Command("go", append(args, "eyeup/...")...).Output()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]listed{}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all[p.ImportPath] = p
	}
}

func isPure(room string) bool {
	return !strings.HasPrefix(room, "internal/") && !strings.HasPrefix(room, "cmd/")
}

func TestRooms(t *testing.T) {
	all := list(t)
	built := map[string]bool{}
	for path, p := range all {
		room, ours := strings.CutPrefix(path, module)
		if !ours || slices.Contains(aids, room) {
			continue
		}
		built[room] = true
		may, known := rooms[room]
		if !known {
			t.Errorf("%s is not on the house plan", room)
		}
		if p.Doc == "" {
			t.Errorf("%s has no package comment", room)
		}
		for _, i := range p.Imports {
			if other, ours := strings.CutPrefix(i, module); ours && !slices.Contains(strings.Fields(may), other) {
				t.Errorf("%s must not enter %s", room, other)
			}
		}
		if isPure(room) {
			pure(t, room, p, all)
		}
	}
	for room := range rooms {
		if !built[room] {
			t.Errorf("%s is on the house plan but is not built", room)
		}
	}
}

// TestBlindRooms holds that what checks a thing can't reach what made it, over all that it imports.
func TestBlindRooms(t *testing.T) {
	all := list(t)
	for room, hidden := range blind {
		p, is := all[module+room]
		if !is {
			t.Errorf("%s is not built", room)
		}
		for _, other := range strings.Fields(hidden) {
			if _, is := all[module+other]; !is {
				t.Errorf("%s is hidden from %s but is not built", other, room)
			}
			if slices.Contains(p.Deps, module+other) {
				t.Errorf("%s must not see %s, not even through another room", room, other)
			}
		}
	}
}

// pure reports what a pure room reaches for outside, itself or through a library.
func pure(t *testing.T, room string, p listed, all map[string]listed) {
	t.Helper()
	for _, i := range p.Imports {
		if slices.Contains(outside, i) {
			t.Errorf("%s is pure and must not import %s", room, i)
		}
		if strings.HasPrefix(i, module+"internal/") || strings.HasPrefix(i, module+"cmd/") {
			t.Errorf("%s is pure and must not enter %s", room, i)
		}
	}
	noClock(t, room, p)
	for _, dep := range p.Deps {
		if slices.Contains(through, dep) {
			t.Errorf("%s is pure and reaches %s through a library", room, dep)
		}
		if d := all[dep]; !d.Standard && !strings.HasPrefix(dep, module) {
			noClock(t, room, d)
		}
	}
}

// noClock reports calls that would make an answer depend on when it is asked.
func noClock(t *testing.T, room string, p listed) {
	t.Helper()
	for _, file := range p.GoFiles {
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, file), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				x, named := s.X.(*ast.Ident)
				if named && x.Name == "time" && slices.Contains([]string{"Now", "Since", "Until", "Local"}, s.Sel.Name) {
					t.Errorf("%s reads the clock in %s: time.%s", room, p.ImportPath, s.Sel.Name)
				}
			}
			return true
		})
	}
}
