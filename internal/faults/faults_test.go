package faults

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// root is the root of the repository.
const root = "../.."

// TestListsAreTrue holds that every listed fault can be planted: its old text stands once
// in its file. It runs always, so that a list does not go stale unseen.
func TestListsAreTrue(t *testing.T) {
	for _, f := range lists(t) {
		text, err := os.ReadFile(filepath.Join(root, f.file))
		if err != nil {
			t.Errorf("%s: %v", f.at, err)
			continue
		}
		if n := strings.Count(string(text), f.old); n != 1 {
			t.Errorf("%s: %q stands %d times in %s, want once", f.at, f.old, n, f.file)
		}
	}
}

func TestPlantedFaultsTurnRed(t *testing.T) {
	all := lists(t)
	switch os.Getenv("EYEUP_FAULTS") {
	case "all":
	case "1":
		week := weekOf(time.Now())
		all = quarter(all, week)
		t.Logf("the quarter of week %d: %d faults; EYEUP_FAULTS=all tries all", week, len(all))
	default:
		t.Skip("left out: takes minutes; set EYEUP_FAULTS=1 for a quarter of them, or all")
	}
	if !t.Run("without a fault", func(t *testing.T) { mustBeGreen(t, all) }) {
		return
	}
	for _, f := range all {
		t.Run(f.at, func(t *testing.T) {
			t.Parallel()
			if _, err := exec.LookPath("node"); err != nil && strings.HasPrefix(f.test, "internal/crosscheck") && os.Getenv("CI") != "true" {
				t.Skip("left out: node is not installed")
			}
			said, err := test(f.test, "-overlay="+plant(t, f))
			switch {
			case err == nil:
				t.Errorf("%s: %q for %q in %s goes unseen by the tests of %s", f.at, f.new, f.old, f.file, f.test)
			case !strings.Contains(said, "--- FAIL") && !strings.Contains(said, "panic:"):
				t.Errorf("%s: the fault was not tried: %s", f.at, said)
			}
		})
	}
}

// mustBeGreen runs the tests without any fault: red must come from the fault alone.
func mustBeGreen(t *testing.T, all []fault) {
	t.Helper()
	tried := map[string]bool{}
	for _, f := range all {
		if tried[f.test] {
			continue
		}
		tried[f.test] = true
		t.Run(f.test, func(t *testing.T) {
			t.Parallel()
			if said, err := test(f.test); err != nil {
				t.Errorf("the tests of %s fail without any fault:\n%s", f.test, said)
			}
		})
	}
}

// plant writes the faulty file to a folder of its own and returns the overlay that puts it
// in place of the true one.
func plant(t *testing.T, f fault) string {
	t.Helper()
	there, err := filepath.Abs(filepath.Join(root, f.file))
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(there)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	faulty := filepath.Join(folder, filepath.Base(there))
	overlay := filepath.Join(folder, "overlay.json")
	replaced, err := json.Marshal(map[string]map[string]string{"Replace": {there: faulty}})
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string][]byte{
		faulty:  []byte(strings.Replace(string(text), f.old, f.new, 1)),
		overlay: replaced,
	} {
		if err := os.WriteFile(name, text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return overlay
}

// test runs the short tests of a package, or the one of them that is named behind it, and
// returns what they said.
func test(named string, flags ...string) (string, error) {
	room, one, _ := strings.Cut(named, " ")
	args := append([]string{"test", "-short", "-failfast", "-count=1", "-vet=off"}, flags...)
	if one != "" {
		args = append(args, "-run", "^"+one+"$")
	}
	args = append(args, "./"+room)
	if drawsAtRandom(room) {
		args = append(args, "-rapid.nofailfile") // or it would leave its failures in the room
	}
	return run(args...)
}

// random remembers which packages use rapid.
var random sync.Map

// drawsAtRandom reports whether the tests of a package use rapid.
func drawsAtRandom(room string) bool {
	if known, ok := random.Load(room); ok {
		return known.(bool)
	}
	imports, err := run("list", "-f", "{{.TestImports}} {{.XTestImports}}", "./"+room)
	draws := err == nil && strings.Contains(imports, "pgregory.net/rapid")
	random.Store(room, draws)
	return draws
}

// run runs the go command at the root of the repository.
func run(args ...string) (string, error) {
	command := exec.Command("go", args...)
	command.Dir = root
	said, err := command.CombinedOutput()
	return string(said), err
}
