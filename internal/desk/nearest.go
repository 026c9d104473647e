package desk

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"eyeup/internal/reckon"
)

// FetchNearest fetches the nearest long record of the public archive (base is its
// address; empty for its own) for the draft's climate, and returns which station it is.
// This goes out to the network, and nothing else of the pages does.
func (d *Draft) FetchNearest(ctx context.Context, base string) (reckon.NearStation, error) {
	if err := d.CheckSite(); err != nil {
		return reckon.NearStation{}, err
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	folder, err := os.MkdirTemp("", "eyeup-")
	if err != nil {
		return reckon.NearStation{}, err
	}
	defer func() { _ = os.RemoveAll(folder) }() // what is left there does no harm
	if base == "" {
		base = reckon.ArchiveBase
	}
	latitude, _ := strconv.ParseFloat(strings.TrimSpace(d.Latitude), 64) // checked
	longitude, _ := strconv.ParseFloat(strings.TrimSpace(d.Longitude), 64)
	out := filepath.Join(folder, "station.dly")
	a, err := reckon.NearestWeather(ctx, reckon.NearestQuestion{Latitude: latitude, Longitude: longitude, Most: 5, Base: base, Folder: filepath.Join(cache, "eyeup", "archive"), Out: out})
	if err != nil {
		return reckon.NearStation{}, fmt.Errorf("no record could be fetched; type twelve lows and highs, or bring a file: %w", err)
	}
	content, err := os.ReadFile(out)
	if err != nil {
		return reckon.NearStation{}, err
	}
	for _, s := range a.Nearest {
		if s.IsFetched {
			d.File, d.Content, d.Station = s.ID+".dly", content, ""
			return s, nil
		}
	}
	return reckon.NearStation{}, fmt.Errorf("the archive named no station near %s, %s", d.Latitude, d.Longitude)
}
