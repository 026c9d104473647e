package main

import (
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
)

// most is how many differences of one command are printed.
const most = 12

func main() {
	prose := flag.Bool("prose", false, "list the sentences that differ too")
	only := flag.String("only", "", "compare only commands that match this regular expression")
	flag.Parse()
	if flag.NArg() != 2 {
		fmt.Fprintln(os.Stderr, "usage: same [-prose] [-only REGEXP] BEFORE AFTER (two built programs; run it at the root of the repository)")
		os.Exit(2)
	}
	differ, err := compare(flag.Arg(0), flag.Arg(1), *only, *prose)
	if err != nil {
		fmt.Fprintln(os.Stderr, "same:", err)
		os.Exit(2)
	}
	if differ {
		os.Exit(1)
	}
}

// compare runs both programs and prints where they differ. It reports whether they do.
func compare(before, after, only string, prose bool) (bool, error) {
	which, err := regexp.Compile(only)
	if err != nil {
		return false, err
	}
	gardens := []garden{
		{name: "invented", folder: "internal/demo/garden", demo: true, code: "FCXEN", bookCode: "RC7TR", room: "warm room"},
		{name: "example", folder: "internal/opendata/data/example", code: "MRMM5", room: "back room",
			weather: "internal/opendata/data/daily/USC00179151_waterville-me_and_niles-mi.csv.zst"},
	}
	old, err := remembered(before, gardens, which)
	if err != nil {
		return false, err
	}
	young, err := runAll(after, gardens, which)
	if err != nil {
		return false, err
	}
	return report(old, young, prose), nil
}

// report prints what differs, command by command, and reports whether anything does.
func report(old, young answers, prose bool) bool {
	names := old.names()
	for _, name := range young.names() {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	wrong, said, parts := 0, 0, 0
	for _, name := range names {
		var d differences
		d.endings(young[name])
		d.compare(old[name], young[name])
		parts += len(old[name])
		wrong += len(d.hard)
		said += len(d.soft)
		d.print(name, prose)
	}
	fmt.Printf("%d commands, %d answers and files: %d differences", len(names), parts, wrong)
	if said > 0 {
		fmt.Printf("; %d sentences differ", said)
	}
	fmt.Println()
	return wrong > 0
}
