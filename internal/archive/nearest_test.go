package archive

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
)

// inventoryLine and stationLine are in the columns of the readme, sections VII and IV.
func inventoryLine(id string, latitude, longitude float64, element string, from, to int) string {
	return fmt.Sprintf("%-11s %8.4f %9.4f %4s %4d %4d\n", id, latitude, longitude, element, from, to)
}

func stationLine(id string, latitude, longitude, elevation float64, name string) string {
	return fmt.Sprintf("%-11s %8.4f %9.4f %6.1f %-2s %-30s %-3s %-3s %-5s\n", id, latitude, longitude, elevation, "ZZ", name, "", "", "")
}

// lists are of Central Park and invented stations about it.
func lists() map[string][]byte {
	var inventory, stations strings.Builder
	for _, s := range []struct {
		id                  string
		latitude, longitude float64
		from, to            int
		elements            string
		name                string
		elevation           float64
	}{
		{park, 40.7789, -73.9692, 1869, 2020, "TMAX TMIN PRCP", "ALDER PARK", 42.7},
		{"ZZ000000001", 40.80, -73.97, 1995, 2020, "TMAX TMIN", "SHORT RECORD", 10},
		{"ZZ000000002", 40.80, -73.97, 1950, 1990, "TMAX TMIN", "ENDED LONG AGO", 10},
		{"ZZ000000003", 40.80, -73.97, 1900, 2020, "TMAX PRCP", "NO LOWS", 10},
		{"ZZ000000004", 41.00, -74.00, 1980, 2019, "TMAX TMIN", "NEXT NEAREST", -999.9},
		{"ZZ000000005", -33.9, 151.2, 1900, 2020, "TMAX TMIN", "FAR AWAY", 39},
	} {
		for e := range strings.FieldsSeq(s.elements) {
			inventory.WriteString(inventoryLine(s.id, s.latitude, s.longitude, e, s.from, s.to))
		}
		stations.WriteString(stationLine(s.id, s.latitude, s.longitude, s.elevation, s.name))
	}
	return map[string][]byte{"/ghcnd-inventory.txt": []byte(inventory.String()), "/ghcnd-stations.txt": []byte(stations.String())}
}

func TestNearest(t *testing.T) {
	s := &stand{files: lists()}
	a := serve(t, s)
	near, err := a.Nearest(context.Background(), 40.80, -73.97, Long, 10)
	if err != nil {
		t.Fatal(err)
	}
	if len(near) != 3 || near[0].ID != park || near[1].ID != "ZZ000000004" || near[2].ID != "ZZ000000005" {
		t.Fatalf("found %v", near)
	}
	n := near[0]
	if n.Name != "ALDER PARK" || n.Elevation != 42.7 || n.From != 1869 || n.To != 2020 || n.Years() != 152 || n.Latitude != 40.7789 {
		t.Errorf("the nearest is %+v", n)
	}
	// 0.0211° of latitude are 2.346 km
	if math.Abs(float64(n.Distance)-2346) > 10 {
		t.Errorf("it lies %.0f m away", float64(n.Distance))
	}
	if !math.IsNaN(float64(near[1].Elevation)) {
		t.Errorf("an elevation of -999.9 m became %v", near[1].Elevation)
	}
	// the lists are kept: looking again brings nothing but word that they are whole
	sent := s.sent.Load()
	if _, err := a.Nearest(context.Background(), -34, 151, Long, 1); err != nil || s.sent.Load() > sent+100 {
		t.Errorf("looking again: %v, %d bytes more", err, s.sent.Load()-sent)
	}
	// until the archive has new ones
	s.versions = "new"
	if _, err := a.Nearest(context.Background(), -34, 151, Long, 1); err != nil || s.sent.Load() < sent+500 {
		t.Errorf("new lists: %v, %d bytes more", err, s.sent.Load()-sent)
	}
	if _, err := a.Nearest(context.Background(), 91, 0, Long, 1); err == nil {
		t.Error("latitude 91 is taken")
	}
	if _, err := a.Nearest(context.Background(), 40, 0, 300, 1); err == nil || !strings.Contains(err.Error(), "fewer years") {
		t.Errorf("300 years: %v", err)
	}
}

// TestDistance uses the length of a degree on a sphere of 6371.0088 km, 111.195 km, and half its girth.
func TestDistance(t *testing.T) {
	for _, c := range []struct{ a, b, c, d, want float64 }{
		{44, -69, 45, -69, 111195}, {0, 179.5, 0, -179.5, 111195}, {60, 0, 60, 1, 55597}, {90, 0, -90, 0, 20015115}, {10, 20, 10, 20, 0},
	} {
		if got := float64(distance(c.a, c.b, c.c, c.d)); math.Abs(got-c.want) > 5 {
			t.Errorf("%v: %.0f m", c, got)
		}
	}
}

func TestDamagedLists(t *testing.T) {
	for name, damage := range map[string]func(map[string][]byte){
		"inventory cut": func(m map[string][]byte) {
			m["/ghcnd-inventory.txt"] = append(m["/ghcnd-inventory.txt"], "USW00094"...)
		},
		"no number": func(m map[string][]byte) {
			m["/ghcnd-inventory.txt"] = bytes.Replace(m["/ghcnd-inventory.txt"], []byte("40.7789"), []byte("north  "), 1)
		},
		"stations cut": func(m map[string][]byte) { m["/ghcnd-stations.txt"] = []byte(park + "\n") },
	} {
		files := lists()
		damage(files)
		a := serve(t, &stand{files: files})
		if _, err := a.Nearest(context.Background(), 40, -74, Long, 1); err == nil || !strings.Contains(err.Error(), "delete the file") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
