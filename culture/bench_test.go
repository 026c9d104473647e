package culture

import "testing"

// BenchmarkReadShelf is the time to read all tables, once for each run of the program.
func BenchmarkReadShelf(b *testing.B) {
	for b.Loop() {
		if _, err := readShelf(); err != nil {
			b.Fatal(err)
		}
	}
}
