package main

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"time"

	"eyeup/internal/book"
	"eyeup/stock"
)

// mostKills is how often a writer is killed, if there is time.
const mostKills = 500

// kill starts a program that writes and kills it at a random moment, again and again on
// one book; every id that it had printed must be there, once.
func kill(folder string, until time.Time, seed uint64) (t toll) {
	chance := rand.New(rand.NewPCG(seed, 1))
	path := filepath.Join(folder, "killed.book")
	if !begin(&t, path) {
		return t
	}
	var acknowledged []stock.ID
	kills := 0
	for ; kills < mostKills && time.Now().Before(until); kills++ {
		ids, err := killOnce(path, seed+uint64(kills), time.Duration(chance.IntN(40))*time.Millisecond)
		if err != nil {
			t.fault("kill %d: %v", kills, err)
			return t
		}
		acknowledged = append(acknowledged, ids...)
	}
	t.count(path, acknowledged)
	t.tried = kills
	if t.lost == 0 && t.doubled == 0 && len(t.wrong) == 0 {
		t.held = kills
	}
	return t
}

func begin(t *toll, path string) bool {
	b, err := book.Create(path, book.Options{NoCopies: true})
	if err == nil {
		err = b.Close()
	}
	if err != nil {
		t.fault("%v", err)
	}
	return err == nil
}

// killOnce lets a program write for a while after its first acknowledgement, kills it,
// and returns the ids that it had printed whole.
func killOnce(path string, seed uint64, after time.Duration) ([]stock.ID, error) {
	c, ids, err := startWriter(path, seed, 0)
	if err != nil {
		return nil, err
	}
	defer c.in.Close()
	first := <-ids
	time.Sleep(after)
	if err := c.cmd.Process.Kill(); err != nil {
		return nil, err
	}
	all := []stock.ID{first}
	for id := range ids {
		all = append(all, id)
	}
	_ = c.cmd.Wait() // killed
	return slices.DeleteFunc(all, stock.ID.IsZero), nil
}

// child is a program that writes; closing in ends it in good order.
type child struct {
	cmd *exec.Cmd
	in  io.WriteCloser
}

// startWriter starts a program that writes; the channel ends when it does.
func startWriter(path string, seed uint64, behind time.Duration) (child, <-chan stock.ID, error) {
	self, err := os.Executable()
	if err != nil {
		return child{}, nil, err
	}
	cmd := exec.Command(self, "-writer", path, "-seed", fmt.Sprint(seed), "-behind", behind.String())
	cmd.Stderr = os.Stderr
	in, err := cmd.StdinPipe()
	if err != nil {
		return child{}, nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return child{}, nil, err
	}
	if err := cmd.Start(); err != nil {
		return child{}, nil, err
	}
	ids := make(chan stock.ID, 1<<16)
	go func() {
		defer close(ids)
		lines := bufio.NewScanner(out)
		for lines.Scan() {
			if id, err := stock.ParseID(lines.Text()); err == nil { // the last may be cut off
				ids <- id
			}
		}
	}()
	return child{cmd, in}, ids, nil
}

// count checks a book and looks for each acknowledged entry in it.
func (t *toll) count(path string, acknowledged []stock.ID) {
	t.acknowledged += len(acknowledged)
	held, err := held(path)
	if err != nil {
		t.fault("%s: %v", filepath.Base(path), err)
		t.lost += len(acknowledged)
		return
	}
	for _, id := range acknowledged {
		switch held[id] {
		case 0:
			t.lost++
		case 1:
		default:
			t.doubled++
		}
	}
}

// held checks a book and returns how often each entry is in it.
func held(path string) (map[stock.ID]int, error) {
	r, err := book.Check(path, book.Options{NoCopies: true})
	if err != nil {
		return nil, err
	}
	if !r.Whole() {
		return nil, fmt.Errorf("not whole: %s", r.Wrong[0])
	}
	b, err := book.Open(path, book.Options{NoCopies: true})
	if err != nil {
		return nil, err
	}
	defer b.Close()
	all := map[stock.ID]int{}
	lines, in := io.Pipe()
	go func() { in.CloseWithError(b.WriteLog(in)) }()
	err = book.ReadLines(lines, func(one []book.Line) error {
		for _, l := range one {
			all[l.Entry.ID]++
		}
		return nil
	})
	return all, err
}
