package highs

import (
	"context"
	"fmt"

	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/sys"
)

// The module names under which host functions are imported: by the solver's program, and by
// the module that seats the callback.
const (
	hostName     = "a"
	callbackName = "callback"
)

// gone is the result of opening any file: it does not exist (errno 44 of WASI, ENOENT),
// negated.
const gone = -44

// host defines the functions that the program imports. All state belongs to the calling guest.
func (e *Engine) host(ctx context.Context) error {
	b := e.runtime.NewHostModuleBuilder(hostName)
	for _, f := range e.program.ImportedFunctions() {
		_, name, _ := f.Import()
		b.NewFunctionBuilder().WithGoModuleFunction(serve(imports[name], len(f.ResultTypes())), f.ParamTypes(), f.ResultTypes()).Export(name)
	}
	if _, err := b.Instantiate(ctx); err != nil {
		return fmt.Errorf("give the solver its host: %w", err)
	}
	five := []api.ValueType{i32, i32, i32, i32, i32}
	b = e.runtime.NewHostModuleBuilder(callbackName)
	b.NewFunctionBuilder().WithGoModuleFunction(api.GoModuleFunc(called), five, nil).Export(callbackName)
	if _, err := b.Instantiate(ctx); err != nil {
		return fmt.Errorf("give the solver its host: %w", err)
	}
	return nil
}

const i32 = api.ValueTypeI32

// serve returns the replacement for a function of the usual host. Those without use here, such
// as time zones and terminals, do nothing.
func serve(what string, results int) api.GoModuleFunc {
	switch what {
	case "cxa_throw", "abort_js":
		return func(context.Context, api.Module, []uint64) { panic("the solver gave up: " + what) }
	case "exit", "proc_exit":
		return func(_ context.Context, _ api.Module, s []uint64) { panic(sys.NewExitError(uint32(s[0]))) }
	case "emscripten_get_now", "emscripten_date_now":
		return func(ctx context.Context, _ api.Module, s []uint64) { s[0] = api.EncodeF64(of(ctx).tick() / 1e3) }
	case "clock_time_get":
		return clock
	case "emscripten_resize_heap":
		return grow
	case "environ_sizes_get":
		return func(_ context.Context, m api.Module, s []uint64) {
			put(m, s[0], 0)
			s[0] = 0
		}
	case "fd_write":
		return swallow
	case "syscall_openat":
		return func(_ context.Context, _ api.Module, s []uint64) { s[0] = api.EncodeI32(gone) }
	}
	return func(_ context.Context, _ api.Module, s []uint64) {
		if results > 0 {
			s[0] = 0
		}
	}
}

// clock writes the guest's time in nanoseconds.
func clock(ctx context.Context, m api.Module, s []uint64) {
	if !m.Memory().WriteUint64Le(uint32(s[2]), uint64(of(ctx).tick())*1000) {
		panic("the solver's clock lies outside its memory")
	}
	s[0] = 0
}

// grow enlarges the program's memory by what it asks for, and a fifth more if allowed, so that
// it asks less often.
func grow(_ context.Context, m api.Module, s []uint64) {
	want, have := uint64(uint32(s[0])), uint64(m.Memory().Size())
	s[0] = 0
	for _, size := range []uint64{max(want, have+have/5), want} {
		if size > have && size < 1<<32 {
			if _, ok := m.Memory().Grow(uint32((size - have + 1<<16 - 1) >> 16)); ok {
				s[0] = 1
				return
			}
		}
	}
}

// swallow discards what the solver prints.
func swallow(_ context.Context, m api.Module, s []uint64) {
	vectors, n, total := uint32(s[1]), uint32(s[2]), uint32(0)
	for k := range n {
		size, _ := m.Memory().ReadUint32Le(vectors + 8*k + 4)
		total += size
	}
	put(m, s[3], total)
	s[0] = 0
}

// put writes a number to the address that the program gave.
func put(m api.Module, at uint64, x uint32) {
	if !m.Memory().WriteUint32Le(uint32(at), x) {
		panic("the solver asked for an answer outside its memory")
	}
}

// seat returns a module that puts the host's callback into the solver's function table, where
// the solver can call it. Its one function, seat, returns the index. Source: WebAssembly core
// specification 2.0, chapter 5.
func seat() []byte {
	name := func(s string) string { return string(rune(len(s))) + s }
	section := func(id byte, body string) string { return string(rune(id)) + name(body) }
	return []byte("\x00asm\x01\x00\x00\x00" +
		section(1, "\x02\x60\x05\x7f\x7f\x7f\x7f\x7f\x00\x60\x00\x01\x7f") + // types: the callback's; seat's
		section(2, "\x02"+name(callbackName)+name(callbackName)+"\x00\x00"+ // import the callback,
			name(guestName)+name(functionTable)+"\x01\x70\x00\x01") + // and the table
		section(3, "\x01\x01") + // one function of the second type,
		section(7, "\x01"+name("seat")+"\x00\x01") + // exported,
		section(9, "\x01\x03\x00\x01\x00") + // may refer to the callback:
		section(10, "\x01\x09\x00\xd2\x00\x41\x01\xfc\x0f\x00\x0b")) // ref.func 0, i32.const 1, table.grow 0
}
