package desk

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
)

//go:embed gazetteer/places.tsv.gz
var gazetteer []byte

// NamedPlace is a town or village with where it lies, to a hundredth of a degree. Its
// source is GeoNames; see page_gazetteer/NOTICE.
type NamedPlace struct {
	Name, Region, Country string
	Latitude, Longitude   float64 // degrees north and east
}

// String names it so that it can be told from others.
func (p NamedPlace) String() string {
	if p.Region == "" {
		return p.Name + ", " + p.Country
	}
	return p.Name + ", " + p.Region + ", " + p.Country
}

// named is the gazetteer unpacked, a line for each place.
var named = sync.OnceValues(func() (string, error) {
	z, err := gzip.NewReader(bytes.NewReader(gazetteer))
	if err != nil {
		return "", err
	}
	all, err := io.ReadAll(z)
	return string(all), err
})

// mostNamed is how many places are offered.
const mostNamed = 20

// PlacesNamed returns places whose name begins with the first word asked for and whose
// name, region or country holds the others, twenty at most. It refuses fewer than two
// letters.
func PlacesNamed(asked string) ([]NamedPlace, error) {
	words := strings.Fields(strings.ToLower(strings.ReplaceAll(asked, ",", " ")))
	if len(words) == 0 || len(words[0]) < 2 {
		return nil, fmt.Errorf("type at least two letters of the town's name")
	}
	all, err := named()
	if err != nil {
		return nil, err
	}
	var found []NamedPlace
	for line := range strings.Lines(all) {
		low := strings.ToLower(line)
		if !strings.HasPrefix(low, words[0]) || !holdsAll(low, words[1:]) {
			continue
		}
		p, err := readNamed(strings.TrimSuffix(line, "\n"))
		if err != nil {
			return nil, err
		}
		if found = append(found, p); len(found) == mostNamed {
			break
		}
	}
	return found, nil
}

func holdsAll(line string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(line, w) {
			return false
		}
	}
	return true
}

func readNamed(line string) (p NamedPlace, err error) {
	parts := strings.Split(line, "\t")
	if len(parts) != 5 {
		return p, fmt.Errorf("the list of places is damaged at %q", line)
	}
	p.Name, p.Region, p.Country = parts[0], parts[1], parts[2]
	if p.Latitude, err = strconv.ParseFloat(parts[3], 64); err == nil {
		p.Longitude, err = strconv.ParseFloat(parts[4], 64)
	}
	return p, err
}
