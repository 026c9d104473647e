package stockbook

import (
	"fmt"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/stock"
)

// PuttingRight is the body of a correction, an entry of kind PutRight: which entry it corrects, and the
// body in its place. Body is empty if the correction leaves nothing.
type PuttingRight struct {
	Target stock.ID       `json:"target"`
	Body   jsontext.Value `json:"body"`
}

// ReadPutRight reads the body of a correction.
func ReadPutRight(e stock.Entry) (p PuttingRight, err error) {
	if err = json.Unmarshal(e.Body, &p); err != nil {
		err = fmt.Errorf("the entry %s can't be read: %w", e.ID, err)
	}
	return p, err
}

// UndoNamed is Undo for an id as text. An empty text means the last entry in force.
func (s *Book) UndoNamed(entry string) (undone, by stock.Entry, err error) {
	var id stock.ID
	if entry != "" {
		if id, err = stock.ParseID(entry); err != nil {
			return undone, by, err
		}
	}
	return s.Undo(id)
}
