package solve_test

import (
	"context"
	"fmt"
	"math"

	"eyeup/solve"
)

// Three trays of tubers are started early, late, or not at all; the bench holds five square
// feet, and an early tray takes two of them.
func ExamplePlain() {
	p := &solve.Programme{}
	early := p.Column(solve.Column{Name: "early", Cost: -9, High: 3, Whole: true})
	late := p.Column(solve.Column{Name: "late", Cost: -5, High: 3, Whole: true})
	never := p.Column(solve.Column{Name: "not at all", High: 3, Whole: true})
	p.Row(solve.Row{Name: "trays", Low: 3, High: 3, Terms: []solve.Term{{Column: early, Factor: 1}, {Column: late, Factor: 1}, {Column: never, Factor: 1}}})
	p.Row(solve.Row{Name: "bench", Low: math.Inf(-1), High: 5, Terms: []solve.Term{{Column: early, Factor: 2}, {Column: late, Factor: 1}}})
	a, err := solve.Plain(context.Background(), p, solve.Limits{Apart: 0.5}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.State, a.Values, a.Objective)
	fmt.Println("no plan is 0.5 better:", a.Apart() < 0.5)
	// Output:
	// proved [2 1 0] -23
	// no plan is 0.5 better: true
}
