package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// pages is the program serving pages, as a process of its own.
type pages struct {
	t       *testing.T
	cmd     *exec.Cmd
	address string
	errs    bytes.Buffer
}

// program is this program, as the tests' scripts have it.
const program = "eyeup"

// start starts the program and reads the one line that it prints when it is ready.
func start(t *testing.T, file string, args ...string) *pages {
	t.Helper()
	p := &pages{t: t, cmd: exec.Command(file, append(args, "--no-browser", "--listen", "127.0.0.1:0")...)}
	out, err := p.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	p.cmd.Stderr = &p.errs
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.cmd.Process.Kill() }) // where the test has not stopped it
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatalf("no line: %v; %s", err, p.errs.String())
	}
	if _, err := fmt.Sscanf(line, "eyeup is at %s", &p.address); err != nil {
		t.Fatalf("the line is %q", line)
	}
	return p
}

// stop sends the signal and waits for a clean end.
func (p *pages) stop() {
	p.t.Helper()
	if err := p.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		p.t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- p.cmd.Wait() }()
	select {
	case err := <-ended:
		if err != nil {
			p.t.Errorf("it ended with %v: %s", err, p.errs.String())
		}
	case <-time.After(30 * time.Second):
		p.t.Error("it does not end")
	}
}

// TestPagesOfTheDemo starts the invented garden, asks for every page of the contract, and
// stops it.
func TestPagesOfTheDemo(t *testing.T) {
	p := start(t, program, "demo")
	for _, path := range []string{"", "stock", "rounds", "season", "patch", "places", "weather"} {
		res, err := http.Get(p.address + path)
		if err != nil {
			t.Fatal(err)
		}
		_, _ = io.Copy(io.Discard, res.Body)
		_ = res.Body.Close()
		if res.StatusCode != http.StatusOK {
			t.Errorf("/%s: status %d", path, res.StatusCode)
		}
	}
	p.stop()
}

// TestPagesOfABook writes into a book by a form, stops, and finds the entry in the book;
// a book that is not there yet begins with first use.
func TestPagesOfABook(t *testing.T) {
	file, folder := program, t.TempDir()
	book := filepath.Join(folder, "garden.book")
	if out, err := exec.Command(file, "book", "new", "--demo", book).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	p := start(t, file, "open", book)
	res, err := http.PostForm(p.address+"write/note", map[string][]string{"lot": {firstCode(t, file, book)}, "text": {"seen on a phone"}})
	if err != nil {
		t.Fatal(err)
	}
	_ = res.Body.Close()
	if res.StatusCode != http.StatusOK { // of the page that the form leads to
		t.Errorf("the form: status %d", res.StatusCode)
	}
	p.stop()
	log, err := exec.Command(file, "book", "log", book, "--json").Output()
	if err != nil || !bytes.Contains(log, []byte("seen on a phone")) {
		t.Errorf("the book does not hold what was written: %v", err)
	}
	fresh := filepath.Join(folder, "fresh.book")
	p = start(t, file, "open", fresh)
	res, err = http.Get(p.address)
	if err != nil {
		t.Fatal(err)
	}
	body, _ := io.ReadAll(res.Body)
	_ = res.Body.Close()
	if !bytes.Contains(body, []byte("Step 1 of 3")) {
		t.Errorf("a new book begins with: %.300s", body)
	}
	p.stop()
	if _, err := os.Stat(fresh); err != nil {
		t.Error(err)
	}
}

func firstCode(t *testing.T, file, book string) string {
	t.Helper()
	out, err := exec.Command(file, "book", "lots", book).Output()
	if err != nil {
		t.Fatal(err)
	}
	code, _, _ := strings.Cut(string(out), " ")
	return code
}

// TestSlowClientsAreLeft opens connections that say nothing, or only half a request: they
// are let go, and others are served meanwhile.
func TestSlowClientsAreLeft(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	srv := newServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = io.WriteString(w, "well") }), io.Discard)
	srv.ReadHeaderTimeout = 300 * time.Millisecond // of the five seconds, so that the test is quick
	go func() { ended <- serveUntil(ctx, l, srv) }()
	slow, err := net.Dial("tcp", l.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer slow.Close()
	if _, err := io.WriteString(slow, "GET / HTTP/1.1\r\nHost: 127"); err != nil {
		t.Fatal(err)
	}
	res, err := http.Get("http://" + l.Addr().String())
	if err != nil || res.StatusCode != http.StatusOK {
		t.Errorf("while one is slow another gets %v, %v", res, err)
	}
	_ = slow.SetReadDeadline(time.Now().Add(5 * time.Second))
	if said, err := io.ReadAll(slow); err != nil || bytes.Contains(said, []byte("200")) {
		t.Errorf("the slow one is answered %q, %v", said, err)
	}
	cancel()
	if err := <-ended; err != nil {
		t.Error(err)
	}
}

// TestListenIsGuarded refuses to open the pages to others without being told to.
func TestListenIsGuarded(t *testing.T) {
	for _, address := range []string{"0.0.0.0:0", ":0", "192.168.1.7:8080", "127.0.0.1", "example.org:80"} {
		if l, err := (pagesFlags{Listen: address}).listen(); err == nil {
			_ = l.Close()
			t.Errorf("--listen %s is taken", address)
		}
	}
}
