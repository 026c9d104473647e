package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"eyeup/culture"
)

// figureRooms are the rooms, with those inside them, that read every figure of the trade from
// culture. Were one copied into season and season/check, the replay could not see it wrong.
var figureRooms = []string{"season", "week", "outlook"}

// plain are numbers that count, round or measure time, and are a general figure only by chance: the
// days of a week, one in ten either way, a half, a few of something.
var plain = []float64{0, 1, 2, 3, 4, 7, 10, 0.5, 0.1, 0.9}

// No number that is a general figure of culture stands in these rooms, but in a constant of the
// package whose comment says what else it is: a limit of a search, a unit.
func TestFiguresStandInCulture(t *testing.T) {
	files := 0
	for _, room := range figureRooms {
		err := filepath.WalkDir(filepath.Join("..", "..", room), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			files++
			for _, found := range figuresIn(t, path, string(text)) {
				t.Error(found)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if files == 0 {
		t.Error("no file was read")
	}
}

// The test above can fail, at the right line, and lets pass what is no figure.
func TestCopiedFiguresAreFound(t *testing.T) {
	for text, want := range map[string]string{
		"var packed = 45":                                       "x.go:3: 45 is store.packed",
		"func f() float64 { return -2.0 }":                      "x.go:3: -2 is cold.hardy",
		"func f(d int) bool {\n\treturn d > 14 }":               "x.go:4: 14 is pot.last",
		"const fruiting = 120":                                  "x.go:3: 120 is flower.cut_for",
		"// f is picked so long. Common practice.\nconst f = 9": "x.go:4: f is said to be common practice",
		"const f = 9 // assumption":                             "x.go:3: f is said to be an assumption",
		"// nearDays bounds the search.\nconst nearDays = 14":   "",
		"var week [8]int":                                       "",
		"func f(d int) int { return d / 7 }":                    "",
	} {
		all := strings.Join(figuresIn(t, "x.go", "package x\n\n"+text+"\n"), "\n")
		if (want == "") != (all == "") || !strings.HasPrefix(all, want) {
			t.Errorf("%q: %q, not %q", text, all, want)
		}
	}
}

// figuresIn says which numbers of a file are figures of culture, with their lines.
func figuresIn(t *testing.T, path, text string) []string {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, text, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, decl := range file.Decls {
		if group, is := decl.(*ast.GenDecl); is && group.Tok == token.CONST {
			found = append(found, constants(set, group)...)
			continue
		}
		found = append(found, numbers(set, decl)...)
	}
	return found
}

// constants says which constants of a package are figures by their comment, or have a number that
// is one and no comment.
func constants(set *token.FileSet, group *ast.GenDecl) []string {
	var found []string
	for _, s := range group.Specs {
		one := s.(*ast.ValueSpec)
		says := strings.ToLower(group.Doc.Text() + one.Doc.Text() + one.Comment.Text())
		for word, what := range map[string]string{"common practice": "common practice", "assumption": "an assumption"} {
			if strings.Contains(says, word) {
				found = append(found, fmt.Sprintf("%s: %s is said to be %s: give it its place in culture", line(set, one), one.Names[0], what))
			}
		}
		if says == "" {
			found = append(found, numbers(set, one)...)
		}
	}
	return found
}

// numbers says which numbers below a node are figures. The length of an array is none.
func numbers(set *token.FileSet, in ast.Node) []string {
	var found []string
	ast.Inspect(in, func(n ast.Node) bool {
		if array, is := n.(*ast.ArrayType); is && array.Len != nil {
			return false
		}
		sign := 1.0
		if minus, is := n.(*ast.UnaryExpr); is && minus.Op == token.SUB {
			n, sign = minus.X, -1
		}
		if number, is := n.(*ast.BasicLit); is {
			if key := figureOf(number, sign); key != "" {
				found = append(found, fmt.Sprintf("%s: %g is %s: read it from culture, or make it a constant of the package whose comment says what else it is", line(set, n), sign*valueOf(number), key))
			}
			return false
		}
		return true
	})
	return found
}

// figureOf returns the key of the general figure that a number is; none for a plain number.
func figureOf(number *ast.BasicLit, sign float64) string {
	v := sign * valueOf(number)
	if math.IsNaN(v) || slices.Contains(plain, v) {
		return ""
	}
	for _, f := range culture.GeneralFigures() {
		if f.Value == v {
			return f.Key
		}
	}
	return ""
}

func valueOf(number *ast.BasicLit) float64 {
	v, err := strconv.ParseFloat(number.Value, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

func line(set *token.FileSet, n ast.Node) string {
	at := set.Position(n.Pos())
	return fmt.Sprintf("%s:%d", strings.TrimPrefix(filepath.ToSlash(at.Filename), "../../"), at.Line)
}
