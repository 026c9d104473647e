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

// guestName is the name by which the seating module asks for the solver.
const guestName = "guest"

// The guest's clock, in microseconds: never is its time limit, which counting does not reach;
// jump is what is added, for good, when it is to stop.
const (
	never = 1e11
	jump  = 1e12
)

// guest is one running copy of the solver's program, with a memory of its own. It serves one
// goroutine at a time, and one programme after another; only what hurried points to may be set
// from another.
type guest struct {
	module  api.Module
	seat    api.Module // keeps the callback in the table alive
	calls   map[string]api.Function
	jumps   float64           // by how much it has jumped
	asked   uint64            // how often the clock was asked
	hurried *atomic.Bool      // whether the clock has jumped in the present solve
	watch   *watch            // what the callback has seen of the present solve
	pages   uint32            // the most memory it may take, in pages of 64 KiB
	place   uint64            // where its table of functions has the callback
	names   map[string]uint64 // where its memory has the names of the callback's fields
	broken  error             // why the program can no longer be called
}

type guestKey struct{}

// of returns the guest for whom a host function is called.
func of(ctx context.Context) *guest { return ctx.Value(guestKey{}).(*guest) }

// tick returns the guest's time in microseconds: one for each time it was asked, and what it
// has jumped. It never goes back.
func (g *guest) tick() float64 {
	g.asked++
	if g.hurried.Load() {
		return float64(g.asked) + g.jumps + jump
	}
	return float64(g.asked) + g.jumps
}

// calm ends a solve: the next is not hurried.
func (g *guest) calm() {
	if g.hurried.Load() {
		g.jumps += jump
	}
	g.hurried, g.watch = new(atomic.Bool), nil
}

// mostIdle is how many guests wait for a next programme, and mostKept how much memory one of
// them may have grown to, in bytes: a fresh one costs milliseconds, for its memory is wiped.
const (
	mostIdle = 2
	mostKept = 64 << 20
)

// guest returns a guest that waits, or a fresh one.
func (e *Engine) guest(ctx context.Context) (*guest, error) {
	if g := e.waiting(); g != nil {
		return g, nil
	}
	return e.start(ctx)
}

// waiting returns a guest that waits, nil where none does.
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

// leave lets a guest wait for the next programme, once it has forgotten the one under self;
// one that is broken or has grown large gives its memory back instead.
func (e *Engine) leave(g *guest, self uint64) {
	if self != 0 {
		_, _ = g.call("Highs_destroy", self) // where it fails the guest is broken
	}
	e.door.Lock()
	defer e.door.Unlock()
	if g.broken != nil || len(e.idle) == mostIdle || g.module.Memory().Size() > mostKept {
		g.close()
		return
	}
	e.idle = append(e.idle, g)
}

// start runs a fresh copy of the program, with its callback seated.
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

// spell writes the names of the callback's fields into the guest's memory, where they stay.
func (g *guest) spell() error {
	a := arena{g: g}
	g.names = map[string]uint64{solutionField: a.text(solutionField)}
	for _, name := range fields {
		g.names[name] = a.text(name)
	}
	return a.err
}

// sit gives the callback a place in the guest's table of functions and returns which.
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
		return 0, errors.New("seat the solver's callback: its table of functions cannot grow")
	}
	return place[0], nil
}

// close gives the guest's memory back.
func (g *guest) close() {
	ctx := context.Background()
	if g.seat != nil {
		_ = g.seat.Close(ctx) // closing a module that runs nothing has no way to fail
	}
	_ = g.module.Close(ctx)
}

// in returns the context under which the guest's functions run. It does not end when ctx
// does: the guest is stopped by its clock, not torn down.
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

// do runs a function that answers with a status, and refuses an error's.
func (g *guest) do(name string, args ...uint64) error {
	status, err := g.call(name, args...)
	if err == nil && api.DecodeI32(status) < 0 {
		err = fmt.Errorf("%s failed", name)
	}
	return err
}

// arena holds memory of the guest's for the length of one call.
type arena struct {
	g    *guest
	held []uint64
	err  error // the first that went wrong
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
		a.err = errors.New("the solver has no memory left")
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

// release gives the memory back.
func (a *arena) release() {
	for _, at := range a.held {
		_, _ = a.g.call("free", at) // a broken guest frees nothing, and need not
	}
}

// numbers reads n of the guest's numbers.
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
