package stock

import (
	"bytes"
	"encoding/csv"
	"encoding/hex"
	"strings"
	"testing"
	"time"
)

// Every single wrong sign and every swap of two signs is found, in every code there is
// one in fifty of. This is a property of the sum of i times the i-th sign over a prime.
func TestCheckSignFindsEverySlip(t *testing.T) {
	tried := 0
	for n := 0; n < codes; n += 53 {
		code := codeOf(n)
		if got, err := ParseCode(string(code)); err != nil || got != code || code.number() != n {
			t.Fatalf("%s: %v", code, err)
		}
		for i := range codeSigns {
			for j := i + 1; j < codeSigns; j++ {
				s := []byte(code)
				s[i], s[j] = s[j], s[i]
				if _, err := ParseCode(string(s)); err == nil && string(s) != string(code) {
					t.Fatalf("%s taken for %s", s, code)
				}
			}
			for _, sign := range signs {
				if s := string(code[:i]) + string(sign) + string(code[i+1:]); s != string(code) && checksum(s) == 0 {
					t.Fatalf("%s taken for %s", s, code)
				}
			}
		}
		tried++
	}
	if tried < 5000 {
		t.Errorf("%d codes tried", tried)
	}
}

func TestCodesAreReadAsTyped(t *testing.T) {
	for typed, want := range map[string]string{"mrmm5": "MRMM5", " MR MM 5": "MRMM5"} {
		if got, err := ParseCode(typed); err != nil || string(got) != want {
			t.Errorf("%q: %s, %v", typed, got, err)
		}
	}
	for typed, want := range map[string]string{
		"MRMMS": "is MRMM5 meant?", "RMMM5": "check character does not match", "MRMM": "5 characters", "MRMM5X": "5 characters", "": "5 characters", "MRMM!": "read the label again",
	} {
		if _, err := ParseCode(typed); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", typed, err, want)
		}
	}
}

// The codes of the small garden in plain text, invented beside this program.
func TestCodesOfTheExampleGarden(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader("MRMM5\nPT877\nPNWU7\n75MCU\n64RYH\nW3UHP\nMWUWR\n7U2PW\n43385\n")).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if _, err := ParseCode(r[0]); err != nil {
			t.Error(err)
		}
	}
}

// Source: RFC 9562 appendix A.6, a version 7 UUID: 22 February 2022, 2:22:22 pm, GMT-05:00,
// rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
func TestIDOfTheStandard(t *testing.T) {
	at := time.Date(2022, 2, 22, 14, 22, 22, 0, time.FixedZone("", -5*3600))
	chance, err := hex.DecodeString("0cc318c4dc0c0c07398f")
	if err != nil {
		t.Fatal(err)
	}
	id, err := NewID(at, bytes.NewReader(chance))
	if err != nil || id.String() != "017f22e2-79b0-7cc3-98c4-dc0c0c07398f" {
		t.Errorf("got %s, %v", id, err)
	}
	if again, err := ParseID("017F22E2-79B0-7CC3-98C4-DC0C0C07398F"); err != nil || again != id {
		t.Errorf("read as %s, %v", again, err)
	}
	if _, err := NewID(at, bytes.NewReader(nil)); err == nil {
		t.Error("an id was made without chance")
	}
}

func TestIDsAreRefused(t *testing.T) {
	for _, s := range []string{"", "017f22e2-79b0-7cc3-98c4-dc0c0c07398", "017f22e2x79b0-7cc3-98c4-dc0c0c07398f", "017f22e2-79b0-7cc3-98c4-dc0c0c07398g", "00000000-0000-0000-0000-000000000000"} {
		if _, err := ParseID(s); err == nil {
			t.Errorf("%q was taken for an id", s)
		}
	}
	for _, s := range []string{"017f22e2-79b0-7cc3-98c4-dc0c0c07398f", "017f22e2-79b0-7cc3-98c4-dc0c0c07398f/", "017f22e2-79b0-7cc3-98c4-dc0c0c07398f/01", "017f22e2-79b0-7cc3-98c4-dc0c0c07398f/-1", "017f22e2-79b0-7cc3-98c4-dc0c0c07398f/70000"} {
		if _, err := ParseLotID(s); err == nil {
			t.Errorf("%q was taken for a lot's id", s)
		}
	}
}
