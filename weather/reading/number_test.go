package reading

import (
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// TestNumberAgainstStrconv checks Number against the standard library's parser.
func TestNumberAgainstStrconv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[-+]?[0-9]{1,8}(\.[0-9]{0,7})?`).Draw(t, "text")
		want, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := Number([]byte(text)); !ok || got != want {
			t.Errorf("Number(%q) = %v, %v; strconv says %v", text, got, ok, want)
		}
	})
	for _, text := range []string{"", "-", ".", "1e5", "1,5", "NaN", "Inf", "0x10", "1 2", "1.2.3", "1234567890123456", "--1"} {
		if v, ok := Number([]byte(text)); ok {
			t.Errorf("Number(%q) = %v; it is no number as written here", text, v)
		}
	}
}

func TestWholeAgainstStrconv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-99999999, 99999999).Draw(t, "n")
		text := "  " + strconv.Itoa(n)
		if got, ok := Whole([]byte(text)); !ok || got != n {
			t.Errorf("Whole(%q) = %v, %v", text, got, ok)
		}
	})
	for _, text := range []string{"", " ", "-", "1.5", "12 ", "12345678901"} {
		if v, ok := Whole([]byte(text)); ok {
			t.Errorf("Whole(%q) = %v", text, v)
		}
	}
}

func TestMissing(t *testing.T) {
	for text, want := range map[string]bool{"": true, "-9999": true, "-9999.0": true, "-9999.00": true, "-999": false, "0": false, "-9999.5": false, "-99990": false} {
		if got := Missing([]byte(text)); got != want {
			t.Errorf("Missing(%q) = %v", text, got)
		}
	}
}

func TestDate(t *testing.T) {
	for text, want := range map[string]string{
		"2027-03-14": "2027-03-14", "2027/03/14": "2027-03-14", "20270314": "2027-03-14",
		"14-mar-2027": "2027-03-14", "08-NOV-1973": "1973-11-08", "2024-02-29": "2024-02-29",
	} {
		if got, err := Date([]byte(text)); err != nil || got.String() != want {
			t.Errorf("Date(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "3/4/2027", "03/04/2027", "2027-02-29", "2027-13-01", "20271301", "2027-3-14", "32-mar-2027", "14-foo-2027", "-1270314", "2027-+1-14", "        "} {
		if got, err := Date([]byte(text)); err == nil {
			t.Errorf("Date(%q) = %v; it should be refused", text, got)
		}
	}
}
