package desk

import (
	"errors"
	"testing"
	"time"
)

// TestFreshNeverMakesAnyoneWaitTwice asks while a new answer is being reckoned: the one
// before serves, and says what it rests on.
func TestFreshNeverMakesAnyoneWaitTwice(t *testing.T) {
	var f fresh[int, string]
	go1 := make(chan struct{})
	if _, _, known, _ := f.get(1, 0, func() (string, error) { <-go1; return "one", nil }); known {
		t.Error("an answer is known before it is reckoned")
	}
	close(go1)
	if a, rests, known, err := f.get(1, time.Minute, nil); a != "one" || rests != 1 || !known || err != nil {
		t.Errorf("%q %d %v %v", a, rests, known, err)
	}
	go2 := make(chan struct{})
	two := func() (string, error) { <-go2; return "two", errors.New("why") }
	if a, rests, _, err := f.get(2, 0, two); a != "one" || rests != 1 || err != nil {
		t.Errorf("meanwhile %q %d %v", a, rests, err)
	}
	close(go2)
	if a, rests, _, err := f.get(2, time.Minute, two); a != "two" || rests != 2 || err == nil {
		t.Errorf("then %q %d %v", a, rests, err)
	}
}
