package house

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// address is how the address of a page begins: the page, and what stands behind its name there.
var address = regexp.MustCompile(`^/(season|stock|rounds|garden|log|patch|weather|places)($|[/?#])`)

// TestOnlyThePagesHoldTheirAddresses reads every text in the code under internal/: but for the pages
// and the aids of tests nobody knows at which address a page stands.
func TestOnlyThePagesHoldTheirAddresses(t *testing.T) {
	read := 0
	for path, p := range list(t) {
		room, ours := strings.CutPrefix(path, module)
		if !ours || isPure(room) || room == "internal/page" {
			continue
		}
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, name), nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				l, is := n.(*ast.BasicLit)
				if !is || l.Kind != token.STRING {
					return true
				}
				read++
				if says, err := strconv.Unquote(l.Value); err == nil && address.MatchString(says) {
					t.Errorf("%s/%s holds the address %q; name the page as sources.Where does", room, name, says)
				}
				return true
			})
		}
	}
	if read < 1000 {
		t.Errorf("only %d texts were read", read)
	}
}

// most is the greatest part of the lines under internal/ that one room may hold.
const most = 0.25

// TestNoRoomIsTooLarge counts lines of code, without those of tests.
func TestNoRoomIsTooLarge(t *testing.T) {
	lines, all := map[string]int{}, 0
	for path, p := range list(t) {
		room, ours := strings.CutPrefix(path, module)
		if !ours || !strings.HasPrefix(room, "internal/") {
			continue
		}
		for _, name := range p.GoFiles {
			text, err := os.ReadFile(filepath.Join(p.Dir, name))
			if err != nil {
				t.Fatal(err)
			}
			n := bytes.Count(text, []byte("\n"))
			lines[room] += n
			all += n
		}
	}
	if len(lines) < 10 {
		t.Fatalf("only %d rooms were found", len(lines))
	}
	for room, n := range lines {
		if share := float64(n) / float64(all); share > most {
			t.Errorf("%s holds %d of %d lines, %.0f %%; split it", room, n, all, 100*share)
		}
	}
}
