package faults

import (
	"hash/fnv"
	"testing"
	"time"
)

// quarters is how many weeks it takes until each fault has been tried.
const quarters = 4

// weekOf counts the weeks since 1970 (each begins on a Thursday), so that the same week tries
// the same faults on every machine.
func weekOf(now time.Time) int { return int(now.Unix() / (7 * 24 * 3600)) }

// quarter returns the faults whose turn it is in that week. A fault keeps its turn when others
// are listed or struck off.
func quarter(all []fault, week int) (due []fault) {
	for _, f := range all {
		h := fnv.New32a()
		_, _ = h.Write([]byte(f.file + "\n" + f.old + "\n" + f.new)) // never fails
		if int(h.Sum32()%quarters) == week%quarters {
			due = append(due, f)
		}
	}
	return due
}

// TestQuarters holds that four weeks on end try every listed fault once, and that none of the
// four is much shorter than the others.
func TestQuarters(t *testing.T) {
	all, tried := lists(t), map[fault]int{}
	begun := weekOf(time.Date(2026, 12, 21, 0, 0, 0, 0, time.UTC))
	for week := begun; week < begun+quarters; week++ {
		due := quarter(all, week)
		if least := len(all) / (2 * quarters); len(due) < least {
			t.Errorf("week %d tries %d of %d faults, want %d at least", week, len(due), len(all), least)
		}
		for _, f := range due {
			tried[f]++
		}
	}
	for _, f := range all {
		if tried[f] != 1 {
			t.Errorf("%s is tried %d times in four weeks, want once", f.at, tried[f])
		}
	}
}
