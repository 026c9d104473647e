package archive

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"strconv"
	"strings"
	"time"
)

// Limits on resuming a broken connection: attempts without a byte gained, and attempts in all.
const (
	mostTries     = 3
	mostTriesEver = 50
)

// version returns the path of the file that records which version of a file was fetched.
func version(path string) string { return path + ".version" }

// forget removes what a fetch left at path.
func forget(path string) {
	for _, p := range []string{path, version(path)} {
		_ = os.Remove(p) // it may not exist
	}
}

// broken is a failure after which resuming is worthwhile.
type broken struct{ why error }

func (b broken) Error() string { return b.why.Error() }

// fetch downloads a file of the archive to path, resuming a partial download of the same
// version. It refuses a file longer than most bytes.
func (a *Archive) fetch(ctx context.Context, name, path string, most int64) error {
	address, err := a.address(name)
	if err != nil {
		return err
	}
	d := download{archive: a, client: a.client(), name: name, address: address, path: path, most: most}
	defer d.client.CloseIdleConnections()
	for tries, ever := 0, 1; ; tries, ever = tries+1, ever+1 {
		before := d.length()
		err := d.once(ctx)
		var b broken
		switch {
		case err == nil:
			return nil
		case ctx.Err() != nil:
			return fmt.Errorf("fetching %s was interrupted after %d bytes; the next fetch resumes there: %w", name, d.length(), context.Cause(ctx))
		case !errors.As(err, &b):
			return fmt.Errorf("%s: %w", address, err)
		case d.length() > before && ever < mostTriesEver:
			tries = 0
		case tries >= mostTries || ever >= mostTriesEver:
			return fmt.Errorf("%s could not be fetched: %w; try again later, the next fetch resumes after %d bytes", address, b.why, d.length())
		}
	}
}

// download is one file being fetched.
type download struct {
	archive             *Archive
	client              *http.Client
	name, address, path string
	most                int64
}

// length returns how many bytes are at the path.
func (d *download) length() int64 {
	info, err := os.Stat(d.path)
	if err != nil {
		return 0
	}
	return info.Size()
}

// once requests the missing part and stores it.
func (d *download) once(parent context.Context) error {
	ctx, stop := context.WithCancel(parent)
	defer stop()
	silence := time.AfterFunc(d.archive.patience(), stop)
	defer silence.Stop()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, d.address, nil)
	if err != nil {
		return err
	}
	here := d.length()
	known, err := os.ReadFile(version(d.path))
	if err != nil || len(known) == 0 {
		here = 0
	} else {
		request.Header.Set("Range", fmt.Sprintf("bytes=%d-", here))
		request.Header.Set("If-Range", string(known))
	}
	request.Header.Set("Accept-Encoding", "identity") // so that lengths are those of the file
	answer, err := d.client.Do(request)
	if err != nil {
		return broken{err}
	}
	defer answer.Body.Close() //nolint:errcheck // it was only read
	total, err := d.opened(answer, &here)
	if err != nil || total == here {
		return err
	}
	return d.take(ctx, answer.Body, here, total, silence)
}

// opened checks the header of a response, and returns the length of the whole file, -1 if
// unknown. It sets here to the offset at which the response starts.
func (d *download) opened(answer *http.Response, here *int64) (total int64, err error) {
	total = -1
	switch answer.StatusCode {
	case http.StatusOK:
		*here = 0
		if total = answer.ContentLength; total == 0 {
			return 0, errors.New("the file is empty; try again later")
		}
	case http.StatusPartialContent:
		var from int64
		if from, total, err = rangeOf(answer.Header.Get("Content-Range")); err != nil || from != *here {
			forget(d.path)
			return 0, broken{fmt.Errorf("the archive resumed at the wrong place: %q", answer.Header.Get("Content-Range"))}
		}
	case http.StatusRequestedRangeNotSatisfiable:
		// all of it is here, if the archive still has as many bytes of the same version
		_, all, found := strings.Cut(answer.Header.Get("Content-Range"), "bytes */")
		if n, err := strconv.ParseInt(all, 10, 64); found && err == nil && n == *here && *here > 0 {
			d.tell(*here, *here)
			return *here, nil
		}
		forget(d.path)
		return 0, broken{errors.New("the archive's file has become shorter")}
	case http.StatusNotFound:
		return 0, errors.New("the archive has no such file; check the station's id and the archive's address")
	default:
		if answer.StatusCode >= 500 || answer.StatusCode == http.StatusTooManyRequests {
			return 0, broken{fmt.Errorf("the archive answers %s", answer.Status)}
		}
		return 0, fmt.Errorf("the archive answers %s; check its address", answer.Status)
	}
	if total > d.most {
		return 0, fmt.Errorf("the file has %d bytes, more than the limit of %d; check the archive's address", total, d.most)
	}
	if *here == 0 {
		err = d.begin(answer.Header)
	}
	return total, err
}

// begin records the version of a file before its first byte.
func (d *download) begin(h http.Header) error {
	forget(d.path)
	tag := h.Get("ETag")
	if strings.HasPrefix(tag, "W/") || tag == "" {
		tag = h.Get("Last-Modified")
	}
	return os.WriteFile(version(d.path), []byte(tag), 0o644)
}

// take appends what arrives. It checks ctx after every piece, because data already under way
// when ctx ended may still be read.
func (d *download) take(ctx context.Context, body io.Reader, here, total int64, silence *time.Timer) error {
	flags := os.O_CREATE | os.O_WRONLY | os.O_APPEND
	if here == 0 {
		flags |= os.O_TRUNC
	}
	file, err := os.OpenFile(d.path, flags, 0o644)
	if err != nil {
		return err
	}
	defer file.Close() //nolint:errcheck // closed with its error below where all went well
	buffer := make([]byte, 1<<16)
	for {
		n, err := body.Read(buffer)
		silence.Reset(d.archive.patience())
		if here += int64(n); here > d.most {
			return fmt.Errorf("more than %d bytes came; check the archive's address", d.most)
		}
		if _, err := file.Write(buffer[:n]); err != nil {
			return err
		}
		d.tell(here, total)
		switch {
		case ctx.Err() != nil:
			return broken{context.Cause(ctx)}
		case err == io.EOF && (total < 0 || here == total):
			return file.Close()
		case err != nil:
			return broken{fmt.Errorf("the connection broke: %w", err)}
		}
	}
}

func (d *download) tell(done, total int64) {
	if d.archive.Progress != nil {
		d.archive.Progress(Progress{d.name, done, total})
	}
}

// rangeOf reads the range of a partial response, such as "bytes 100-199/200".
func rangeOf(text string) (from, total int64, err error) {
	var last int64
	if _, err = fmt.Sscanf(text, "bytes %d-%d/%d", &from, &last, &total); err != nil || last != total-1 {
		return 0, 0, errors.New("not a range")
	}
	return from, total, nil
}
