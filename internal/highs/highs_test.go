package highs

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"eyeup/solve"

	"github.com/tetratelabs/wazero"
)

// shared is one engine for all tests; compiling it takes seconds, so its code is kept in
// the folder where the machine keeps temporary things.
var shared = sync.OnceValues(func() (*Engine, error) {
	return Open(context.Background(), cacheFolder())
})

func cacheFolder() string {
	return filepath.Join(os.TempDir(), fmt.Sprintf("eyeup-solver-%d", os.Getuid()))
}

func engine(t testing.TB) *Engine {
	t.Helper()
	e, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// solved answers a programme and fails on any error.
func solved(t *testing.T, ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) solve.Answer {
	t.Helper()
	a, err := engine(t).Solve(ctx, p, limits, start)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func held(t *testing.T, p *solve.Programme) *Held {
	t.Helper()
	h, err := engine(t).Hold(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(h.Close)
	return h
}

// workshop is the worked example of the solver's own package (npm highs 1.15.3, README, Quick
// start): 30 a chair and 50 a table, 40 hours of carpentry and 50 of finishing. It prints the
// best: 20 chairs, 10 tables, 1100.
func workshop() *solve.Programme {
	p := &solve.Programme{}
	chairs := p.Column(solve.Column{Name: "chairs", Cost: -30, High: math.Inf(1), Whole: true})
	tables := p.Column(solve.Column{Name: "tables", Cost: -50, High: math.Inf(1), Whole: true})
	p.Row(solve.Row{Name: "carpentry", Low: math.Inf(-1), High: 40, Terms: []solve.Term{{Column: chairs, Factor: 1}, {Column: tables, Factor: 2}}})
	p.Row(solve.Row{Name: "finishing", Low: math.Inf(-1), High: 50, Terms: []solve.Term{{Column: chairs, Factor: 2}, {Column: tables, Factor: 1}}})
	return p
}

func TestWorkshop(t *testing.T) {
	a := solved(t, context.Background(), workshop(), solve.Limits{}, nil)
	if a.State != solve.Proved || a.Objective != -1100 || a.Bound != -1100 || !reflect.DeepEqual(a.Values, []float64{20, 10}) {
		t.Errorf("%+v, want 20 chairs and 10 tables for 1100", a)
	}
	r, err := held(t, workshop()).Relax(context.Background(), solve.Limits{})
	if err != nil || r.State != solve.Proved {
		t.Fatal(r.State, err)
	}
	// Both hours bind and both columns are used, so the prices follow from the costs alone:
	// u + 2v = -30 and 2u + v = -50.
	for i, want := range []float64{-70.0 / 3, -10.0 / 3} {
		if math.Abs(r.Prices[i]-want) > 1e-9 {
			t.Errorf("row %d has the price %v, want %v", i, r.Prices[i], want)
		}
	}
}

func TestInfeasibleAndUnboundedAreTold(t *testing.T) {
	open := math.Inf(1)
	two := func(low, high float64, cost float64, whole bool) *solve.Programme {
		p := &solve.Programme{}
		x := p.Column(solve.Column{Cost: cost, High: open, Whole: whole})
		y := p.Column(solve.Column{Cost: cost, High: open, Whole: whole})
		p.Row(solve.Row{Low: low, High: high, Terms: []solve.Term{{Column: x, Factor: 2}, {Column: y, Factor: -2}}})
		return p
	}
	for _, c := range []struct {
		what string
		p    *solve.Programme
		want solve.State
	}{
		{"no bound on either", two(0, 0, -1, false), solve.Unbounded},
		{"no bound on either, whole", two(0, 0, -1, true), solve.Unbounded},
		{"an odd difference of even numbers, without end", two(1, 1, -1, true), solve.Infeasible},
		{"an odd difference of even numbers", two(1, 1, 1, true), solve.Infeasible},
		{"a half each", two(1, 1, 1, false), solve.Proved},
		{"nothing at all", &solve.Programme{Offset: 3}, solve.Proved},
		{"a row without columns that cannot be kept", &solve.Programme{Rows: []solve.Row{{Low: 1, High: 2}}}, solve.Infeasible},
		{"a row without columns that is kept", &solve.Programme{Rows: []solve.Row{{Low: -1, High: 2}}}, solve.Proved},
		{"whole between two fifths and three fifths", &solve.Programme{Columns: []solve.Column{{Low: 0.4, High: 0.6, Whole: true}}}, solve.Infeasible},
	} {
		if a := solved(t, context.Background(), c.p, solve.Limits{}, nil); a.State != c.want {
			t.Errorf("%s: %v, want %v", c.what, a.State, c.want)
		}
	}
}

func TestRefusesWhatIsNotSound(t *testing.T) {
	p := workshop()
	p.Rows[0].Terms[0].Factor = math.NaN()
	if _, err := engine(t).Solve(context.Background(), p, solve.Limits{}, nil); err == nil || !strings.Contains(err.Error(), "carpentry") {
		t.Errorf("a factor that is not a number: %v", err)
	}
	if _, err := engine(t).Solve(context.Background(), workshop(), solve.Limits{}, []float64{1}); err == nil {
		t.Error("a start of the wrong length is taken")
	}
	h := held(t, workshop())
	if h.Costs([]float64{1}, 0) == nil || h.Column(2, 0, 1) == nil || h.Row(0, 2, 1) == nil || h.Costs([]float64{math.Inf(1), 0}, 0) == nil {
		t.Error("changes that make no sense are taken")
	}
}

func TestRefusesAnotherProgram(t *testing.T) {
	other := append([]byte(nil), packed...)
	other[len(other)/2] ^= 1
	if _, err := unpack(other); err == nil {
		t.Error("a changed program is taken")
	}
	ctx := context.Background()
	r := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfigInterpreter())
	defer r.Close(ctx)
	empty, err := r.CompileModule(ctx, []byte("\x00asm\x01\x00\x00\x00"))
	if err != nil {
		t.Fatal(err)
	}
	if err := known(empty); err == nil || !strings.Contains(err.Error(), "go generate") {
		t.Errorf("a program without its functions: %v", err)
	}
}

// TestOpensBesideSpoiltCode holds that spoilt compiled code never runs: it is refused or made
// anew.
func TestOpensBesideSpoiltCode(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: compiles the solver")
	}
	engine(t) // leaves compiled code
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(cacheFolder())); err != nil {
		t.Fatal(err)
	}
	spoil(t, folder)
	e, err := Open(context.Background(), folder)
	if err != nil {
		t.Fatal(err)
	}
	defer e.Close()
	a, err := e.Solve(context.Background(), workshop(), solve.Limits{}, nil)
	if err != nil || a.Objective != -1100 {
		t.Errorf("%+v, %v", a, err)
	}
	if _, err := Open(context.Background(), filepath.Join(folder, "file")); err == nil {
		t.Error("a file is taken for a folder")
	}
}

// spoil changes a byte in the midst of every file of a folder, and puts a file beside them.
func spoil(t *testing.T, folder string) {
	t.Helper()
	spoilt := 0
	err := filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		b[len(b)/2] ^= 0xff
		spoilt++
		return os.WriteFile(path, b, 0o600)
	})
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, "file"), nil, 0o600)
	}
	if err != nil || spoilt == 0 {
		t.Fatal(spoilt, err)
	}
}
