package plans

import (
	"bytes"
	"context"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
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
	g, err := garden.OpenDemo(provedOn)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:12]
	brief := g.Brief(provedOn)
	a, err := Prove(context.Background(), g, nil, provedOn, nil)
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

// BenchmarkProve proves the season of the invented garden, plans and price of early, with the
// solver's compiled code at hand; BenchmarkProveTenfold one with ten times the lots and room.
func BenchmarkProve(b *testing.B)        { benchmarkProve(b, 1) }
func BenchmarkProveTenfold(b *testing.B) { benchmarkProve(b, 10) }

func benchmarkProve(b *testing.B, times int) {
	g, err := garden.OpenDemo(provedOn)
	if err != nil {
		b.Fatal(err)
	}
	lots := g.Stock
	for i := 1; i < times; i++ {
		for _, h := range lots {
			h.Code += string(rune('a' + i))
			h.Variety.Name += string(rune('a' + i))
			g.Stock = append(g.Stock, h)
		}
	}
	for i := range g.Places {
		g.Places[i].Bench *= quantity.Area(times)
	}
	for b.Loop() {
		if _, err := Prove(context.Background(), g, nil, provedOn, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSeasonUnproved works the same season out without proof.
func BenchmarkSeasonUnproved(b *testing.B) {
	g, err := garden.OpenDemo(provedOn)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Season(g, nil, provedOn); err != nil {
			b.Fatal(err)
		}
	}
}
