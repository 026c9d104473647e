// Command eyeup keeps tender stock through the winter and works out the season.
//
// This package reads flags, sets the clock and the exit code; internal/desk answers.
// Answers go to standard output, all else to standard error. The exit code is 0 after an
// answer, 1 after a refusal (with the file, the line and what to do next), and 2 if the
// command was not understood.
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

// mostMemory is the memory, in bytes, that the program tries to stay below while it searches
// for the best plans. It may grow beyond that. GOMEMLIMIT sets another limit.
const mostMemory = 512 << 20

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(mostMemory)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, time.Now))
}

// commands is the whole command line; each field is one word of it.
type commands struct {
	JSON  bool   `name:"json" help:"Print the answer as JSON. Run 'eyeup schema' for its fields."`
	Units string `enum:",us,metric" default:"" help:"Units to print: us or metric. If not given, those of the garden."`
	Today string `placeholder:"DATE" help:"Take this day for today, such as 2027-03-15."`

	Season  seasonCommand  `cmd:"" help:"Work out the season and print it. The first line says what to do this week."`
	Patch   patchCommand   `cmd:"" help:"Choose how many plants of each variety go into the patch, and say why."`
	Book    bookCommand    `cmd:"" help:"Keep the stock book: what stands where, and all that happened to it."`
	Check   checkCommand   `cmd:"" help:"Check that a book is undamaged."`
	Restore restoreCommand `cmd:"" help:"Replace a damaged book by its newest undamaged copy."`
	Open    openCommand    `cmd:"" help:"Open a garden in the browser."`
	Demo    demoCommand    `cmd:"" help:"Open an invented garden in the browser, to try things out."`
	Read    readCommand    `cmd:"" help:"Read data from files or from the weather archive."`
	Reckon  reckonCommand  `cmd:"" help:"Do one calculation. No book is needed."`
	Write   writeCommand   `cmd:"" help:"Write labels, lists, a calendar or tables into files."`
	Schema  schemaCommand  `cmd:"" help:"Print the JSON Schema of an answer. Without a name, list the names."`
}

// exit is the panic by which the parser stops after it printed help.
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
		kong.Description("Keep tender stock through the winter and work out the season."),
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

// asked returns the words that were typed, as far as they are a command.
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
