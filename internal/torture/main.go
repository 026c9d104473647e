package main

import (
	"flag"
	"fmt"
	"os"
	"text/tabwriter"
	"time"
)

// toll is the result of a test.
type toll struct {
	tried, held                 int // times that harm was done, and times that nothing came of it
	acknowledged, lost, doubled int // entries
	wrong                       []string
}

func (t *toll) add(u toll) {
	t.tried += u.tried
	t.held += u.held
	t.acknowledged += u.acknowledged
	t.lost += u.lost
	t.doubled += u.doubled
	t.wrong = append(t.wrong, u.wrong...)
}

// heldIfWhole counts a harm that came to nothing.
func (t *toll) heldIfWhole() {
	if t.lost == 0 && t.doubled == 0 && len(t.wrong) == 0 {
		t.held++
	}
}

func (t *toll) fault(format string, args ...any) {
	t.wrong = append(t.wrong, fmt.Sprintf(format, args...))
}

func main() {
	length := flag.Duration("for", time.Minute, "how long it lasts, in all")
	seed := flag.Uint64("seed", uint64(time.Now().UnixNano()), "where chance begins")
	writer := flag.String("writer", "", "be one of the programs that write: the book's file")
	behind := flag.Duration("behind", 0, "how far this writer's clock is behind")
	flag.Parse()
	if *writer != "" {
		os.Exit(write(*writer, *seed, *behind))
	}
	os.Exit(torture(*length, *seed))
}

// torture gives each torment its share of the time.
func torture(length time.Duration, seed uint64) int {
	folder, err := os.MkdirTemp("", "torture-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(folder)
	fmt.Printf("seed %d\n", seed)
	var all toll
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(table, "\ttried\theld\tacknowledged\tlost\tdoubled\t")
	row := func(name string, t toll) {
		fmt.Fprintf(table, "%s\t%d\t%d\t%d\t%d\t%d\t\n", name, t.tried, t.held, t.acknowledged, t.lost, t.doubled)
	}
	for _, torment := range torments {
		t := torment.run(folder, time.Now().Add(time.Duration(torment.share*float64(length))), seed)
		for _, w := range t.wrong {
			fmt.Printf("%s: wrong: %s\n", torment.name, w)
		}
		row(torment.name, t)
		all.add(t)
	}
	row("all", all)
	_ = table.Flush()
	if all.lost > 0 || all.doubled > 0 || len(all.wrong) > 0 || all.acknowledged == 0 || all.held < all.tried {
		return 1
	}
	return 0
}

// torments are what is done to books, each with its share of the time.
var torments = []struct {
	name  string
	share float64
	run   func(folder string, until time.Time, seed uint64) toll
}{
	{"killed while writing", 0.35, kill},
	{"power lost", 0.2, cutPower},
	{"disk full", 0.1, fillDisk},
	{"bytes flipped", 0.15, flipBytes},
	{"clock jumped", 0.05, jumpClock},
	{"moved, deleted, replaced, linked", 0.05, moveFiles},
	{"four writers", 0.1, fourWriters},
}
