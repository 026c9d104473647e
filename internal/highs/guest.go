package highs

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"sync/atomic"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// guestName is the module name under which the seating module imports the solver.
const guestName = "guest"

// The guest's clock, in microseconds: never is its time limit, which counting does not reach;
// jump is added, permanently, to stop it.
const (
	never = 1e11
	jump  = 1e12
)

// guest is one running copy of the solver's program, with its own memory. It serves one
// goroutine at a time, and one programme after another; only hurried may be set from another
// goroutine.
type guest struct {
	module  api.Module
	seat    api.Module // keeps the callback in the table alive
	calls   map[string]api.Function
	jumps   float64           // sum of its jumps
	asked   uint64            // how often the clock was asked
	hurried *atomic.Bool      // whether the clock has jumped in the current solve
	watch   *watch            // what the callback has seen of the current solve
	pages   uint32            // memory limit, in pages of 64 KiB
	place   uint64            // index of the callback in its function table
	names   map[string]uint64 // addresses of the names of the callback's fields
	broken  error             // why the program can no longer be called
}

type guestKey struct{}

// of returns the guest that calls a host function.
func of(ctx context.Context) *guest { return ctx.Value(guestKey{}).(*guest) }

// tick returns the guest's time in microseconds: one per call, plus its jumps. It never goes
// back.
func (g *guest) tick() float64 {
	g.asked++
	if g.hurried.Load() {
		return float64(g.asked) + g.jumps + jump
	}
	return float64(g.asked) + g.jumps
}

// calm ends a solve, so that the next is not stopped.
func (g *guest) calm() {
	if g.hurried.Load() {
		g.jumps += jump
	}
	g.hurried, g.watch = new(atomic.Bool), nil
}

// mostIdle limits the idle guests, and mostKept the memory in bytes that one of them may have
// grown to. A new guest costs milliseconds, to clear its memory.
const (
	mostIdle = 2
	mostKept = 64 << 20
)

// guest returns an idle guest, or a new one.
func (e *Engine) guest(ctx context.Context) (*guest, error) {
	if g := e.waiting(); g != nil {
		return g, nil
	}
	return e.start(ctx)
}

// waiting returns an idle guest, or nil.
func (e *Engine) waiting() *guest {
	e.door.Lock()
	defer e.door.Unlock()
	last := len(e.idle) - 1
	if last < 0 {
		return nil
	}
	g := e.idle[last]
	e.idle = e.idle[:last]
	return g
}

// leave makes a guest idle after deleting its programme; a broken guest, or one that has grown
// large, is closed instead.
func (e *Engine) leave(g *guest, self uint64) {
	if self != 0 {
		_, _ = g.call("Highs_destroy", self) // if it fails the guest is broken
	}
	e.door.Lock()
	defer e.door.Unlock()
	if g.broken != nil || len(e.idle) == mostIdle || g.module.Memory().Size() > mostKept {
		g.close()
		return
	}
	e.idle = append(e.idle, g)
}

// start starts a new copy of the program, with its callback in place.
func (e *Engine) start(ctx context.Context) (*guest, error) {
	ctx = context.WithoutCancel(ctx)
	g := &guest{pages: e.pages, calls: map[string]api.Function{}, hurried: new(atomic.Bool)}
	module, err := e.runtime.InstantiateModule(ctx, e.program, wazero.NewModuleConfig().WithName("").WithStartFunctions())
	if err != nil {
		return nil, fmt.Errorf("start the solver: %w", err)
	}
	g.module = module
	for long, short := range exports {
		g.calls[long] = module.ExportedFunction(short)
	}
	if _, err := module.ExportedFunction(constructors).Call(g.in(ctx)); err != nil {
		return nil, fmt.Errorf("start the solver: %w", err)
	}
	if g.place, err = e.sit(ctx, g); err != nil {
		return nil, err
	}
	return g, g.spell()
}

