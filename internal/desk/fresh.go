package desk

import (
	"sync"
	"time"
)

// fresh caches one answer and works it out again, in the background, when its key changes. Until then the
// old answer is served, so only the first call waits.
type fresh[K comparable, V any] struct {
	mu     sync.Mutex
	known  bool // whether there is an answer
	rests  K    // what it rests on
	answer V
	failed error
	done   chan struct{} // closed when it is; nil where nothing is being reckoned
}

// get returns the answer for key. Where that is not worked out yet, it waits for it at most as long as
// wait, then returns the old answer with its key as rests. known is false where there is no answer yet.
func (f *fresh[K, V]) get(key K, wait time.Duration, reckon func() (V, error)) (answer V, rests K, known bool, err error) {
	f.mu.Lock()
	if f.known && f.rests == key {
		defer f.mu.Unlock()
		return f.answer, f.rests, true, f.failed
	}
	if f.done == nil {
		f.done = make(chan struct{})
		go f.run(key, reckon)
	}
	done := f.done
	f.mu.Unlock()
	patience := time.NewTimer(wait)
	defer patience.Stop()
	select {
	case <-done:
	case <-patience.C:
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.answer, f.rests, f.known, f.failed
}

func (f *fresh[K, V]) run(key K, reckon func() (V, error)) {
	answer, err := reckon()
	f.mu.Lock()
	defer f.mu.Unlock()
	f.known, f.rests, f.answer, f.failed = true, key, answer, err
	close(f.done)
	f.done = nil
}

// rest waits until no answer is being worked out.
func (f *fresh[K, V]) rest() {
	f.mu.Lock()
	done := f.done
	f.mu.Unlock()
	if done != nil {
		<-done
	}
}
