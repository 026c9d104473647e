package sheet

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// TestRightToLeft holds the order and the joining of letters to fribidi, another
// implementation of Unicode's rules, for lines put together by chance.
func TestRightToLeft(t *testing.T) {
	need(t, "fribidi")
	words := []string{"abc", "Rose", "אבג", "דהו", "12", "3.5", "السلام", "ورد", "پژمرده", "لا", "(דהו)", "(ورد 12)", "(abc)", "[א", "a]", "(", ")", "5%", "$", "1/2", "1-2", "+", "،", ",", "-", "!", "1990", "ז", "x", "«", "»"}
	chance := rand.New(rand.NewPCG(1, 2))
	var lines []string
	for range 3000 {
		var parts []string
		for range 1 + chance.IntN(6) {
			parts = append(parts, words[chance.IntN(len(words))])
		}
		lines = append(lines, strings.Join(parts, " "))
	}
	said := tool(t, []byte(strings.Join(lines, "\n")+"\n"), "fribidi", "--nopad", "--nobreak")
	want := strings.Split(strings.ReplaceAll(said, "\ufeff", ""), "\n") // it fills up after joining two letters to one
	for i, line := range lines {
		kept, _ := readable(line)
		kept, bad := joined(kept)
		if bad != 0 {
			t.Fatalf("%q: no forms of %q", line, bad)
		}
		if got := string(fromLeft(kept)); got != want[i] {
			t.Errorf("%q: %q, fribidi says %q", line, got, want[i])
		}
	}
}

// TestJoining joins by the charts of Unicode: alone, first, middle and last.
func TestJoining(t *testing.T) {
	for word, want := range map[string]string{
		"ب":        "\ufe8f",
		"ببب":      "\ufe91\ufe92\ufe90",
		"با":       "\ufe91\ufe8e",
		"اب":       "\ufe8d\ufe8f", // alef joins nothing that follows
		"لا":       "\ufefb",       // lam with alef is one letter
		"بلا":      "\ufe91\ufefc",
		"ب\u200cب": "\ufe8f\ufe8f", // parted by the writer
	} {
		got, bad := joined([]rune(word))
		if string(got) != want || bad != 0 {
			t.Errorf("%q: %+q, want %+q", word, string(got), want)
		}
	}
}

// TestPointsAreLeftOut leaves vowel points out, as common writing does, and tells.
func TestPointsAreLeftOut(t *testing.T) {
	runs, left, err := laid("שָׁלוֹם مَرْحَبًا", plain)
	if err != nil {
		t.Fatal(err)
	}
	if len(left) != 7 || len(runs) == 0 {
		t.Errorf("left out %+q", left)
	}
}

func FuzzLaid(f *testing.F) {
	for _, name := range append(names, "", " ", "\u202eabc", "\xff", "a\u0301", "🌸", "क") {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, text string) {
		runs, left, err := laid(text, plain)
		if err == nil && len(left) == 0 && len(runs) == 0 && strings.ContainsFunc(text, isArabicLetter) {
			t.Errorf("%q came to nothing, untold", text)
		}
	})
}
