package crosscheck

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"sync"
	"testing"
)

// fetch brings the pinned libraries here, once for all tests.
var fetch = sync.OnceValues(func() ([]byte, error) {
	if _, err := os.Stat("node_modules/astronomy-engine"); err == nil {
		if _, err = os.Stat("node_modules/psychrolib"); err == nil {
			return nil, nil
		}
	}
	return exec.Command("npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts").CombinedOutput()
})

// ask runs a script of this folder by node with the question on its standard input, and
// reads its answer.
func ask(t *testing.T, script string, question, answer any) {
	t.Helper()
	for _, program := range []string{"node", "npm"} {
		if _, err := exec.LookPath(program); err != nil {
			leaveOut(t, program+" is not installed")
		}
	}
	if said, err := fetch(); err != nil {
		leaveOut(t, "npm could not fetch the libraries: "+string(said))
	}
	in, err := json.Marshal(question)
	if err != nil {
		t.Fatal(err)
	}
	node := exec.Command("node", script)
	node.Stdin, node.Stderr = bytes.NewReader(in), os.Stderr
	out, err := node.Output()
	if err != nil {
		t.Fatalf("%s: %v", script, err)
	}
	if err := json.Unmarshal(out, answer); err != nil {
		t.Fatalf("%s: %v", script, err)
	}
}

// leaveOut skips the test, and fails it under CI.
func leaveOut(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatal(why)
	}
	t.Skip("left out: " + why)
}

// worst keeps the largest of the differences it is shown, and where it was.
type worst struct {
	by    float64
	where string
}

func (w *worst) show(difference float64, where string) {
	if difference > w.by || difference != difference {
		w.by, w.where = difference, where
	}
}

// hold fails the test when the worst lies beyond the limit, and tells it either way.
func (w *worst) hold(t *testing.T, what string, limit float64) {
	t.Helper()
	if !(w.by <= limit) {
		t.Errorf("%s: apart by up to %.6g at %s, want no more than %g", what, w.by, w.where, limit)
		return
	}
	t.Logf("%s: apart by up to %.6g at %s", what, w.by, w.where)
}
