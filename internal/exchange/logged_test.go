package exchange

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/place"
)

const logged = "time,temperature (F),humidity (%)\n2026-11-03 14:10,42.6,54\n2026-11-03 15:10,43.0,55\n"

// loggedFolder is the good garden with a logger in its cellar.
func loggedFolder(t *testing.T, key, content string) fstest.MapFS {
	t.Helper()
	garden := strings.Replace(goodGarden, `"store"`, `"store"`+"\n"+key, 1)
	if garden == goodGarden {
		t.Fatal("the good garden has no store to put a logger into")
	}
	files := folder(garden, goodStock).(fstest.MapFS)
	files["cellar.csv"] = &fstest.MapFile{Data: []byte(content)}
	return files
}

// A store takes what its logger recorded; written and read again it still names the file.
func TestLoggedStore(t *testing.T) {
	g := mustRead(t, loggedFolder(t, `logged = "cellar.csv"`, logged))
	at := -1
	for i, p := range g.Places {
		if p.LogFile == "cellar.csv" {
			at = i
		}
	}
	if at < 0 {
		t.Fatal("no place has a logger")
	}
	series := g.Places[at].Model.(place.Steady).Logged
	if series == nil || series.From.String() != "2026-11-03" || len(series.Celsius) != 24 {
		t.Fatalf("got %v", series)
	}
	if files := g.Files(); len(files) != 1 || files[0] != "cellar.csv" {
		t.Errorf("the garden rests on %v", files)
	}
	var text bytes.Buffer
	if err := WriteGarden(g, func(name string) (io.WriteCloser, error) {
		if name == gardenFile {
			return nopCloser{&text}, nil
		}
		return nopCloser{io.Discard}, nil
	}); err != nil || !strings.Contains(text.String(), "logged = 'cellar.csv'") {
		t.Errorf("%v in\n%s", err, text.String())
	}
}

type nopCloser struct{ io.Writer }

func (nopCloser) Close() error { return nil }

func TestLoggedRefusals(t *testing.T) {
	for key, want := range map[string]string{
		`logged = "attic.csv"`:     "the file attic.csv is not in the folder",
		`logged = "../cellar.csv"`: "is not in the folder",
		`logged = "cellar.csv"`:    `cellar.csv, line 2: column "temperature (F)": "wet" is not a number`,
	} {
		_, err := ReadGarden(loggedFolder(t, key, strings.Replace(logged, "42.6", "wet", 1)), "")
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", key, err, want)
		}
	}
}
