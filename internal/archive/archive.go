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

// Base is the address of the archive.
const Base = "https://www.ncei.noaa.gov/pub/data/ghcn/daily"

// Size limits of files: the lists have about 35 and 11 MB, the longest records about 10 MB.
const (
	mostInventory = 256 << 20
	mostStations  = 64 << 20
	mostRecord    = 64 << 20
)

// Archive is the access to the archive.
type Archive struct {
	Base     string         // address above the files; empty is the constant Base
	Folder   string         // folder in which the lists of stations are kept
	Client   *http.Client   // nil: a client that follows encrypted addresses only
	Progress func(Progress) // called as bytes arrive, and at the end of each file; may be nil
	Patience time.Duration  // how long the archive may stay silent; 0 is a minute
}

// Progress is the state of a download.
type Progress struct {
	Name  string // of the file
	Done  int64  // bytes here already
	Total int64  // total bytes; -1 if unknown
}

// Fetched is the result of fetching a station's record.
type Fetched struct {
	Path   string
	Bytes  int64
	Record *weather.Record
	Low    int // days whose low is known
	High   int // days whose high is known
	Both   int // days with both in order
}

// Fetch downloads the .dly file of a station to path and reads it. An existing file is
// replaced once the new one is complete and read. An interrupted download stays at path with
// ".part" added, and the next one resumes it.
func (a *Archive) Fetch(ctx context.Context, id, path string) (*Fetched, error) {
	if !isStation(id) {
		return nil, fmt.Errorf("%q is not a station of the archive; its id has eleven capital letters and digits, like USW00094728", id)
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
		return nil, fmt.Errorf("it is the record of another station, %s; fetch it again later", records[0].Station.ID)
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

// isStation reports whether id has the form of the archive's stations.
func isStation(id string) bool {
	return len(id) == 11 && strings.Trim(id, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == ""
}

// address returns the address of a file of the archive. Without encryption only this machine's
// own addresses are allowed.
func (a *Archive) address(name string) (string, error) {
	base := a.Base
	if base == "" {
		base = Base
	}
	u, err := url.Parse(base)
	if err != nil || u.Host == "" {
		return "", fmt.Errorf("%q is not the address of an archive; give one like %s", base, Base)
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

// client returns the HTTP client.
func (a *Archive) client() *http.Client {
	if a.Client != nil {
		return a.Client
	}
	transport := http.DefaultTransport.(*http.Transport).Clone()
	transport.ResponseHeaderTimeout = a.patience()
	return &http.Client{Transport: transport, CheckRedirect: func(r *http.Request, via []*http.Request) error {
		if len(via) > 5 {
			return errors.New("the archive redirects without end")
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

// kept returns the path of a list, and makes its folder.
func (a *Archive) kept(name string) (string, error) {
	if a.Folder == "" {
		return "", errors.New("there is no folder for the archive's lists of stations; give one")
	}
	return filepath.Join(a.Folder, name), os.MkdirAll(a.Folder, 0o755)
}
