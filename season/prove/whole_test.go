package prove

import (
	"testing"

	"eyeup/season"
	"eyeup/solve"
)

// TestStepsFallIntoUse solves single settings with a step of level, whole plants and all: what is
// found uses the place from its first day to its last, and so has the step in its use. Without
// that being asked for, some are found that never meet the step.
func TestStepsFallIntoUse(t *testing.T) {
	r := provedCrowd(t)
	p, one := r.prover, r.proofs[season.AsEarly]
	p.setWeight(0.6, "")
	used, vain, met := one.steady.used, 0, 0
	for _, h := range p.problem.planner.AllHolds(2) {
		if !h.Steps() {
			continue
		}
		at := season.Steady(one.steady.at.Levels())
		at[2] = h
		whole := p.heatedNear(p.subproblem(at), used, 0)
		for step := range whole.sub.stepDays[p.slotOf(t, 2)] {
			run := dayRanges{whole.on, whole.off, append([][2]int(nil), whole.step...)}
			run[2][p.slotOf(t, 2)] = [2]int{step, step}
			n := p.newNode(whole.sub, run).listAllowed()
			for _, asked := range []bool{false, true} {
				s := p.problem.newProgramme(n.sub, n.allowed, p.weight, n.heatCost)
				if asked && !p.requireSteps(s, n) {
					continue
				}
				answer, err := p.problem.planner.Ports.Solver(t.Context(), &s.Programme, solve.Limits{Nodes: mostWholeNodes}, nil)
				if err != nil {
					t.Fatal(err)
				}
				if answer.Values == nil {
					continue
				}
				switch found := p.solutionOf(n, s, answer.Values); {
				case !asked && found == nil:
					vain++
				case asked && found == nil:
					t.Errorf("%+v, step %d: what is found does not meet the step", h, step)
				case asked:
					met++
				}
			}
		}
	}
	if vain == 0 || met == 0 {
		t.Errorf("%d met the step, %d without being asked did not", met, vain)
	}
}

// slotOf finds the heating of a place among what is on.
func (p *prover) slotOf(t *testing.T, place int) int {
	t.Helper()
	for i, of := range p.problem.columns.HeaterKeys {
		if of == (season.HeaterKey{Place: place}) {
			return i
		}
	}
	t.Fatal("it does not burn")
	return -1
}
