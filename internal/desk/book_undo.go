package desk

import (
	"fmt"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/stock"
)

// puttingRight is what an entry that puts another right says.
type puttingRight struct {
	Target stock.ID       `json:"target"`
	Body   jsontext.Value `json:"body"`
}

func readPutRight(e stock.Entry) (p puttingRight, err error) {
	if err = json.Unmarshal(e.Body, &p); err != nil {
		err = fmt.Errorf("the entry %s can't be read: %w", e.ID, err)
	}
	return p, err
}

// UndoNamed is Undo of an entry named by its id as text; empty is the last that counts.
func (s *StockBook) UndoNamed(entry string) (undone, by stock.Entry, err error) {
	var id stock.ID
	if entry != "" {
		if id, err = stock.ParseID(entry); err != nil {
			return undone, by, err
		}
	}
	return s.Undo(id)
}
