package stock

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// Source: RFC 8785 section 3.2.2, the sample and its canonical form. Its long numbers are
// shortened by the form, which is why Canonical itself refuses them.
func TestCanonicalFormOfTheStandard(t *testing.T) {
	const sample = `{
		"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
		"string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
		"literals": [null, true, false]
	}`
	const want = `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`
	got, err := canonicalize([]byte(sample))
	if err != nil || string(got) != want {
		t.Errorf("got %s, %v\nwant %s", got, err, want)
	}
	if _, err := Canonical([]byte(sample)); err == nil || !strings.Contains(err.Error(), "17 digits") {
		t.Errorf("a number that would lose digits was let through: %v", err)
	}
}

// Source: RFC 8785 section 3.2.3: members are sorted by their UTF-16 code units.
func TestCanonicalOrderOfTheStandard(t *testing.T) {
	const sample = `{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}`
	got, err := Canonical([]byte(sample))
	if err != nil {
		t.Fatal(err)
	}
	at := -1
	for _, value := range []string{"Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"} {
		next := strings.Index(string(got), value)
		if next <= at {
			t.Errorf("%q stands too early in %s", value, got)
		}
		at = next
	}
}

// Source: RFC 8785 appendix B, IEEE 754 numbers and how they are written.
func TestCanonicalNumbersOfTheStandard(t *testing.T) {
	for bits, want := range map[uint64]string{
		0x0000000000000000: "0", 0x8000000000000000: "0", 0x0000000000000001: "5e-324", 0x8000000000000001: "-5e-324",
		0x7fefffffffffffff: "1.7976931348623157e+308", 0x4340000000000000: "9007199254740992", 0xc340000000000000: "-9007199254740992",
		0x4430000000000000: "295147905179352830000", 0x44b52d02c7e14af5: "9.999999999999997e+22", 0x44b52d02c7e14af6: "1e+23",
		0x44b52d02c7e14af7: "1.0000000000000001e+23", 0x444b1ae4d6e2ef4e: "999999999999999700000", 0x444b1ae4d6e2ef4f: "999999999999999900000",
		0x444b1ae4d6e2ef50: "1e+21", 0x3eb0c6f7a0b5ed8c: "9.999999999999997e-7", 0x3eb0c6f7a0b5ed8d: "0.000001",
		0x41b3de4355555553: "333333333.3333332", 0x41b3de4355555554: "333333333.33333325", 0x41b3de4355555555: "333333333.3333333",
		0x41b3de4355555556: "333333333.3333334", 0x41b3de4355555557: "333333333.33333343", 0xbecbf647612f3696: "-0.0000033333333333333333",
		0x43143ff3c1cb0959: "1424953923781206.2",
	} {
		written := strconv.FormatFloat(math.Float64frombits(bits), 'e', -1, 64)
		if got, err := canonicalize([]byte(written)); err != nil || string(got) != want {
			t.Errorf("%016x: got %s, %v, want %s", bits, got, err, want)
		}
	}
}

func TestCanonicalRefuses(t *testing.T) {
	for value, want := range map[string]string{
		`{"lot":1,"lot":2}`:          `"lot" is given twice`,
		`{"n":12345678901234567890}`: "20 digits",
		`{"n":1`:                     "not JSON",
		"{\"n\":\"\xff\"}":           "not JSON",
	} {
		if _, err := Canonical([]byte(value)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %q", value, err, want)
		}
	}
	for _, value := range []string{`{"n":"12345678901234567890"}`, `{"n":0.00000000000000012}`, `[1234567890,1234567890]`} {
		if _, err := Canonical([]byte(value)); err != nil {
			t.Errorf("%s: %v", value, err)
		}
	}
}
