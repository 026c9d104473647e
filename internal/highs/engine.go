package highs

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	_ "embed"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync"

	"eyeup/solve"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/experimental"
)

//go:embed highs.wasm.gz
var packed []byte

// pages is the most memory a solve may take, in pages of 64 KiB: 448 MiB. A programme that
// needs more is stopped with the best answer so far.
const pages = 448 << 20 >> 16

// Engine is the solver's program, compiled and ready. It may be used by several goroutines at
// once; each solve has its own memory.
type Engine struct {
	pages   uint32 // the most memory of a solve
	runtime wazero.Runtime
	cache   wazero.CompilationCache // nil without a folder
	program wazero.CompiledModule
	seat    wazero.CompiledModule

	door sync.Mutex
	idle []*guest // idle guests, ready for the next programme
}

// Open compiles the solver's program, or loads the compiled code from folder, where it also
// stores it; an empty folder disables this cache. Damaged compiled code is discarded and made
// again. It refuses a program other than the expected one, and a folder that can't be written.
// folder must be used for nothing else.
func Open(ctx context.Context, folder string) (*Engine, error) {
	program, err := unpack(packed)
	if err != nil {
		return nil, err
	}
	e, err := open(ctx, folder, program, pages)
	if err == nil || folder == "" || ctx.Err() != nil {
		return e, err
	}
	kept, _ := filepath.Glob(filepath.Join(folder, "wazero-*")) // the pattern is well formed
	for _, old := range kept {
		if err := os.RemoveAll(old); err != nil {
			return nil, fmt.Errorf("remove the solver's damaged compiled code: %w; empty the folder %s yourself", err, folder)
		}
	}
	return open(ctx, folder, program, pages)
}

func open(ctx context.Context, folder string, program []byte, pages uint32) (*Engine, error) {
	e := &Engine{pages: pages}
	config := wazero.NewRuntimeConfig().WithMemoryLimitPages(pages)
	if folder != "" {
		cache, err := wazero.NewCompilationCacheWithDir(folder)
		if err != nil {
			return nil, fmt.Errorf("store the solver's compiled code in %s: %w; give a folder that can be written", folder, err)
		}
		e.cache, config = cache, config.WithCompilationCache(cache)
	}
	e.runtime = wazero.NewRuntimeWithConfig(ctx, config)
	if err := e.compile(ctx, program); err != nil {
		_ = e.Close()
		return nil, err
	}
	return e, nil
}

// compile prepares the program and its host functions.
func (e *Engine) compile(ctx context.Context, program []byte) (err error) {
	ctx = experimental.WithCompilationWorkers(ctx, runtime.GOMAXPROCS(0))
	if e.program, err = e.runtime.CompileModule(ctx, program); err != nil {
		return fmt.Errorf("compile the solver: %w", err)
	}
	if err := known(e.program); err != nil {
		return err
	}
	if err := e.host(ctx); err != nil {
		return err
	}
	e.seat, err = e.runtime.CompileModule(ctx, seat())
	return err
}

// Close frees the engine's memory, including idle guests. No Held may be used afterwards.
func (e *Engine) Close() error {
	ctx := context.Background()
	err := e.runtime.Close(ctx)
	if e.cache != nil {
		if kept := e.cache.Close(ctx); err == nil {
			err = kept
		}
	}
	return err
}

// Solve solves one programme; it is a solve.Solver. When ctx ends it returns the best so far,
// without an error.
func (e *Engine) Solve(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
	if err := solve.Ready(p, limits, start); err != nil {
		return solve.Answer{}, err
	}
	h, err := e.Hold(ctx, p)
	if err != nil {
		return solve.Answer{}, err
	}
	defer h.Close()
	return h.Solve(ctx, limits, start)
}

// Relax solves the linear relaxation of one programme, with its dual prices. When ctx ends it
// returns the best so far, without an error.
func (e *Engine) Relax(ctx context.Context, p *solve.Programme) (solve.Relaxation, error) {
	h, err := e.Hold(ctx, p)
	if err != nil {
		return solve.Relaxation{}, err
	}
	defer h.Close()
	return h.Relax(ctx, solve.Limits{})
}

// unpack returns the solver's program, and refuses any but the one that names.go was read for.
func unpack(packed []byte) ([]byte, error) {
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, fmt.Errorf("unpack the solver: %w; build the program again", err)
	}
	program, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("unpack the solver: %w; build the program again", err)
	}
	if sum := fmt.Sprintf("%x", sha256.Sum256(program)); sum != wasmSum {
		return nil, fmt.Errorf("the solver's program has the SHA-256 %s, not %s of release %s; run go generate", sum, wasmSum, release)
	}
	return program, nil
}

// known checks that the program imports only known functions and exports all that are called
// here.
func known(program wazero.CompiledModule) error {
	for _, f := range program.ImportedFunctions() {
		if _, name, _ := f.Import(); imports[name] == "" {
			return fmt.Errorf("the solver asks for %q, which is not among the names of release %s; run go generate", name, release)
		}
	}
	has := program.ExportedFunctions()
	for long, short := range exports {
		if has[short] == nil {
			return fmt.Errorf("the solver has no %s (%s), unlike release %s; run go generate", long, short, release)
		}
	}
	if has[constructors] == nil {
		return fmt.Errorf("the solver has no constructors (%s), unlike release %s; run go generate", constructors, release)
	}
	return nil
}
