package book

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"

	"github.com/go-json-experiment/json"

	"eyeup/stock"
)

// maxPaper is the size limit of a paper before compression, in bytes.
const maxPaper = 256 << 20

// KeepPaper stores a file in the book, such as a weather record, and returns its SHA-256 in
// hexadecimal, by which entries may refer to it. The same content is stored once.
func (b *Book) KeepPaper(content []byte) (string, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.why != nil {
		return "", b.why
	}
	if len(content) > maxPaper {
		return "", fmt.Errorf("a paper of %d MB is too large; the limit is %d MB", len(content)>>20, maxPaper>>20)
	}
	sum := sha256.Sum256(content)
	packed, err := pack(content)
	if err != nil {
		return "", err
	}
	s, _, err := b.conn.Prepare("insert into papers (hash, content) values (?, ?) on conflict do nothing")
	if err != nil {
		return "", plain(err)
	}
	defer s.Close()
	err = errors.Join(s.BindBlob(1, sum[:]), s.BindBlob(2, packed))
	if err == nil {
		err = s.Exec()
	}
	return hex.EncodeToString(sum[:]), plain(err)
}

// Paper returns the file with the given hash, in hexadecimal.
func (b *Book) Paper(name string) ([]byte, error) {
	sum, err := hex.DecodeString(name)
	if err != nil || len(sum) != sha256.Size {
		return nil, fmt.Errorf("%q is not the hash of a paper; write 64 hexadecimal digits", name)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	s, _, err := b.conn.Prepare("select content from papers where hash = ?")
	if err != nil {
		return nil, plain(err)
	}
	defer s.Close()
	if err := s.BindBlob(1, sum); err != nil {
		return nil, err
	}
	if !s.Step() {
		return nil, errors.Join(plain(s.Err()), fmt.Errorf("the book has no paper %s", name))
	}
	content, err := unpack(s.ColumnRawBlob(0))
	if got := sha256.Sum256(content); err != nil || !bytes.Equal(got[:], sum) {
		return nil, fmt.Errorf("the paper %s is damaged; to restore the last copy run: eyeup restore", name)
	}
	return content, nil
}

// Papers lists the hashes of all papers, in order.
func (b *Book) Papers() ([]string, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	s, _, err := b.conn.Prepare("select hash from papers order by hash")
	if err != nil {
		return nil, plain(err)
	}
	defer s.Close()
	var all []string
	for s.Step() {
		all = append(all, hex.EncodeToString(s.ColumnRawBlob(0)))
	}
	return all, plain(s.Err())
}

func pack(content []byte) ([]byte, error) {
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	_, err := w.Write(content)
	err = errors.Join(err, w.Close())
	return out.Bytes(), err
}

func unpack(packed []byte) ([]byte, error) {
	r, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(io.LimitReader(r, maxPaper+1))
}

// Call sets the name of a person's id; an empty name removes it. Names are the only thing in a
// book that can be erased.
func (b *Book) Call(id, name string) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.why != nil {
		return b.why
	}
	if id == "" {
		return errors.New("give the id of the person")
	}
	s, _, err := b.conn.Prepare("insert into people (id, name) values (?, ?) on conflict (id) do update set name = excluded.name")
	if err != nil {
		return plain(err)
	}
	defer s.Close()
	err = errors.Join(s.BindText(1, id), s.BindText(2, name))
	if err == nil {
		err = s.Exec()
	}
	return plain(err)
}

// People returns the names of people by their ids; erased names are empty.
func (b *Book) People() (map[string]string, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	s, _, err := b.conn.Prepare("select id, name from people")
	if err != nil {
		return nil, plain(err)
	}
	defer s.Close()
	all := map[string]string{}
	for s.Step() {
		all[s.ColumnText(0)] = s.ColumnText(1)
	}
	return all, plain(s.Err())
}

// Weather returns the weather file that the book keeps under a name, and whether there is one.
// It is named by an entry: described, what "weather", body {"paper": hash}.
func (b *Book) Weather(name string) (content []byte, named bool, err error) {
	var body []byte
	err = b.View(func(s *stock.Book) error {
		for _, d := range s.Described("weather") {
			if d.Name == name {
				body, named = d.Body, true
			}
		}
		return nil
	})
	if err != nil || !named {
		return nil, false, err
	}
	var paper struct {
		Hash string `json:"paper"`
	}
	if err := json.Unmarshal(body, &paper); err != nil {
		return nil, true, fmt.Errorf("weather %s: %w", name, err)
	}
	content, err = b.Paper(paper.Hash)
	return content, true, err
}
