package archive

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	"eyeup/weather"
	"eyeup/weather/ghcn"
)

// Base is where the archive lies.
const Base = "https://www.ncei.noaa.gov/pub/data/ghcn/daily"

// The most bytes that a file may have: the lists have some 35 and 11 MB, the longest
// records some 10 MB.
const (
	mostInventory = 256 << 20
	mostStations  = 64 << 20
	mostRecord    = 64 << 20
)

// Archive is the archive as it is reached from here.
type Archive struct {
	Base     string         // address above the files; empty is the constant Base
	Folder   string         // where the lists of stations are kept from one time to the next
	Client   *http.Client   // nil is one that follows no address without encryption
	Progress func(Progress) // called as bytes arrive, and at the end of each file; may be nil
	Patience time.Duration  // how long the archive may stay silent; 0 is a minute
}

// Progress tells how far a file has come.
type Progress struct {
	Name  string // of the file
	Done  int64  // bytes here already
	Total int64  // bytes in all; -1 where the archive does not say
}

// Fetched is what came of fetching a station's record.
type Fetched struct {
	Path   string
	Bytes  int64
	Record *weather.Record
	Low    int // days whose low is known
	High   int // days whose high is known
	Both   int // days with both in order
}

// Fetch brings the .dly file of a station to path and reads it. What stands at path is
// replaced once the new file is whole and read. A fetch that was broken off leaves path with
// ".part" added, from which the next goes on.
func (a *Archive) Fetch(ctx context.Context, id, path string) (*Fetched, error) {
	if !isStation(id) {
		return nil, fmt.Errorf("%q is no station of the archive; its identity has eleven capital letters and digits, like USW00094728", id)
	}
	part := path + ".part"
	if err := a.fetch(ctx, "all/"+id+".dly", part, mostRecord); err != nil {
		return nil, err
	}
	f, err := readRecord(part, id)
	if err != nil {
		forget(part)
		return nil, fmt.Errorf("the archive's file of %s can't be read: %w", id, err)
	}
	if err := os.Rename(part, path); err != nil {
		return nil, err
	}
	forget(part)
	f.Path = path
	return f, nil
}

// readRecord reads a .dly file and counts what it holds.
func readRecord(path, id string) (*Fetched, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close() //nolint:errcheck // it was only read
	info, err := file.Stat()
	if err != nil {
		return nil, err
	}
	records, err := ghcn.ReadMonths(file)
	if err != nil {
		return nil, err
	}
	if len(records) != 1 || records[0].Station.ID != id {
		return nil, fmt.Errorf("it holds another station, %s; fetch it again later", records[0].Station.ID)
	}
	f := &Fetched{Bytes: info.Size(), Record: records[0]}
	for _, d := range f.Record.Days {
		if d.Low.IsKnown() {
			f.Low++
		}
		if d.High.IsKnown() {
			f.High++
		}
		if d.HasExtremes() {
			f.Both++
		}
	}
	return f, nil
}

// isStation reports whether id is how the archive calls its stations.
func isStation(id string) bool {
	return len(id) == 11 && strings.Trim(id, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == ""
}

// address returns the address of a file of the archive. Without encryption it takes only
// this machine's own.
func (a *Archive) address(name string) (string, error) {
	base := a.Base
	if base == "" {
		base = Base
	}
	u, err := url.Parse(base)
	if err != nil || u.Host == "" {
		return "", fmt.Errorf("%q is no address of an archive; give one like %s", base, Base)
	}
	if err := isSafe(u); err != nil {
		return "", err
	}
	return u.JoinPath(name).String(), nil
}

func isSafe(u *url.URL) error {
	own := u.Hostname() == "localhost" || u.Hostname() == "127.0.0.1" || u.Hostname() == "::1"
	if u.Scheme == "https" || u.Scheme == "http" && own {
		return nil
	}
	return fmt.Errorf("%s is not encrypted; give an address that begins with https", u)
}

// client returns the client to ask with.
func (a *Archive) client() *http.Client {
	if a.Client != nil {
		return a.Client
	}
	transport := http.DefaultTransport.(*http.Transport).Clone()
	transport.ResponseHeaderTimeout = a.patience()
	return &http.Client{Transport: transport, CheckRedirect: func(r *http.Request, via []*http.Request) error {
		if len(via) > 5 {
			return errors.New("the archive sends from one address to another without end")
		}
		return isSafe(r.URL)
	}}
}

func (a *Archive) patience() time.Duration {
	if a.Patience > 0 {
		return a.Patience
	}
	return time.Minute
}

// kept returns where a list is kept, and makes the folder for it.
func (a *Archive) kept(name string) (string, error) {
	if a.Folder == "" {
		return "", errors.New("the archive has no folder to keep its lists of stations in; name one")
	}
	return filepath.Join(a.Folder, name), os.MkdirAll(a.Folder, 0o755)
}
