package highs

import (
	"context"
	"math"

	"eyeup/solve"

	"github.com/tetratelabs/wazero/api"
)

// The types of callbacks that are used. Source: HiGHS C API, HighsCallbackType.
const (
	simplexStep = 1 // a simplex iteration; may be interrupted
	betterFound = 4 // a better answer was found
	branchStep  = 6 // a branch-and-bound step; may be interrupted
)

// fields are the data of a callback that are used, by the solver's names.
var fields = []string{"mip_node_count", "mip_total_lp_iterations", "mip_dual_bound", "simplex_iteration_count"}

// solutionField is the field that points to a better answer's values.
const solutionField = "mip_solution"

// watch follows one solve through its callbacks.
type watch struct {
	p      *solve.Programme
	limits solve.Limits
	best   []float64 // the best answer's values so far; nil before the first
	seen   solve.Progress
	told   solve.Progress // the last Progress reported
	names  map[string]uint64
	offset map[string]uint32 // offset of each field in a callback's data
}

// called is the callback: its type, a message, its data out, its data in, and a number of
// ours.
func called(ctx context.Context, m api.Module, s []uint64) {
	g := of(ctx)
	w := g.watch
	if w == nil {
		return
	}
	out, in := s[2], s[3]
	if w.offset == nil {
		w.locate(g, out)
	}
	stop := g.hurried.Load()
	switch api.DecodeI32(s[0]) {
	case simplexStep:
		steps := int(w.count32(m, out, "simplex_iteration_count"))
		stop = stop || w.limits.Iterations > 0 && steps >= w.limits.Iterations
	case betterFound:
		w.better(g, out)
		w.tell(m, out)
		return // this occasion does not listen
	case branchStep:
		w.tell(m, out)
		stop = stop || w.limits.Iterations > 0 && w.seen.Iterations >= w.limits.Iterations
	default:
		return
	}
	listen := uint32(0) // written each time, because the value of an earlier solve is still there
	if stop {
		listen = 1
	}
	put(m, in, listen)
}

// locate finds the offsets of the fields, which are the same for every callback.
func (w *watch) locate(g *guest, out uint64) {
	w.offset = map[string]uint32{}
	for _, name := range fields {
		at, err := g.call("Highs_getCallbackDataOutItem", out, w.names[name])
		if err != nil || at == 0 {
			panic("the solver tells no " + name)
		}
		w.offset[name] = uint32(at) - uint32(out)
	}
}

// better keeps a better answer's values.
func (w *watch) better(g *guest, out uint64) {
	at, err := g.call("Highs_getCallbackDataOutItem", out, w.names[solutionField])
	if err != nil || at == 0 {
		panic("the solver tells of a better answer without its values")
	}
	values, err := g.numbers(at, len(w.p.Columns))
	if err != nil {
		panic(err)
	}
	w.best, w.seen.Objective = values, w.p.Cost(values)
}

// tell reads the state of the search and reports it if it improved.
func (w *watch) tell(m api.Module, out uint64) {
	w.seen.Nodes = int(w.count64(m, out, "mip_node_count"))
	w.seen.Iterations = int(w.count64(m, out, "mip_total_lp_iterations"))
	w.seen.Bound = w.bounded(math.Float64frombits(w.count64(m, out, "mip_dual_bound")))
	if w.limits.Progress == nil || w.seen.Objective == w.told.Objective && w.seen.Bound == w.told.Bound {
		return
	}
	w.told = w.seen
	told := w.seen
	w.limits.Progress(&told)
}

// bounded returns the better of a reported bound and the known one.
func (w *watch) bounded(bound float64) float64 {
	if math.IsNaN(bound) || bound < w.seen.Bound {
		return w.seen.Bound
	}
	return bound
}

func (w *watch) count64(m api.Module, out uint64, field string) uint64 {
	x, ok := m.Memory().ReadUint64Le(uint32(out) + w.offset[field])
	if !ok {
		panic("the solver tells " + field + " from outside its memory")
	}
	return x
}

func (w *watch) count32(m api.Module, out uint64, field string) uint32 {
	x, ok := m.Memory().ReadUint32Le(uint32(out) + w.offset[field])
	if !ok {
		panic("the solver tells " + field + " from outside its memory")
	}
	return x
}
