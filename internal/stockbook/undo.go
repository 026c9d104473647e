package stockbook

import (
	"fmt"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/stock"
)

// PuttingRight is what an entry that puts another right says.
type PuttingRight struct {
	Target stock.ID       `json:"target"`
	Body   jsontext.Value `json:"body"`
}

func ReadPutRight(e stock.Entry) (p PuttingRight, err error) {
	if err = json.Unmarshal(e.Body, &p); err != nil {
		err = fmt.Errorf("the entry %s can't be read: %w", e.ID, err)
	}
	return p, err
}

// UndoNamed is Undo of an entry named by its id as text; empty is the last that counts.
func (s *Book) UndoNamed(entry string) (undone, by stock.Entry, err error) {
	var id stock.ID
	if entry != "" {
		if id, err = stock.ParseID(entry); err != nil {
			return undone, by, err
		}
	}
	return s.Undo(id)
}
