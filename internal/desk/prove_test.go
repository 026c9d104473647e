package desk

import (
	"bytes"
	"context"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/season/check"
)

var provedOn = civil.MustOn(2026, time.November, 16)

// TestProvedPlansHold proves the invented garden in twelve of its years and replays every plan
// hour by hour with the plain places.
func TestProvedPlansHold(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	g, err := OpenDemo(provedOn)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:12]
	brief := g.Brief(provedOn)
	a, err := Prove(context.Background(), g, provedOn, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range a.Plans {
		report := check.Plan(brief, p)
		for _, d := range report.Differences {
			t.Errorf("%s: %v", p.Name, d)
		}
		if p.Proof.Settings != season.ItsOwn && p.Proof.Gap > 0.005 {
			t.Errorf("%s: a gap of %.4f", p.Name, p.Proof.Gap)
		}
	}
	saysHowGood(t, a)
	for _, write := range []func(*bytes.Buffer) error{
		func(b *bytes.Buffer) error { return a.WriteProgramme(b, season.AsEarly) },
		func(b *bytes.Buffer) error { return a.WriteCertificate(b, season.AsEarly) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil || b.Len() == 0 {
			t.Errorf("%d bytes, %v", b.Len(), err)
		}
	}
	if err := a.WriteProgramme(&bytes.Buffer{}, "cheapest"); err == nil || !strings.Contains(err.Error(), "cheapest") {
		t.Errorf("the programme of a plan that is not: %v", err)
	}
}

// saysHowGood holds that the page says in plain words how good the plans are.
func saysHowGood(t *testing.T, a *SeasonAnswer) {
	t.Helper()
	var b bytes.Buffer
	a.Print(&b, quantity.US)
	for _, words := range []string{"no plan on these figures is", "The price of early", "no plan without added heat is", "More room: "} {
		if !strings.Contains(b.String(), words) {
			t.Errorf("the page says nothing of %q", words)
		}
	}
	for _, word := range []string{"solver", "dual", "optimal", "MIP", "node", "gap"} {
		if strings.Contains(b.String(), word) {
			t.Errorf("the page says %q", word)
		}
	}
}
