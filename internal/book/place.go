package book

import (
	"fmt"
	"path/filepath"
	"strings"
)

// whereItLies warns of folders that endanger a book: those that a program synchronises with
// other machines, and those on a network drive.
func whereItLies(path string) []string {
	var told []string
	if dir, is := syncing(path); is {
		told = append(told, fmt.Sprintf("the folder %s looks like one that is synchronised with other machines while the book is in use, which can lose entries: keep the book elsewhere, and synchronise only its daily copies", dir))
	}
	if real := throughLink(path); real != "" {
		told = append(told, fmt.Sprintf("%s is a link; the book itself is %s, and its journal and copies lie beside that", path, real))
	}
	if network(filepath.Dir(path)) {
		told = append(told, "the book is on a network drive, where locks and syncs are unreliable: keep it on a disk of this machine")
	}
	return told
}

// syncing returns the first folder on the way to path whose name is that of a synchronised
// folder, and whether there is one.
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
