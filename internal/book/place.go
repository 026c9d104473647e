package book

import (
	"fmt"
	"path/filepath"
	"strings"
)

// whereItLies warns of folders in which a book comes to harm: those that a program copies
// to other machines behind its back, and those of another machine.
func whereItLies(path string) []string {
	var told []string
	if dir, is := syncing(path); is {
		told = append(told, fmt.Sprintf("the folder %s looks like one that is copied to other machines while the book is written in; that is the likeliest way to lose entries: keep the book elsewhere, and let only its daily copies be carried about", dir))
	}
	if real := throughLink(path); real != "" {
		told = append(told, fmt.Sprintf("%s is a link; the book itself is %s, and its journal and copies lie beside that", path, real))
	}
	if network(filepath.Dir(path)) {
		told = append(told, "the book lies on a disk of another machine; locks and syncs are not to be relied on there: keep it on this one")
	}
	return told
}

// syncing reports whether a folder on the way to path has a name such as folders have
// that are kept the same on several machines.
func syncing(path string) (string, bool) {
	for dir := filepath.Dir(path); ; dir = filepath.Dir(dir) {
		name := strings.ToLower(filepath.Base(dir))
		for _, sign := range []string{"sync", "cloud", "drive", "dropb"} {
			if strings.Contains(name, sign) {
				return dir, true
			}
		}
		if dir == filepath.Dir(dir) {
			return "", false
		}
	}
}

// Warnings tells what is dangerous about where the book lies, what hinders writing in it,
// and what was put right when it was opened.
func (b *Book) Warnings() []string {
	told := whereItLies(b.given)
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.why == nil && b.conn != nil {
		if err := b.stillThere(); err != nil {
			told = append(told, err.Error())
		}
	}
	return append(told, b.notices...)
}
