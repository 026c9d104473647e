package main

import (
	"flag"
	"fmt"
	"os"
	"time"
)

// toll is the result of a test.
type toll struct {
	acknowledged, lost, doubled int
	wrong                       []string
}

func (t *toll) add(u toll) {
	t.acknowledged += u.acknowledged
	t.lost += u.lost
	t.doubled += u.doubled
	t.wrong = append(t.wrong, u.wrong...)
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
	for _, torment := range []struct {
		name  string
		share float64
		run   func(folder string, until time.Time, seed uint64) toll
	}{
		{"killed while writing", 0.5, kill},
		{"power lost", 0.2, cutPower},
		{"disk full", 0.1, fillDisk},
		{"bytes flipped", 0.05, flipBytes},
		{"four writers", 0.15, fourWriters},
	} {
		begun := time.Now()
		t := torment.run(folder, begun.Add(time.Duration(torment.share*float64(length))), seed)
		fmt.Printf("%s: acknowledged %d, lost %d, doubled %d, %s\n", torment.name, t.acknowledged, t.lost, t.doubled, time.Since(begun).Round(100*time.Millisecond))
		for _, w := range t.wrong {
			fmt.Printf("  wrong: %s\n", w)
		}
		all.add(t)
	}
	fmt.Printf("acknowledged %d, lost %d, doubled %d\n", all.acknowledged, all.lost, all.doubled)
	if all.lost > 0 || all.doubled > 0 || len(all.wrong) > 0 || all.acknowledged == 0 {
		return 1
	}
	return 0
}
