package house

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// aim is the circle that a room should not exceed: what a reader can hold in mind.
const aim = 25

// free is the circle that any room may have without being written down.
const free = 10

// circles is the largest circle of files of each room that has one of more than free files. Each
// file of a circle names, over others, every other one, so that none can be read, moved or
// tested alone. These numbers go down only: a room that does better is written down anew.
var circles = map[string]int{
	"cmd/eyeup":     34, // every command stands in the one table of commands
	"internal/book": 19, // what keeps a book whole asks one connection
	"internal/desk": 11,
	"internal/page": 35,
	"season":        25,
	"season/check":  21,
	"season/prove":  22,
	"stock":         13,
}

// TestCircles holds every room to its number.
func TestCircles(t *testing.T) {
	all := list(t, "-export")
	found := map[string][]string{}
	for path, p := range all {
		if room, ours := strings.CutPrefix(path, module); ours {
			found[room] = largest(references(t, p, all))
		}
	}
	for _, room := range slices.Sorted(maps.Keys(found)) {
		is, may := len(found[room]), max(free, circles[room])
		switch {
		case is > may:
			t.Errorf("%s: %d files in a circle, at most %d may be; name less from file to file (or, with a reason, write %q: %d)\n  %s",
				room, is, may, room, is, strings.Join(found[room], " "))
		case is < circles[room] && is > free:
			t.Errorf("%s: better than written down; in circles, write\n\t%q: %d,", room, room, is)
		case is < circles[room]:
			t.Errorf("%s: better than written down; take %q out of circles", room, room)
		}
		if is > aim {
			t.Logf("%s: %d files in a circle; the aim is %d", room, is, aim)
		}
	}
	for room := range circles {
		if _, there := found[room]; !there {
			t.Errorf("%s is in circles but is no room", room)
		}
	}
}

// references returns which file of a package names something that is defined in which other
// one: a constant, variable, type, function or method.
func references(t *testing.T, p listed, all map[string]listed) map[string][]string {
	t.Helper()
	set := token.NewFileSet()
	var files []*ast.File
	names := map[string][]string{}
	for _, name := range p.GoFiles {
		f, err := parser.ParseFile(set, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
		names[name] = nil
	}
	info := types.Info{Uses: map[*ast.Ident]types.Object{}}
	exported := func(path string) (io.ReadCloser, error) { return os.Open(all[path].Export) }
	config := types.Config{Importer: importer.ForCompiler(set, "gc", exported)}
	self, err := config.Check(p.ImportPath, set, files, &info)
	if err != nil {
		t.Fatal(err)
	}
	for used, what := range info.Uses {
		if what.Pkg() != self || !standsAlone(what, self) {
			continue
		}
		from := filepath.Base(set.Position(used.Pos()).Filename)
		to := filepath.Base(set.Position(what.Pos()).Filename)
		if from != to && !slices.Contains(names[from], to) {
			names[from] = append(names[from], to)
		}
	}
	return names
}

// standsAlone reports whether what is a definition of the package or a method, and no field
// or local name.
func standsAlone(what types.Object, self *types.Package) bool {
	if f, is := what.(*types.Func); is && f.Signature().Recv() != nil {
		return true
	}
	return what.Parent() == self.Scope()
}

// largest returns the largest circle: the most nodes each of which leads to each other one.
// It is none where no two do. It is found by Tarjan's strongly connected components (1972).
func largest(leads map[string][]string) (most []string) {
	number, low := map[string]int{}, map[string]int{}
	var stack []string
	var visit func(string)
	visit = func(at string) {
		number[at] = len(number) + 1
		low[at] = number[at]
		stack = append(stack, at)
		for _, to := range leads[at] {
			if number[to] == 0 {
				visit(to)
				low[at] = min(low[at], low[to])
			} else if slices.Contains(stack, to) {
				low[at] = min(low[at], number[to])
			}
		}
		if low[at] == number[at] {
			from := slices.Index(stack, at)
			if circle := stack[from:]; len(circle) > max(1, len(most)) {
				most = slices.Sorted(slices.Values(circle))
			}
			stack = stack[:from]
		}
	}
	for _, at := range slices.Sorted(maps.Keys(leads)) {
		if number[at] == 0 {
			visit(at)
		}
	}
	return most
}

// TestLargest holds that a circle is found, and that what leads into or out of it is no part.
func TestLargest(t *testing.T) {
	for _, c := range []struct {
		leads string
		want  []string
	}{
		{"a-b b-c", nil},
		{"a-b b-c c-a", []string{"a", "b", "c"}},
		{"x-a a-b b-c c-b c-y y-z", []string{"b", "c"}},
		{"a-b b-a c-d d-e e-c b-c", []string{"c", "d", "e"}},
		{"a-b b-a b-c c-b c-d d-c", []string{"a", "b", "c", "d"}},
	} {
		leads := map[string][]string{}
		for pair := range strings.FieldsSeq(c.leads) {
			from, to, _ := strings.Cut(pair, "-")
			leads[from] = append(leads[from], to)
		}
		if got := largest(leads); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.leads, got, c.want)
		}
	}
}
