package page

import (
	"compress/gzip"
	"net/http"
	"strings"
	"sync"
)

// leastPacked is how long an answer is, in bytes, before packing it is worth the while.
const leastPacked = 2000

var packers = sync.Pool{New: func() any {
	w, err := gzip.NewWriterLevel(nil, gzip.BestSpeed)
	if err != nil {
		panic(err) // the level is one there is
	}
	return w
}}

// writePacked writes an answer with its status, gzipped where the browser takes that: on a
// phone far from the router most of the wait is for bytes.
func writePacked(w http.ResponseWriter, r *http.Request, status int, body []byte) {
	h := w.Header()
	h.Add("Vary", "Accept-Encoding")
	if len(body) < leastPacked || !strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
		w.WriteHeader(status)
		_, _ = w.Write(body) // whoever asked is gone: nothing to be done
		return
	}
	h.Set("Content-Encoding", "gzip")
	w.WriteHeader(status)
	packer := packers.Get().(*gzip.Writer)
	defer packers.Put(packer)
	packer.Reset(w)
	_, _ = packer.Write(body)
	_ = packer.Close()
}
