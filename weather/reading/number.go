package reading

import "bytes"

// Number reads a decimal number such as -12.5 from bytes, without exponent, of at most
// fifteen digits, so that the result is the float nearest to what is written. It returns
// false for anything else.
func Number(b []byte) (float64, bool) {
	negative, b := sign(b)
	whole, digits, fraction := 0, 0, -1
	for _, c := range b {
		switch {
		case c == '.' && fraction < 0:
			fraction = digits
		case c >= '0' && c <= '9' && digits < 15:
			whole = whole*10 + int(c-'0')
			digits++
		default:
			return 0, false
		}
	}
	if digits == 0 {
		return 0, false
	}
	value := float64(whole)
	if fraction >= 0 {
		value /= tens[digits-fraction]
	}
	if negative {
		value = -value
	}
	return value, true
}

var tens = [16]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// Whole reads a whole number of at most nine digits, blanks before it allowed.
func Whole(b []byte) (int, bool) {
	for len(b) > 0 && b[0] == ' ' {
		b = b[1:]
	}
	negative, b := sign(b)
	if len(b) == 0 || len(b) > 9 {
		return 0, false
	}
	value := 0
	for _, c := range b {
		if c < '0' || c > '9' {
			return 0, false
		}
		value = value*10 + int(c-'0')
	}
	if negative {
		value = -value
	}
	return value, true
}

func sign(b []byte) (negative bool, rest []byte) {
	if len(b) > 0 && (b[0] == '-' || b[0] == '+') {
		return b[0] == '-', b[1:]
	}
	return false, b
}

// Missing reports whether a field says that nothing was measured: it is empty, or -9999
// with or without decimals.
func Missing(field []byte) bool {
	if len(field) == 0 {
		return true
	}
	rest, coded := bytes.CutPrefix(field, []byte("-9999"))
	return coded && (len(rest) == 0 || rest[0] == '.' && len(bytes.Trim(rest[1:], "0")) == 0)
}