// spell writes the names of the callback's fields into the guest's memory.
func (g *guest) spell() error {
	a := arena{g: g}
	g.names = map[string]uint64{solutionField: a.text(solutionField)}
	for _, name := range fields {
		g.names[name] = a.text(name)
	}
	return a.err
}

// sit puts the callback into the guest's function table and returns its index.
func (e *Engine) sit(ctx context.Context, g *guest) (uint64, error) {
	ctx = experimental.WithImportResolver(context.WithoutCancel(ctx), func(name string) api.Module {
		if name == guestName {
			return g.module
		}
		return nil
	})
	m, err := e.runtime.InstantiateModule(ctx, e.seat, wazero.NewModuleConfig().WithName(""))
	if err != nil {
		return 0, fmt.Errorf("seat the solver's callback: %w", err)
	}
	g.seat = m
	place, err := m.ExportedFunction("seat").Call(ctx)
	if err != nil {
		return 0, fmt.Errorf("seat the solver's callback: %w", err)
	}
	if int32(place[0]) < 0 {
		return 0, errors.New("seat the solver's callback: its function table can't grow")
	}
	return place[0], nil
}

// close frees the guest's memory.
func (g *guest) close() {
	ctx := context.Background()
	if g.seat != nil {
		_ = g.seat.Close(ctx) // closing a module that runs nothing has no way to fail
	}
	_ = g.module.Close(ctx)
}

// in returns the context in which the guest's functions run. It does not end with ctx: the
// guest is stopped by its clock, not aborted.
func (g *guest) in(ctx context.Context) context.Context {
	return context.WithValue(context.WithoutCancel(ctx), guestKey{}, g)
}

// call runs one of the program's functions. A trap breaks the guest for good.
func (g *guest) call(name string, args ...uint64) (uint64, error) {
	if g.broken != nil {
		return 0, g.broken
	}
	out, err := g.calls[name].Call(g.in(context.Background()), args...)
	if err != nil {
		g.broken = fmt.Errorf("%s: %w", name, err)
		return 0, g.broken
	}
	if len(out) == 0 {
		return 0, nil
	}
	return out[0], nil
}

// do calls a function that returns a status, and turns an error status into an error.
func (g *guest) do(name string, args ...uint64) error {
	status, err := g.call(name, args...)
	if err == nil && api.DecodeI32(status) < 0 {
		err = fmt.Errorf("%s failed", name)
	}
	return err
}

// arena allocates guest memory for the duration of one call.
type arena struct {
	g    *guest
	held []uint64
	err  error // the first error
}

func (a *arena) bytes(b []byte) uint64 {
	if a.err != nil {
		return 0
	}
	at, err := a.g.call("malloc", uint64(len(b))+8)
	switch {
	case err != nil:
		a.err = err
	case at == 0 || !a.g.module.Memory().Write(uint32(at), b):
		a.err = errors.New("the solver is out of memory")
	}
	a.held = append(a.held, at)
	return at
}

func (a *arena) numbers(v []float64) uint64 {
	b := make([]byte, 0, 8*len(v))
	for _, x := range v {
		b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
	}
	return a.bytes(b)
}

func (a *arena) counts(v []int32) uint64 {
	b := make([]byte, 0, 4*len(v))
	for _, x := range v {
		b = binary.LittleEndian.AppendUint32(b, uint32(x))
	}
	return a.bytes(b)
}

func (a *arena) text(s string) uint64 { return a.bytes(append([]byte(s), 0)) }

// release frees the memory.
func (a *arena) release() {
	for _, at := range a.held {
		_, _ = a.g.call("free", at) // a broken guest can't free memory, and need not
	}
}

// numbers reads n numbers from the guest's memory.
func (g *guest) numbers(at uint64, n int) ([]float64, error) {
	b, ok := g.module.Memory().Read(uint32(at), uint32(8*n))
	if !ok {
		return nil, errors.New("the solver's answer lies outside its memory")
	}
	v := make([]float64, n)
	for i := range v {
		v[i] = math.Float64frombits(binary.LittleEndian.Uint64(b[8*i:]))
	}
	return v, nil
}
