package main

import (
	"bufio"
	"bytes"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// TestProofIsStopped stops a search for the best plans after the first line that tells how far
// it is: the best so far is printed, and both say that it was stopped.
func TestProofIsStopped(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	cmd := exec.Command(running, "season", "--prove", "--today", "2027-01-15")
	var out bytes.Buffer
	cmd.Stdout = &out
	errs, err := cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	told := bufio.NewReader(errs)
	line, err := told.ReadString('\n')
	if err != nil || !strings.Contains(line, "Ctrl-C stops the search and prints the best so far") {
		t.Fatalf("it says %q first: %v", line, err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	rest, err := io.ReadAll(told)
	if err != nil || !strings.Contains(string(rest), "stopped: these are the best plans") {
		t.Errorf("after it was stopped it says %q: %v", rest, err)
	}
	if err := cmd.Wait(); err != nil {
		t.Errorf("it ends with %v", err)
	}
	if says := strings.Join(strings.Fields(out.String()), " "); !strings.Contains(says, "more time would bring that nearer") {
		t.Errorf("the report does not tell of it: %s", says)
	}
}
