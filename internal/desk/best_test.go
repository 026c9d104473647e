package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/internal/stockbook"
)

// fewYears lays the invented garden open in few of its years.
func fewYears(t *testing.T, today civil.Date) *Desk {
	t.Helper()
	d, err := DemoDesk(today, today.UTC)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := d.Close(); err != nil {
			t.Error(err)
		}
	})
	d.garden.Members = d.garden.Members[:4]
	return d.Desk
}

// found waits for the end of the search about a change.
func found(t *testing.T, d *Desk, c Change) Best {
	t.Helper()
	<-d.best.now.done
	best, known := d.BestOf(provedOn, c)
	if !known || best.Looking || best.Failed != nil || best.Answer == nil || !best.Answer.Proved() {
		t.Fatalf("%s: %v, %+v", c, known, best)
	}
	return best
}

// TestBestIsWhatProveFinds looks for the best plans of a changed season beside the pages: they
// are those of Prove, and the season of every day is served meanwhile.
func TestBestIsWhatProveFinds(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	d, c := fewYears(t, provedOn), Change{Risk: 0.3}
	if err := d.LookForBest(provedOn, c); err != nil {
		t.Fatal(err)
	}
	begun := d.best.now
	if best, known := d.BestOf(provedOn, c); !known || best.Stopped || best.Behind != 0 {
		t.Errorf("begun as %v, %+v", known, best)
	}
	if _, err := d.SeasonWith(provedOn, c); err != nil {
		t.Error(err)
	}
	if err := d.LookForBest(provedOn, c); err != nil || d.best.now != begun {
		t.Errorf("asked for twice it begins anew: %v", err)
	}
	best := found(t, d, c)
	g, err := c.of(d.Garden())
	if err != nil {
		t.Fatal(err)
	}
	want, err := plans.Prove(context.Background(), g, nil, provedOn, nil, plans.Paying)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := jsonOf(t, best.Answer), jsonOf(t, want); best.Stopped || !bytes.Equal(got, want) {
		t.Errorf("stopped %v: beside the pages %s, by itself %s", best.Stopped, got, want)
	}
	if best.Progress.Solves == 0 || best.Progress.Money <= 0 {
		t.Errorf("it says of its progress %+v", best.Progress)
	}
	if _, known := d.BestOf(provedOn, Change{}); known {
		t.Error("what was found for one season is told of another")
	}
}

// TestNonsenseIsNotLookedInto refuses a change that can't be, and begins nothing.
func TestNonsenseIsNotLookedInto(t *testing.T) {
	d := fewYears(t, provedOn)
	if err := d.LookForBest(provedOn, Change{Risk: 2}); err == nil || d.best.now != nil {
		t.Errorf("a risk of 200 %% is looked into: %v", err)
	}
}

func jsonOf(t *testing.T, a *plans.SeasonAnswer) []byte {
	t.Helper()
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestSearchIsStopped stops a search in every way there is: it takes the best so far, and
// says so. It can be begun anew.
func TestSearchIsStopped(t *testing.T) {
	d := fewYears(t, provedOn)
	for what, stop := range map[string]func(){
		"by the grower":        d.StopLooking,
		"by a change":          func() { _, _ = d.SeasonWith(provedOn, Change{HeatPrice: map[string]float64{"propane": 0.2}}) },
		"by the program's end": d.Rest,
		"by another search": func() {
			if err := d.LookForBest(provedOn, Change{Risk: 0.5}); err != nil {
				t.Error(err)
			}
		},
	} {
		if err := d.LookForBest(provedOn, Change{}); err != nil {
			t.Fatal(err)
		}
		s := d.best.now
		if s.tell().Stopped {
			t.Errorf("%s: it begins stopped", what)
		}
		stop()
		<-s.done
		if best := s.tell(); !best.Stopped || best.Looking || best.Failed != nil || !best.Answer.Proved() {
			t.Errorf("%s: %+v", what, best)
		}
	}
}

// TestBestIsBehind writes an entry after the best plans were looked for: they say so.
func TestBestIsBehind(t *testing.T) {
	d := fewYears(t, provedOn)
	if err := d.LookForBest(provedOn, Change{}); err != nil {
		t.Fatal(err)
	}
	d.StopLooking()
	if best := found(t, d, Change{}); best.Behind != 0 {
		t.Errorf("%d behind at once", best.Behind)
	}
	if err := d.Describe("garden", "season", seasonKeys(t, d), provedOn, stockbook.Writer{}); err != nil {
		t.Fatal(err)
	}
	if best := found(t, d, Change{}); best.Behind != 1 {
		t.Errorf("%d behind after an entry", best.Behind)
	}
}

// seasonKeys is what the garden says of its season.
func seasonKeys(t *testing.T, d *Desk) map[string]string {
	t.Helper()
	parts, err := d.Parts()
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, p := range parts {
		if p.Name == "season" {
			for _, f := range p.Fields() {
				said[f.Key] = f.Value
			}
		}
	}
	return said
}
