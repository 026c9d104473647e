package desk

import (
	"cmp"
	"sync"
)

// kept is a cache of answers, each worked out once.
type kept[K comparable, V any] struct {
	mu   sync.Mutex
	most int // size at which the cache is emptied; 0 means usualMost
	all  map[K]V
}

// How many answers are kept of one sort, and of changed seasons, which are large.
const (
	usualMost   = 400
	mostChanged = 50
)

// get returns the answer for a key and works it out the first time. Errors are not kept.
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

// forget empties the cache.
func (k *kept[K, V]) forget() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.all = nil
}
