package planting

import (
	"context"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"eyeup/patch"
)

var glpkObjective = regexp.MustCompile(`(?m)^Objective:.* = +(\S+) `)

// GLPK is an independent solver (Debian glpk-utils 5.0). Its optimum lies between the list's bound and the
// list's score, and the list is no further from it than its gap.
func TestPlantingAgreesWithGLPK(t *testing.T) {
	if _, err := exec.LookPath("glpsol"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("glpsol is not installed: apt-get install glpk-utils")
		}
		t.Skip("left out: glpsol is not installed (apt-get install glpk-utils)")
	}
	for _, n := range []int{2, 4, 8} {
		b := manyVarieties(n)
		p, err := b.Programme()
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "list.mps")
		f, err := os.Create(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := p.WriteMPS(f); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		out := file + ".txt"
		if said, err := exec.Command("glpsol", "--freemps", file, "--output", out).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		told, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		found := glpkObjective.FindSubmatch(told)
		if found == nil {
			t.Fatalf("glpsol tells no objective:\n%.400s", told)
		}
		least, err := strconv.ParseFloat(string(found[1]), 64)
		if err != nil {
			t.Fatal(err)
		}
		l, err := patch.Make(context.Background(), b, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		const digits = 1e-6 // glpsol prints nine
		if slack := digits * math.Max(1, least); l.Proof.Places-least > l.Proof.Gap+slack || least < l.Proof.Bound-slack || l.Proof.Places < least-slack {
			t.Errorf("%d varieties: GLPK finds %v, the list counts for %v of at least %v", n, least, l.Proof.Places, l.Proof.Bound)
		}
		t.Logf("%d varieties: %v by GLPK, %v here", n, least, l.Proof.Places)
	}
}
