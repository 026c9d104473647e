package prove

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"eyeup/season"
	"eyeup/season/certificate"
)

// TestCertificatesAddUp adds every plan's certificate up again, as it is and as it reads back
// from JSON, and holds its bound below the plan's cost.
func TestCertificatesAddUp(t *testing.T) {
	r := provedCrowd(t)
	for _, plan := range r.Season.Plans {
		c := certificateOf(t, r, plan.Name)
		if err := c.Check(); err != nil {
			t.Errorf("%s: %v", plan.Name, err)
		}
		if c.Bound > c.Cost {
			t.Errorf("%s: a bound of %v above a plan that costs %v", plan.Name, c.Bound, c.Cost)
		}
		if c.Bound < plan.Proof.Bound-0.02*math.Max(1, math.Abs(plan.Proof.Bound)) {
			t.Errorf("%s: prices alone bound it by %v, far below %v", plan.Name, c.Bound, plan.Proof.Bound)
		}
	}
}

// certificateOf returns a certificate as another reader would have it.
func certificateOf(t *testing.T, r *Result, plan string) *certificate.Certificate {
	t.Helper()
	c, err := r.Certificate(plan)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	read := &certificate.Certificate{}
	if err := json.Unmarshal(text, read); err != nil {
		t.Fatal(err)
	}
	return read
}

// TestSpoiltCertificatesDoNotAddUp puts one thing wrong at a time.
func TestSpoiltCertificatesDoNotAddUp(t *testing.T) {
	r := provedCrowd(t)
	for name, spoil := range map[string]func(c *certificate.Certificate){
		"a bound too high":         func(c *certificate.Certificate) { c.Bound += 1 },
		"a leaf's bound too high":  func(c *certificate.Certificate) { c.Leaves[0].Bound += 1e-6 * math.Abs(c.Leaves[0].Bound) },
		"a leaf left out":          func(c *certificate.Certificate) { c.Leaves = c.Leaves[1:] },
		"a leaf twice":             func(c *certificate.Certificate) { c.Leaves = append(c.Leaves, c.Leaves[0]) },
		"prices that are not hers": func(c *certificate.Certificate) { c.Prices[c.Leaves[0].Prices] = map[int]float64{0: 5} },
		"prices that are not":      func(c *certificate.Certificate) { c.Leaves[0].Prices = 99 },
		"a plant more":             func(c *certificate.Certificate) { c.Groups[0].Plants += 5 },
		"a way that gains more": func(c *certificate.Certificate) {
			for l := range c.Levels {
				for i := range c.Levels[l].Ways[0] {
					c.Levels[l].Ways[0][i].Gain += 3
				}
			}
		},
	} {
		c := certificateOf(t, r, season.AsEarly)
		if spoil(c); c.Check() == nil {
			t.Errorf("%s: it adds up", name)
		}
	}
}

func TestNoCertificateWithoutProof(t *testing.T) {
	var r *Result
	if _, err := r.Certificate(season.Usual); err == nil {
		t.Error("a plan that is not proved has a certificate")
	}
	if _, err := r.Programme(season.Usual); err == nil {
		t.Error("a plan that is not proved has a programme")
	}
}

// TestProgrammeUnderGLPK solves the programme of a small season, written as MPS, with GLPK
// (glpsol of Debian's glpk-utils), and holds the plan that is proved to it.
func TestProgrammeUnderGLPK(t *testing.T) {
	glpsol, err := exec.LookPath("glpsol")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("glpsol is not installed; apt-get install glpk-utils")
		}
		t.Skip("glpsol is not installed; apt-get install glpk-utils")
	}
	r := provedCrowd(t)
	p, err := r.Programme(season.NoHeat)
	if err != nil {
		t.Fatal(err)
	}
	var mps bytes.Buffer
	if err := p.WriteMPS(&mps); err != nil {
		t.Fatal(err)
	}
	in, out := filepath.Join(t.TempDir(), "season.mps"), filepath.Join(t.TempDir(), "answer.txt")
	if err := os.WriteFile(in, mps.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if told, err := exec.Command(glpsol, "--freemps", in, "--mipgap", "0.0001", "--tmlim", "60", "--write", out).CombinedOutput(); err != nil {
		t.Fatalf("glpsol: %v\n%s", err, told)
	}
	other, one := glpkCost(t, out), r.proofs[season.NoHeat]
	if other < one.bound-1e-6*math.Abs(other) {
		t.Errorf("GLPK finds a plan that costs %v, below the bound of %v", other, one.bound)
	}
	if mine := r.prover.costAt(one); math.Abs(mine-other) > TargetGap*r.prover.scale(one.best) {
		t.Errorf("GLPK finds a plan that costs %v, here %v", other, mine)
	}
}

// glpkCost reads the cost of the answer that glpsol has written: "s mip rows columns state cost".
func glpkCost(t *testing.T, name string) float64 {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		if words := strings.Fields(line); len(words) == 6 && words[0] == "s" && words[1] == "mip" {
			cost, err := strconv.ParseFloat(words[5], 64)
			if err != nil {
				t.Fatal(err)
			}
			return cost
		}
	}
	t.Fatalf("glpsol wrote no answer:\n%s", text)
	return 0
}
