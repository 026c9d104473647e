package reading

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestFieldsAgainstCSV checks Fields against what encoding/csv writes (RFC 4180).
func TestFieldsAgainstCSV(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.StringMatching(`[a-z0-9.,"-]{0,6}`), 1, 8).Draw(t, "fields")
		var text strings.Builder
		w := csv.NewWriter(&text)
		if err := w.Write(want); err != nil {
			t.Fatal(err)
		}
		w.Flush()
		fields, err := Fields(nil, []byte(strings.TrimSuffix(text.String(), "\n")), ',')
		var got []string
		for _, f := range fields {
			got = append(got, string(f))
		}
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%q read as %q, %v", text.String(), got, err)
		}
	})
}

func TestFieldsRefuse(t *testing.T) {
	for _, line := range []string{`a,"b`, `"a"b,c`, `"`} {
		if f, err := Fields(nil, []byte(line), ','); err == nil {
			t.Errorf("%q read as %q", line, f)
		}
	}
}

func TestPlain(t *testing.T) {
	for text, want := range map[string]string{
		" ALDER HILL ": "ALDER HILL", "\x1b[31mHILL\x07": "[31mHILL", "\xc5lborg": "?lborg", "Ålborg": "Ålborg", strings.Repeat("ö", 100): strings.Repeat("ö", 80),
	} {
		if got := Plain([]byte(text)); got != want {
			t.Errorf("Plain(%q) = %q", text, got)
		}
	}
}
