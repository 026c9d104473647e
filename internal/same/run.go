package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"
)

// today is the day on which everything is asked that names no other.
const today = "2026-11-16"

// ended names the part of an answer that tells of a command that ended as it should not.
const ended = "ended otherwise than commands.txt says"

//go:embed commands.txt
var commands string

// garden is one of the gardens both programs are asked about.
type garden struct {
	name, folder string
	demo         bool   // its book is the one that `book new --demo` makes
	code, room   string // a lot of the folder, and a warm room
	bookCode     string // a lot of the book, where that is not made of the folder
	weather      string // a packed record that becomes the folder's weather.csv
}

// answers holds, for each command, its parts by name: what it printed, and each file it wrote.
type answers map[string]map[string][]byte

// names returns the commands in order.
func (a answers) names() []string { return slices.Sorted(maps.Keys(a)) }

// task is one line of commands.txt, to be run in a copy of a folder.
type task struct {
	name, line, base string
}

// runAll asks the program everything whose name matches.
func runAll(program string, gardens []garden, which *regexp.Regexp) (answers, error) {
	program, err := filepath.Abs(program)
	if err != nil {
		return nil, err
	}
	root, err := os.MkdirTemp("", "same")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(root)
	all, err := tasks(program, root, gardens)
	if err != nil {
		return nil, err
	}
	var (
		found  = answers{}
		faults []error
		lock   sync.Mutex
		wait   sync.WaitGroup
		next   = make(chan task)
	)
	for n := range runtime.NumCPU() {
		wait.Go(func() {
			for t := range next {
				parts, err := t.run(program, filepath.Join(root, fmt.Sprint("run", n)))
				lock.Lock()
				found[t.name], faults = parts, append(faults, err)
				lock.Unlock()
			}
		})
	}
	for _, t := range all {
		if which.MatchString(t.name) {
			next <- t
		}
	}
	close(next)
	wait.Wait()
	return found, errors.Join(faults...)
}

// tasks reads commands.txt, and lays out the folders its lines are run in.
func tasks(program, root string, gardens []garden) ([]task, error) {
	var all []task
	for i, g := range gardens {
		base := filepath.Join(root, g.name)
		if err := g.layOut(program, base); err != nil {
			return nil, err
		}
		for _, line := range section("each garden") {
			code := g.code
			if g.bookCode != "" && strings.Contains(line, "garden.book") {
				code = g.bookCode
			}
			line = strings.NewReplacer("CODE", code, "ROOM", "'"+g.room+"'").Replace(line)
			all = append(all, task{g.name + ": " + line, line, base})
		}
		if i > 0 {
			continue
		}
		for _, line := range section("once") {
			all = append(all, task{line, line, base})
		}
		out, err := exec.Command(program, "schema").Output()
		if err != nil {
			return nil, err
		}
		for name := range strings.Lines(string(out)) {
			line := "schema " + strings.TrimSpace(name)
			all = append(all, task{line, line, base})
		}
	}
	return all, nil
}

// section returns the lines under a heading of commands.txt.
func section(heading string) (lines []string) {
	on := false
	for line := range strings.Lines(commands) {
		line = strings.TrimSpace(line)
		switch {
		case line == "" || line[0] == '#':
		case line[0] == '[':
			on = line == "["+heading+"]"
		case on:
			lines = append(lines, line)
		}
	}
	return lines
}

// layOut makes the folder that commands about the garden are run in: the garden as a folder
// and as a book, what is read in, and an empty "out".
func (g garden) layOut(program, base string) error {
	for name, from := range map[string]fs.FS{"garden": os.DirFS(g.folder), "input": inputs()} {
		if err := os.CopyFS(filepath.Join(base, name), from); err != nil {
			return err
		}
	}
	table := filepath.Join(base, "input", "weather.csv")
	err := errors.Join(os.WriteFile(table, madeUp(), 0o644), os.Mkdir(filepath.Join(base, "out"), 0o755))
	if g.weather != "" {
		err = errors.Join(err, unpack(g.weather, filepath.Join(base, "garden", "weather.csv")))
	}
	if err != nil {
		return err
	}
	args := []string{"--today", today, "book", "new", "garden.book", "--folder", "garden"}
	if g.demo {
		args = []string{"--today", today, "book", "new", "garden.book", "--demo"}
	}
	make := exec.Command(program, args...)
	make.Dir = base
	if out, err := make.CombinedOutput(); err != nil {
		return fmt.Errorf("the book of the %s garden could not be made: %w\n%s", g.name, err, out)
	}
	return nil
}

// run runs the task in dir and gathers what it printed and wrote.
func (t task) run(program, dir string) (map[string][]byte, error) {
	if err := errors.Join(os.RemoveAll(dir), os.CopyFS(dir, os.DirFS(t.base))); err != nil {
		return nil, err
	}
	line, refused := strings.CutPrefix(t.line, "! ")
	parts := map[string][]byte{}
	for i, command := range strings.Split(line, " ; ") {
		command, file, fed := strings.Cut(command, " < ")
		args := []string{"--json"}
		if !strings.HasPrefix(command, "--today") {
			args = append(args, "--today", today)
		}
		run := exec.Command(program, append(args, words(command)...)...)
		var out, errs bytes.Buffer
		run.Dir, run.Stdout, run.Stderr = dir, &out, &errs
		if fed {
			in, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				return nil, err
			}
			run.Stdin = bytes.NewReader(in)
		}
		if err := run.Run(); (err != nil) != refused {
			parts[fmt.Sprintf("%d %s", i+1, ended)] = errs.Bytes()
		}
		parts[fmt.Sprintf("%d printed.jsonl", i+1)] = out.Bytes()
		if refused {
			parts[fmt.Sprintf("%d refusal", i+1)] = errs.Bytes()
		}
	}
	err := gather(filepath.Join(dir, "out"), parts)
	for name, data := range parts { // the folder is another each time
		parts[name] = bytes.ReplaceAll(data, []byte(dir+string(filepath.Separator)), nil)
	}
	return parts, err
}

// gather adds the files of a folder to parts, but for books, which are asked about instead.
func gather(dir string, parts map[string][]byte) error {
	return fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.Contains(name, ".book") {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		parts["out/"+name] = data
		return err
	})
}

// words parts a line at blanks, but not within single quotes.
func words(line string) (all []string) {
	for i, piece := range strings.Split(line, "'") {
		if i%2 == 1 {
			all = append(all, piece)
			continue
		}
		all = append(all, strings.Fields(piece)...)
	}
	return all
}
