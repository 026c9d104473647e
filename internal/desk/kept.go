package desk

import (
	"cmp"
	"sync"
)

// kept holds answers that are reckoned once.
type kept[K comparable, V any] struct {
	mu   sync.Mutex
	most int // answers that are kept; then all are forgotten; 0: as many as usual
	all  map[K]V
}

// How many answers are kept of one sort, and of changed seasons, which are large.
const (
	usualMost   = 400
	mostChanged = 50
)

// get returns the answer to a question, which is reckoned when it is first asked. What
// fails is asked again.
func (k *kept[K, V]) get(key K, reckon func() (V, error)) (V, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if v, known := k.all[key]; known {
		return v, nil
	}
	v, err := reckon()
	if err != nil {
		return v, err
	}
	if k.all == nil || len(k.all) >= cmp.Or(k.most, usualMost) {
		k.all = map[K]V{}
	}
	k.all[key] = v
	return v, nil
}

// forget lets all be reckoned anew.
func (k *kept[K, V]) forget() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.all = nil
}
