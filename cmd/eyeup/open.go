package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"syscall"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/page"
	"eyeup/internal/stockbook"
)

// openCommand serves the pages of a garden.
type openCommand struct {
	pagesFlags
	Copies string `placeholder:"FOLDER" type:"existingdir" help:"Put the daily copies of the book into this folder as well, such as one on another disk."`
	Garden string `arg:"" optional:"" help:"The book or the folder of the garden. A book that does not exist is made. If not given, the invented garden."`
}

// pagesFlags are the flags of all commands that serve pages.
type pagesFlags struct {
	Listen    string `placeholder:"ADDRESS" default:"127.0.0.1:0" help:"Address and port of the pages. If not given, 127.0.0.1 and a free port."`
	NoBrowser bool   `help:"Do not open the browser."`
	Share     bool   `help:"Open the pages to your own network. Other devices are then paired with a code."`
}

// Run serves the pages until a signal stops it.
func (c openCommand) Run(d *door) error {
	if c.Garden == "" {
		return demoCommand{c.pagesFlags}.Run(d)
	}
	if info, err := os.Stat(c.Garden); err == nil && info.IsDir() {
		open, err := desk.FolderDesk(os.DirFS(c.Garden), c.Garden, d.today, d.now)
		if err != nil {
			return err
		}
		return errors.Join(c.serve(d, open.Desk, false), open.Close())
	}
	if _, err := os.Stat(c.Garden); errors.Is(err, fs.ErrNotExist) {
		return c.begin(d)
	}
	return bookFile{c.Garden}.useWithCopies(d, c.Copies, func(b *stockbook.Book) error {
		if !desk.IsDescribed(b) {
			return c.serveBeginning(d, b)
		}
		open, err := desk.NewDesk(b, false)
		if err != nil {
			return err
		}
		return c.serve(d, open, false)
	})
}

// begin makes a new book and serves its first use.
func (c openCommand) begin(d *door) error {
	b, err := stockbook.New(c.Garden, d.now)
	if err != nil {
		return err
	}
	fmt.Fprintf(d.errs, "%s is a new book\n", c.Garden)
	return errors.Join(c.serveBeginning(d, b), b.Close())
}

func (c openCommand) serveBeginning(d *door, b *stockbook.Book) error {
	return c.serveHandler(d, func(o page.Options) (http.Handler, error) {
		o.Devices = devicesOf(b.Kept())
		return page.Begin(b, o)
	})
}

// serve serves a garden's pages until a signal comes.
func (c pagesFlags) serve(d *door, open *desk.Desk, demo bool) error {
	defer open.Rest()
	go open.Warm(d.today)
	return c.serveHandler(d, func(o page.Options) (http.Handler, error) {
		o.Demo, o.Gallery = demo, demo
		if kept := open.Kept(); kept != "" {
			o.Devices = devicesOf(kept)
		}
		return page.New(open, o)
	})
}

// devicesOf names the file that keeps the devices paired with a book.
func devicesOf(book string) string { return book + ".devices" }

// serveHandler serves what build builds until a signal comes.
func (c pagesFlags) serveHandler(d *door, build func(page.Options) (http.Handler, error)) error {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	listener, err := c.listen()
	if err != nil {
		return err
	}
	var o page.Options
	if d.today != civil.Of(time.Now()) { // another day was asked for
		o.Today = d.today
	}
	if c.Share {
		o.Share = page.NewShare(time.Now, localNames()...)
	}
	handler, err := build(o)
	if err != nil {
		return err
	}
	address := "http://" + loopback(listener.Addr().(*net.TCPAddr)) + "/"
	fmt.Fprintf(d.out, "eyeup is at %s (stop it with Ctrl-C)\n", address)
	if !c.NoBrowser {
		browse(address, d.errs)
	}
	return serveUntil(ctx, listener, newServer(handler, d.errs))
}

// listen opens the port; to the local network only when the pages are shared.
func (c pagesFlags) listen() (net.Listener, error) {
	host, port, err := net.SplitHostPort(c.Listen)
	if err != nil {
		return nil, fmt.Errorf("--listen %s is not an address with a port (%w). Write it as in 127.0.0.1:8080", c.Listen, err)
	}
	ip := net.ParseIP(host)
	local := host == "localhost" || ip != nil && ip.IsLoopback()
	switch {
	case !local && !c.Share:
		return nil, fmt.Errorf("--listen %s opens the pages to other computers. If you want that, add --share, so that devices must be paired", c.Listen)
	case local && c.Share:
		host = ""
	}
	l, err := net.Listen("tcp", net.JoinHostPort(host, port))
	if err != nil {
		return nil, fmt.Errorf("the pages can't be served at %s: %w. If another eyeup runs there, stop it or choose another port", c.Listen, err)
	}
	return l, nil
}

// loopback is the address by which this machine reaches itself.
func loopback(a *net.TCPAddr) string {
	if a.IP.IsUnspecified() {
		a = &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: a.Port}
	}
	return a.String()
}

// localNames are the addresses by which others in the local network reach this machine.
func localNames() []string {
	var names []string
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	for _, a := range addresses {
		if n, ok := a.(*net.IPNet); ok && n.IP.IsPrivate() {
			names = append(names, n.IP.String())
		}
	}
	return names
}

// newServer answers requests, and drops connections that are too slow.
func newServer(h http.Handler, errs io.Writer) *http.Server {
	return &http.Server{
		Handler: h, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: time.Minute,
		WriteTimeout: 2 * time.Minute, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 32 << 10,
		ErrorLog: slog.NewLogLogger(slog.NewTextHandler(errs, nil), slog.LevelWarn),
	}
}

// serveUntil serves until ctx ends. Requests that are being answered then are finished.
func serveUntil(ctx context.Context, l net.Listener, srv *http.Server) error {
	ended := make(chan error, 1)
	go func() { ended <- srv.Serve(l) }()
	select {
	case err := <-ended:
		return fmt.Errorf("the pages are no longer served: %w. Start the program again", err)
	case <-ctx.Done():
	}
	wait, cancel := context.WithTimeout(context.Background(), 10*time.Second)
	defer cancel()
	if err := srv.Shutdown(wait); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}

// browse opens the browser. If it can't, the address is on the screen.
func browse(address string, errs io.Writer) {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	}
	if err := exec.Command(name, args...).Start(); err != nil {
		fmt.Fprintf(errs, "the browser could not be opened. Type the address into it\n")
	}
}
