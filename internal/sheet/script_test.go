package sheet

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestRightToLeft holds the order and direction of letters to fribidi, another
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
	said := strings.Split(tool(t, []byte(strings.Join(lines, "\n")+"\n"), "fribidi", "--novisual", "--nobreak", "--vtol", "--levels"), "\n")
	for i, line := range lines {
		order, levels := numbers(said[2*i]), numbers(said[2*i+1])
		var got []int
		for _, part := range fromLeft([]rune(line)) {
			for k := range part.to - part.from {
				at := part.from + k
				if part.fromRight {
					at = part.to - 1 - k
				}
				if got = append(got, at); part.fromRight != (levels[at]%2 == 1) {
					t.Errorf("%q: letter %d is read from the right: %v, fribidi says level %d", line, at, part.fromRight, levels[at])
				}
			}
		}
		if !slices.Equal(got, order) {
			t.Errorf("%q: %v, fribidi says %v", line, got, order)
		}
	}
}

func numbers(line string) []int {
	var all []int
	for _, word := range strings.Fields(line) {
		n, _ := strconv.Atoi(word)
		all = append(all, n)
	}
	return all
}

func FuzzLaid(f *testing.F) {
	for _, name := range append(names, "", " ", "\u202eabc", "\xff", "a\u0301", "🌸", "कर्\u200dषि", "\u200d") {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, text string) {
		runs, left, err := newSetter().laid(text, plain)
		if err != nil || len(left) > 0 {
			return
		}
		kept, _ := readable(text)
		at := make([]bool, len(kept))
		for _, r := range runs {
			for _, p := range r.parts {
				for i := p.from; i < p.to; i++ {
					if at[i] {
						t.Errorf("%q: letter %d is set twice", text, i)
					}
					at[i] = true
				}
			}
		}
		if slices.Contains(at, false) {
			t.Errorf("%q: not all was set: %v", text, at)
		}
	})
}
