package highs

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"eyeup/solve"
)

// shared is one engine for all tests; compiling it takes seconds, so its code is kept in
// the folder where the machine keeps temporary things.
var shared = sync.OnceValues(func() (*Engine, error) {
	return Open(context.Background(), filepath.Join(os.TempDir(), fmt.Sprintf("eyeup-solver-%d", os.Getuid())))
})

func engine(t testing.TB) *Engine {
	t.Helper()
	e, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// workshop is the worked example of the solver's own package (npm highs 1.15.3, README):
// 30 a chair and 50 a table, 40 hours of carpentry, 50 of finishing. Best are 10 chairs... and
// the README prints them: 20 chairs, 10 tables, 1100.
func workshop() *solve.Programme {
	p := &solve.Programme{}
	chairs := p.Column(solve.Column{Name: "chairs", Cost: -30, High: math.Inf(1), Whole: true})
	tables := p.Column(solve.Column{Name: "tables", Cost: -50, High: math.Inf(1), Whole: true})
	p.Row(solve.Row{Name: "carpentry", Low: math.Inf(-1), High: 40, Terms: []solve.Term{{Column: chairs, Factor: 1}, {Column: tables, Factor: 2}}})
	p.Row(solve.Row{Name: "finishing", Low: math.Inf(-1), High: 50, Terms: []solve.Term{{Column: chairs, Factor: 2}, {Column: tables, Factor: 1}}})
	return p
}

func TestWorkshop(t *testing.T) {
	a, err := engine(t).Solve(context.Background(), workshop(), solve.Limits{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Printf("%+v\n", a)
	h, err := engine(t).Hold(context.Background(), workshop())
	if err != nil {
		t.Fatal(err)
	}
	defer h.Close()
	r, err := h.Relax(context.Background(), solve.Limits{})
	fmt.Printf("%+v %v\n", r, err)
}
