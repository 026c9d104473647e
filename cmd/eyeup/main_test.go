package main

import (
	"os"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets scripts call the program itself as the command eyeup, whose clock stands still;
// that of eyeup-running runs.
func TestMain(m *testing.M) {
	testscript.Main(m, programs)
}

// programs are what tests may run by name.
var programs = map[string]func(){
	"eyeup": func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, scriptDay)) },
	running: func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, time.Now)) },
}

// running is the program with a clock that runs.
const running = "eyeup-running"

// scriptDay is the day on which every script is run.
func scriptDay() time.Time { return time.Date(2027, 1, 15, 9, 0, 0, 0, time.UTC) }

// TestScripts runs every story of testdata/script: each is a command line and what it answers.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", RequireExplicitExec: true, RequireUniqueNames: true})
}
