// Command eyeup brings tender stock through the winter and works out the season.
//
// This package is the door: flags, the clock, exit codes. What is asked is answered in
// internal/desk. Answers go to standard output, all else to standard error. It ends with
// 0 when it answered, 1 when it refused (bad input, told with file and line and what to
// do), 2 when the command itself was not understood.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"time"
	_ "time/tzdata" // so that time zones are known on every machine

	"github.com/alecthomas/kong"
)

// mostMemory is what the program tries to stay below, in bytes, while the best plans are looked
// for; where more is in use at once it grows all the same. GOMEMLIMIT sets another.
const mostMemory = 512 << 20

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(mostMemory)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, time.Now))
}

// commands is the whole command line; each field is one word of it.
type commands struct {
	JSON  bool   `name:"json" help:"Answer in JSON; see 'eyeup schema'."`
	Units string `enum:",us,metric" default:"" help:"Show measures in us or metric units (the garden's own if not given)."`
	Today string `placeholder:"DATE" help:"Reckon as if today were this day, year-month-day."`

	Season  seasonCommand  `cmd:"" help:"Work out the season and print it; first line, what to do this week."`
	Patch   patchCommand   `cmd:"" help:"The planting list: how many places each variety gets, and why."`
	Book    bookCommand    `cmd:"" help:"The stock book: what stands where, and all that happened to it."`
	Check   checkCommand   `cmd:"" help:"Is the book whole?"`
	Restore restoreCommand `cmd:"" help:"Put the newest whole copy in the place of a damaged book."`
	Open    openCommand    `cmd:"" help:"This garden, in the browser."`
	Demo    demoCommand    `cmd:"" help:"The invented garden, in the browser."`
	Read    readCommand    `cmd:"" help:"Bring data in: look through it, or fetch it."`
	Reckon  reckonCommand  `cmd:"" help:"One calculation; no book needed."`
	Write   writeCommand   `cmd:"" help:"Take data out: labels, lists, calendar, tables."`
	Schema  schemaCommand  `cmd:"" help:"The JSON Schema of an answer, by name; without a name, the list."`
}

// exit is thrown by the parser when it has printed help and wants to stop.
type exit int

// run is the program without the process around it.
func run(args []string, in io.Reader, out, errs io.Writer, now func() time.Time) (code int) {
	defer func() {
		if r := recover(); r != nil {
			stop, ours := r.(exit)
			if !ours {
				panic(r)
			}
			code = int(stop)
		}
	}()
	var c commands
	parser := kong.Must(&c,
		kong.Name("eyeup"),
		kong.Description("Bring tender stock through the winter and work out the season."),
		kong.Writers(out, errs),
		kong.Exit(func(code int) { panic(exit(code)) }),
		kong.UsageOnError(),
		kong.WithHyphenPrefixedParameters(true), // so that --lon -69.6 and --temp -5C can be typed
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true}),
	)
	if len(args) == 0 {
		args = []string{"--help"}
	}
	chosen, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(errs, "eyeup: %v\n  see: %s --help\n", err, asked(err))
		return 2
	}
	d, err := newDoor(c, in, out, errs, now)
	if err == nil {
		err = chosen.Run(d)
	}
	if err != nil {
		fmt.Fprintf(errs, "eyeup: %v\n", err)
		return 1
	}
	return 0
}

// asked returns the command that was typed, as far as it is one.
func asked(err error) string {
	words := "eyeup"
	var wrong *kong.ParseError
	if !errors.As(err, &wrong) {
		return words
	}
	for _, step := range wrong.Context.Path {
		if step.Command != nil {
			words += " " + step.Command.Name
		}
	}
	return words
}
