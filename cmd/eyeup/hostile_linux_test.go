package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// What any reader may take, whatever it is given: memory as the system counts it, and time of the
// processor, so that a busy machine changes nothing.
const (
	mostHeld  = 300 << 20
	mostTaken = 10 * time.Second
)

// measured is the program, which leaves in the file that heldIn names what it held at most.
const measured, heldIn = "eyeup-measured", "EYEUP_TEST_HELD"

func init() {
	programs[measured] = func() {
		code := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, scriptDay)
		status, err := os.ReadFile("/proc/self/status")
		if err != nil || os.WriteFile(os.Getenv(heldIn), status, 0o600) != nil {
			code = 99
		}
		os.Exit(code)
	}
}

// heldBy reads the most memory that a program held, in bytes, from what the system told of it.
func heldBy(t *testing.T, file string) int {
	t.Helper()
	status, err := os.ReadFile(file)
	if err != nil {
		t.Fatal("the program was stopped after a minute: ", err)
	}
	_, most, _ := strings.Cut(string(status), "VmHWM:")
	kB, err := strconv.Atoi(strings.Fields(most)[0])
	if err != nil {
		t.Fatal(err)
	}
	return kB << 10
}

// TestHostileFilesAreHeld gives every reader files made to exhaust it. Each is refused, with the
// file named, within the memory and the time that readers have.
func TestHostileFilesAreHeld(t *testing.T) {
	for _, b := range bombs {
		t.Run(b.name, func(t *testing.T) {
			folder := t.TempDir()
			file := filepath.Join(folder, b.file)
			if err := os.WriteFile(file, b.make(), 0o600); err != nil {
				t.Fatal(err)
			}
			args := append([]string{measured}, b.args...)
			for i, a := range args {
				args[i] = strings.ReplaceAll(a, "FILE", file)
				if a == "FOLDER" {
					args[i] = gardenWith(t, folder, b.file)
				}
			}
			var said bytes.Buffer
			ctx, stop := context.WithTimeout(t.Context(), time.Minute)
			defer stop()
			c := exec.CommandContext(ctx, os.Args[0])
			c.Args, c.Stderr, c.Env = args, &said, append(os.Environ(), "GOMEMLIMIT=512MiB", heldIn+"="+filepath.Join(folder, "held"))
			err := c.Run()
			held := heldBy(t, filepath.Join(folder, "held"))
			taken := c.ProcessState.UserTime() + c.ProcessState.SystemTime()
			t.Logf("%d MB, %.1f s: %.200s", held>>20, taken.Seconds(), said.String())
			if held > mostHeld || taken > mostTaken {
				t.Errorf("%d MB and %v; a reader has %d MB and %v", held>>20, taken, mostHeld>>20, mostTaken)
			}
			if b.good != (err == nil) {
				t.Errorf("ended with %v", err)
			}
			if code := c.ProcessState.ExitCode(); err != nil && code != 1 {
				t.Errorf("ended with %d instead of 1", code)
			}
			if !b.good && !strings.Contains(said.String(), b.file) || len(said.String()) > 10000 {
				t.Errorf("refused without the file, or at length: %.300q", said.String())
			}
		})
	}
}

// gardenWith lays the rest of a garden beside a file.
func gardenWith(t *testing.T, folder, but string) string {
	t.Helper()
	for name, content := range map[string]string{"garden.toml": "[garden]\nname = 'A'\n", "stock.csv": "variety,kind,form,count,place\n"} {
		if name == but {
			continue
		}
		if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}
