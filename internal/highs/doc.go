// Package highs answers programmes with the HiGHS solver, which is carried inside as a
// WebAssembly program and run without cgo. Engine.Solve is a solve.Solver, and Engine.Relax
// answers without whole numbers; Engine.Hold keeps a programme in the solver's memory, so that it
// can be changed a little and solved again.
//
// The solver's program is pinned by its SHA-256, and what its shortened names stand for was
// read out of the JavaScript that comes with it (generate.go). Open refuses a program that
// is not the one these names were read for.
//
// The solver sees no files, no network and no clock. The time it asks for is a count of how
// often it asked, so that the same programme gives the same answer, and the same progress, on
// every run. To stop it, that clock jumps far ahead: it then meets its time limit and hands
// over the best it has.
//
// The program is compiled for the machine when it is first opened, which takes seconds; given
// a folder of its own, the compiled code is kept there and opening takes a few tenths. Where
// wazero has no compiler (other than amd64 and arm64) it runs far more slowly.
//
// Source: HiGHS 1.15, MIT licence (see LICENSE); Huangfu and Hall, Parallelizing the dual
// revised simplex method, Mathematical Programming Computation 10 (2018), 119-142.
package highs

//go:generate go run generate.go
