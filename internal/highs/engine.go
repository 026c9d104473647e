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

// Engine is the solver's program, compiled and ready. It may be used from several goroutines
// at once; each solve has a memory of its own.
type Engine struct {
	pages   uint32 // the most memory of a solve
	runtime wazero.Runtime
	cache   wazero.CompilationCache // nil without a folder
	program wazero.CompiledModule
	seat    wazero.CompiledModule

	door sync.Mutex
	idle []*guest // that wait for a next programme
}

// Open compiles the solver's program, or takes the compiled code out of folder, where it also
// leaves it for the next time; an empty folder keeps nothing. Compiled code that was spoilt is
// thrown away and made anew. It refuses a program that is not the one expected, and a folder
// that cannot be written. folder is for the compiled code alone.
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
			return nil, fmt.Errorf("throw away the solver's spoilt code: %w; empty %s yourself", err, folder)
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
			return nil, fmt.Errorf("keep the solver's compiled code in %s: %w; name a folder that can be written", folder, err)
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

// compile prepares the program and its host's functions.
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

// Close gives the engine's memory back, that of waiting guests too. Nothing held may be used afterwards.
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

// Solve answers one programme; it is a solve.Solver. When ctx ends it returns what it has,
// and no error.
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

// Relax answers one programme with whole numbers not asked for, and tells the prices of its
// limits. When ctx ends it returns what it has, and no error.
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
		return nil, fmt.Errorf("unpack the solver: %w; build the program anew", err)
	}
	program, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("unpack the solver: %w; build the program anew", err)
	}
	if sum := fmt.Sprintf("%x", sha256.Sum256(program)); sum != wasmSum {
		return nil, fmt.Errorf("the solver's program has the SHA-256 %s, not %s of release %s; run go generate", sum, wasmSum, release)
	}
	return program, nil
}

// known checks that all that the program asks for is understood and that it has all that is
// called here.
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
