package stock

import (
	"errors"
	"fmt"

	"github.com/go-json-experiment/json/jsontext"
)

// Canonical returns the one form of a JSON value: members sorted, no spaces, numbers and
// text written the shortest way (RFC 8785). It refuses what that form would change in
// silence: members named twice, text that is not UTF-8, numbers of more than 15 digits.
func Canonical(value []byte) ([]byte, error) {
	if n := longestNumber(value); n > maxDigits {
		return nil, fmt.Errorf("a number of %d digits would lose some; write it as text", n)
	}
	return canonicalize(value)
}

func canonicalize(value []byte) ([]byte, error) {
	v := jsontext.Value(append([]byte(nil), value...))
	if err := v.Canonicalize(); err != nil {
		return nil, plainJSON(err)
	}
	return v, nil
}

// maxDigits is how many digits every 64-bit floating number keeps (IEEE 754).
const maxDigits = 15

// longestNumber returns the most digits that any number of the JSON value is written
// with, from its first that is not 0 and its exponent apart; what stands within text is
// not counted.
func longestNumber(value []byte) int {
	longest, run := 0, 0
	inText := false
	for i := 0; i < len(value); i++ {
		switch c := value[i]; {
		case inText && c == '\\':
			i++
		case c == '"':
			inText, run = !inText, 0
		case inText:
		case c >= '1' && c <= '9', c == '0' && run > 0:
			run++
			longest = max(longest, run)
		case c != '.' && c != '0':
			run = 0
		}
	}
	return longest
}

// plainJSON words a fault of JSON for whoever wrote it.
func plainJSON(err error) error {
	var syntactic *jsontext.SyntacticError
	if errors.As(err, &syntactic) {
		if errors.Is(err, jsontext.ErrDuplicateName) {
			return fmt.Errorf("%q is given twice; give it once", syntactic.JSONPointer.LastToken())
		}
		return fmt.Errorf("this is not JSON, at byte %d: %w", syntactic.ByteOffset+1, syntactic.Err)
	}
	return err
}
