package quantity

import "strings"

// Nearest returns the one of the known words that is most like the word as written, and
// whether it is like enough to be offered: no more than half its signs are wrong. It is
// for words of advice alone; nothing is ever put right by it. Likeness is the number of
// signs to insert, drop or change (Levenshtein's distance), capitals counting as small.
func Nearest(written string, known []string) (string, bool) {
	best, distance := "", -1
	for _, word := range known {
		if d := edits(strings.ToLower(written), strings.ToLower(word)); distance < 0 || d < distance {
			best, distance = word, d
		}
	}
	longer := max(len([]rune(written)), len([]rune(best)))
	return best, distance >= 0 && distance*2 <= longer
}

// edits counts the signs to insert, drop or change to turn a into b.
func edits(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i, r := range from {
		corner := row[0]
		row[0] = i + 1
		for j, q := range to {
			changed := corner
			if r != q {
				changed++
			}
			corner = row[j+1]
			row[j+1] = min(changed, row[j]+1, corner+1)
		}
	}
	return row[len(to)]
}
