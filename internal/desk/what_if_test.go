package desk

import (
	"bytes"
	"encoding/json"
	"maps"
	"math/rand/v2"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/odds"
	"eyeup/quantity"
)

// changes are what a grower would have otherwise, one of each sort; n tells one from another.
var changes = map[string]func(n int, lot string) Change{
	"price": func(n int, _ string) Change {
		return Change{HeatPrice: map[string]float64{"propane": 0.1 + 0.001*float64(n)}}
	},
	"count": func(n int, lot string) Change { return Change{Plant: map[string]int{lot: 3 + n%50}} },
	"start": func(n int, lot string) Change {
		return Change{Starts: map[string]civil.Date{lot: civil.MustOn(2027, time.March, 1).AddDays(civil.Days(7 * (n % 12)))}}
	},
	"risk": func(n int, _ string) Change { return Change{Risk: quantity.Share(0.05 + 0.0005*float64(n%800))} },
	"level": func(n int, _ string) Change { // one of the garden's own, at some price
		level := quantity.Fahrenheit(float64(40 + 5*(n%6)))
		return Change{Levels: map[string]*quantity.Temperature{"glass": &level}, HeatPrice: map[string]float64{"propane": 0.1 + 0.001*float64(n)}}
	},
	"another level": func(n int, _ string) Change {
		level := quantity.Celsius(4 + 0.01*float64(n%1500))
		return Change{Levels: map[string]*quantity.Temperature{"glass": &level}}
	},
}

var ofSorts = []string{"price", "count", "start", "risk", "level", "another level"}

// drawnChange is a change of up to three sorts.
func drawnChange(chance *rand.Rand, g *garden.Garden) Change {
	c := Change{HeatPrice: map[string]float64{}, Plant: map[string]int{}, Starts: map[string]civil.Date{}, Levels: map[string]*quantity.Temperature{}}
	lots := wanted(g)
	for range 1 + chance.IntN(3) {
		one := changes[ofSorts[chance.IntN(len(ofSorts))]](chance.IntN(200), lots[chance.IntN(len(lots))])
		c.Risk = max(c.Risk, one.Risk)
		maps.Copy(c.HeatPrice, one.HeatPrice)
		maps.Copy(c.Plant, one.Plant)
		maps.Copy(c.Starts, one.Starts)
		maps.Copy(c.Levels, one.Levels)
	}
	return c
}

// TestChangesAreAnsweredAsIfNew has changes of one garden answered in any order, two at once,
// each out of what those before left to remember: every answer is, to the last byte, the one
// that is worked out from nothing.
func TestChangesAreAnsweredAsIfNew(t *testing.T) {
	today := civil.MustOn(2027, time.January, 20)
	g, err := garden.OpenDemo(today)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:5] // few years: it is quicker, and no less can go wrong
	chance, pairs := odds.Stream(11, "changes"), 12
	if testing.Short() {
		pairs = 3
	}
	for range pairs {
		var wait sync.WaitGroup
		for range 2 {
			c := drawnChange(chance, g)
			changed, err := c.of(g)
			if err != nil {
				t.Fatal(err)
			}
			wait.Go(func() {
				bare := &garden.Garden{Garden: changed.Garden, Record: changed.Record, Sky: changed.Sky, Members: changed.Members, LeftOut: changed.LeftOut, Span: changed.Span}
				got, want := answered(t, changed, today, c), answered(t, bare, today, c)
				if !bytes.Equal(got, want) {
					t.Errorf("%s: answered with what is remembered as %s, from nothing as %s", c, got, want)
				}
			})
		}
		wait.Wait()
	}
}

// answered is the season of a changed garden as JSON.
func answered(t *testing.T, g *garden.Garden, today civil.Date, c Change) []byte {
	a, err := plans.Season(g, nil, today, plans.KeepingTo(c.Starts))
	if err != nil {
		t.Error(err)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Error(err)
	}
	return text
}

// wanted are the codes of the lots that are wanted in the patch.
func wanted(g *garden.Garden) []string {
	var codes []string
	for _, h := range g.Stock {
		if h.Plant > 0 {
			codes = append(codes, h.Code)
		}
	}
	return codes
}
