package stock

import (
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"strings"
)

// Code is the code on a lot's label: four characters and a check character. A lot keeps its
// code for life and no code is used twice. The check character reveals every single wrong
// character and every swap of two: the sum of i times the i-th character's number (i from 1 to
// 5) is divisible by 23.
type Code string

// signs are the characters of a code, chosen so that no two look alike in handwriting.
const signs = "23456789ACEFHKMNPRTUWXY"

const (
	codeSigns = 5
	modulus   = len(signs)
	codes     = modulus * modulus * modulus * modulus // the most lots that a book can hold
)

// lookAlikes maps characters that no code contains to those that may be meant.
var lookAlikes = map[rune]string{
	'0': "CU", 'O': "CU", 'Q': "CU", 'D': "CU", '1': "7T", 'I': "7T", 'L': "7T", 'J': "7U",
	'B': "83", 'G': "6C", 'S': "5", 'Z': "2", 'V': "UY",
}

// ParseCode reads a typed code; lower case and spaces are allowed. It refuses a wrong
// character and a wrong check character, and says which codes may be meant; it never corrects
// a code by itself.
func ParseCode(typed string) (Code, error) {
	s := plainCode(typed)
	if len([]rune(s)) != codeSigns {
		return "", fmt.Errorf("%q is not a lot's code; a code has %d characters, like MRMM5", typed, codeSigns)
	}
	for _, r := range s {
		if !strings.ContainsRune(signs, r) {
			return "", fmt.Errorf("%q contains %q, which no code contains%s", typed, string(r), meant(s))
		}
	}
	if checksum(s) != 0 {
		return "", fmt.Errorf("%q is not a lot's code: its check character does not match, so a character is wrong or two are swapped; read the label again", typed)
	}
	return Code(s), nil
}

func plainCode(typed string) string {
	return strings.ToUpper(strings.Map(func(r rune) rune {
		if r == ' ' || r == '\t' || r == '\u00a0' {
			return -1
		}
		return r
	}, typed))
}

// meant says which codes may be meant by the look-alikes in s.
func meant(s string) string {
	found := []string{""}
	for _, r := range s {
		choice := string(r)
		if !strings.ContainsRune(signs, r) {
			choice = lookAlikes[r]
		}
		var longer []string
		for _, f := range found {
			for _, c := range choice {
				longer = append(longer, f+string(c))
			}
		}
		found = longer
	}
	var fit []string
	for _, f := range found {
		if checksum(f) == 0 {
			fit = append(fit, f)
		}
	}
	if len(fit) == 0 {
		return "; read the label again"
	}
	return "; is " + strings.Join(fit, " or ") + " meant?"
}

func checksum(s string) int {
	sum := 0
	for i := range len(s) {
		sum += (i + 1) * strings.IndexByte(signs, s[i])
	}
	return sum % modulus
}

// codeOf returns the n-th code, n from 0 to codes-1.
func codeOf(n int) Code {
	var s [codeSigns]byte
	sum := 0
	for i := range codeSigns - 1 {
		d := n % modulus
		n /= modulus
		s[i] = signs[d]
		sum += (i + 1) * d
	}
	// 5·d ≡ -sum (mod 23), and the inverse of 5 is 14, since 5·14 = 70 = 3·23 + 1.
	s[codeSigns-1] = signs[(modulus-sum%modulus)%modulus*14%modulus]
	return Code(s[:])
}

// number is the inverse of codeOf.
func (c Code) number() int {
	n := 0
	for i := codeSigns - 2; i >= 0; i-- {
		n = n*modulus + strings.IndexByte(signs, c[i])
	}
	return n
}

// drawCode draws a random code for a lot, seeded by the lot's id, so that the same entries
// always give the same codes. taken tells which codes are in use.
func drawCode(lot LotID, taken func(Code) bool) Code {
	chance := rand.NewPCG(binary.BigEndian.Uint64(lot.Entry[:8]), binary.BigEndian.Uint64(lot.Entry[8:])+uint64(lot.Nth)*0x9e3779b97f4a7c15)
	for {
		if c := codeOf(int(chance.Uint64() % uint64(codes))); !taken(c) {
			return c
		}
	}
}
