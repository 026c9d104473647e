package house

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// longStages are the stages that every long run goes through; see tools/long.sh.
var longStages = []string{"faults", "torture", "drawn", "fuzz"}

var (
	longHead = regexp.MustCompile(`^# The long run of (\d{4}-\d\d-\d\d)\n\nRevision: ([0-9a-f]{40})\n\n`)
	longRow  = regexp.MustCompile(`(?m)^\| (\w+) \| ([^|]+) \| (green|red) \| (\d+) \|$`)
)

// TestLongRun holds that the newest report of `make long` is whole, not red, and names a
// revision that this one follows from.
func TestLongRun(t *testing.T) {
	reports, err := filepath.Glob("../../docs/long/*.md")
	if err != nil {
		t.Fatal(err)
	}
	if len(reports) == 0 {
		t.Log("no long run was reported yet; make one by: make long")
		return
	}
	newest := slices.Max(reports)
	text, err := os.ReadFile(newest)
	if err != nil {
		t.Fatal(err)
	}
	revision, err := readLong(strings.TrimSuffix(filepath.Base(newest), ".md"), string(text))
	if err != nil {
		t.Fatalf("%s: %v", newest, err)
	}
	shallow, err := exec.Command("git", "rev-parse", "--is-shallow-repository").Output()
	if err != nil || strings.TrimSpace(string(shallow)) == "true" {
		t.Logf("the history is not here, so revision %s is not looked up", revision)
		return
	}
	if said, err := exec.Command("git", "merge-base", "--is-ancestor", revision, "HEAD").CombinedOutput(); err != nil {
		t.Errorf("%s: revision %s is none that this one follows from (%v) %s", newest, revision, err, said)
	}
}

// readLong returns the revision of a report, or what is wrong with the report.
func readLong(day, text string) (revision string, err error) {
	head := longHead.FindStringSubmatch(text)
	if head == nil || head[1] != day {
		return "", fmt.Errorf("it does not begin with its date, %s, and its revision", day)
	}
	var ran []string
	for _, row := range longRow.FindAllStringSubmatch(text, -1) {
		if row[3] == "red" {
			return "", fmt.Errorf("%s (%s) was red", row[1], row[2])
		}
		ran = append(ran, row[1])
	}
	if !slices.Equal(ran, longStages) {
		return "", fmt.Errorf("it holds the stages %q, want %q", ran, longStages)
	}
	return head[2], nil
}

// TestReadLong holds that reports which are red, short or of no revision are refused.
func TestReadLong(t *testing.T) {
	good := "# The long run of 2027-01-02\n\nRevision: " + strings.Repeat("a1", 20) + "\n\n| stage | what | result | seconds |\n| --- | --- | --- | --- |\n"
	for _, s := range longStages {
		good += "| " + s + " | for 2m | green | 120 |\n"
	}
	if _, err := readLong("2027-01-02", good); err != nil {
		t.Error(err)
	}
	for name, c := range map[string]struct{ old, new string }{
		"red":          {"| torture | for 2m | green", "| torture | for 2m | red"},
		"short":        {"| drawn | for 2m | green | 120 |\n", ""},
		"no revision":  {"Revision: a1", "Revision: "},
		"another date": {"of 2027-01-02", "of 2027-01-03"},
		"ill-formed":   {"| green | 120 |", "| green |"},
	} {
		if _, err := readLong("2027-01-02", strings.Replace(good, c.old, c.new, 1)); err == nil {
			t.Errorf("a report that is %s is taken for good", name)
		}
	}
}
