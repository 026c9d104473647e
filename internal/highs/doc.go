// Package highs solves programmes with the HiGHS solver, embedded as a WebAssembly program and
// run without cgo. Engine.Solve is a solve.Solver, Engine.Relax solves the linear relaxation,
// and Engine.Hold keeps a programme in the solver's memory, so that it can be changed a little
// and solved again.
//
// The solver's program is pinned by its SHA-256. The meaning of its shortened names was read
// from the JavaScript that comes with it (generate.go). Open refuses any other program.
//
// The solver has no files, no network and no clock. Its time is a count of how often it asked
// for it, so that the same programme gives the same answer, and the same progress, on every
// run. To stop it, that clock jumps far ahead: the solver then meets its time limit and
// returns the best it has.
//
// The program is compiled when it is first opened, which takes seconds; with a folder, the
// compiled code is cached there and opening takes a few tenths of a second. Where wazero has
// no compiler (other than amd64 and arm64) it runs far more slowly.
//
// Source: HiGHS 1.15, MIT licence (see LICENSE); Huangfu and Hall, Parallelizing the dual
// revised simplex method, Mathematical Programming Computation 10 (2018), 119-142.
package highs

//go:generate go run generate.go
