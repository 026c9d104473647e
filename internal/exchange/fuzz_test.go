package exchange

import (
	"errors"
	"strings"
	"testing"
)

// wholesome checks that a folder is read, or refused with a file and words.
func wholesome(t *testing.T, garden, list string) {
	t.Helper()
	g, err := ReadGarden(folder(garden, list), "")
	if err == nil {
		if g == nil {
			t.Error("nothing was read, and nothing was wrong")
		}
		return
	}
	var all Faults
	var one Fault
	switch {
	case errors.As(err, &all):
		one = all[0]
	case !errors.As(err, &one):
		t.Fatalf("refused without a place: %v", err)
	}
	if one.File == "" || one.What == "" || len(strings.Split(err.Error(), "\n")) > 1000 {
		t.Errorf("refused with %q", err)
	}
}

func FuzzGarden(f *testing.F) {
	f.Add(goodGarden)
	f.Add("[[place]]\nname = 'x'\n[place.heater]\n[[place.levels]]\n")
	f.Add("garden.name = 1\n[garden.x]\n[[normals]]\nlow=[{}]")
	f.Add("[figures.dahlia]\na.b.c = [1]\n")
	f.Fuzz(func(t *testing.T, garden string) { wholesome(t, garden, goodStock) })
}

func FuzzStock(f *testing.F) {
	f.Add(goodStock)
	f.Add("variety,kind,form,count,place\n\"a\nb\",dahlia,clump,1,cellar\n")
	f.Fuzz(func(t *testing.T, list string) { wholesome(t, goodGarden, list) })
}
