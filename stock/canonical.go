package stock

import (
	"errors"
	"fmt"

	"github.com/go-json-experiment/json/jsontext"
)

// Canonical returns the canonical form of a JSON value (RFC 8785): members sorted, no spaces,
// numbers and text in their shortest form. It refuses what that form would change silently:
// duplicate members, text that is not UTF-8, numbers of more than 15 digits.
func Canonical(value []byte) ([]byte, error) {
	if n := longestNumber(value); n > maxDigits {
		return nil, fmt.Errorf("a number of %d digits would lose digits; write it as text", n)
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

// maxDigits is how many decimal digits every 64-bit float keeps (IEEE 754).
const maxDigits = 15

// longestNumber returns the most significant digits of any number in the JSON value, counted
// from its first digit that is not 0, without the exponent. Digits in strings don't count.
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

// plainJSON rewords a JSON error for the grower.
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
