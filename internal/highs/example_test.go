package highs

import (
	"context"
	"fmt"

	"eyeup/solve"
)

func ExampleEngine_Hold() {
	e, err := shared() // elsewhere: Open(ctx, folder)
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := e.Hold(context.Background(), workshop())
	if err != nil {
		fmt.Println(err)
		return
	}
	defer h.Close()
	for _, table := range []float64{-50, -80} {
		if err := h.Costs([]float64{-30, table}, 0); err != nil {
			fmt.Println(err)
			return
		}
		a, err := h.Solve(context.Background(), solve.Limits{}, nil)
		fmt.Println(a.State, a.Values, a.Objective, err)
	}
	// Output:
	// proved [20 10] -1100 <nil>
	// proved [0 20] -1600 <nil>
}
