package archive

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"net/http"
	"net/http/httptest"
	"sync/atomic"
	"testing"
	"time"
)

// stand is a server that stands in for the archive: it serves files, breaks connections
// after so many bytes, and counts.
type stand struct {
	files    map[string][]byte
	breaks   int64 // after how many bytes each answer stops; 0 never
	asked    atomic.Int64
	sent     atomic.Int64
	versions string
	broken   bool // answers 503
}

func (s *stand) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	s.asked.Add(1)
	if s.broken {
		http.Error(w, "busy", http.StatusServiceUnavailable)
		return
	}
	b, ok := s.files[r.URL.Path]
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("ETag", fmt.Sprintf(`"%x%s"`, sha256.Sum256(b), s.versions))
	http.ServeContent(&breaking{w, s, 0}, r, "", time.Time{}, bytes.NewReader(b))
}

// breaking is an answer that stops short.
type breaking struct {
	http.ResponseWriter
	stand *stand
	sent  int64
}

func (b *breaking) Write(p []byte) (int, error) {
	if most := b.stand.breaks; most > 0 && b.sent+int64(len(p)) > most {
		b.stand.sent.Add(most - b.sent)
		_, _ = b.ResponseWriter.Write(p[:most-b.sent])
		_ = http.NewResponseController(b.ResponseWriter).Flush()
		panic(http.ErrAbortHandler)
	}
	b.sent += int64(len(p))
	b.stand.sent.Add(int64(len(p))) // before the other side has them and counts
	return b.ResponseWriter.Write(p)
}

func serve(t *testing.T, s *stand) *Archive {
	t.Helper()
	server := httptest.NewServer(s)
	t.Cleanup(server.Close)
	return &Archive{Base: server.URL, Folder: t.TempDir()}
}
