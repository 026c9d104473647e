package reckon

import (
	"errors"
	"fmt"
	"io"
	"math"

	"eyeup/culture"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/supply"
)

// SowQuestion asks how many seeds to sow to get a number of plants. One of three things is known about the
// seed: its germination, a test of it, or the age of the packet.
type SowQuestion struct {
	Want        int
	Sure        quantity.Share
	Germination quantity.Share // told, or that with which an old packet began; NaN: not known
	Good, Of    int            // a test: so many came up of so many; Of 0 for none
	Kind        string         // empty: not told
	Years       float64        // the packet's age; NaN: not told
	Kept        *quantity.Temperature
	Humidity    quantity.Share // of the air where the packet lay; 0: not known
	Moisture    float64        // of the seed, per cent of the fresh weight; 0: not known
	Why         bool
}

// SowAnswer is how many seeds to sow.
type SowAnswer struct {
	Want        int         `json:"want"`
	Sure        float64     `json:"sure_percent"`
	Germination odds.Amount `json:"germination_percent"`
	Basis       string      `json:"basis" jsonschema_description:"where the germination comes from"`
	Seeds       int         `json:"seeds"`
	Reached     float64     `json:"reached_percent" jsonschema_description:"odds of as many plants as wanted, or more"`
	Kind        string      `json:"kind,omitempty"`
	Keeps       *float64    `json:"keeps_years,omitempty" jsonschema_description:"how long seed of this kind is said to keep"`
	Standard    *float64    `json:"standard_percent,omitempty" jsonschema_description:"least germination for sale in the United States"`
	Notes       []string    `json:"notes"`

	Figures []FigureAnswer `json:"figures,omitempty"`
}

// Sow answers a SowQuestion.
func Sow(q SowQuestion) (*SowAnswer, error) {
	g, err := q.germination()
	if err != nil {
		return nil, err
	}
	s, err := supply.Sow(q.Want, g, q.Sure)
	if errors.Is(err, odds.ErrNever) {
		return nil, fmt.Errorf("so much of this seed may be dead (%.0f to %.0f %% may come up) that no sowing is sure of %d; test twenty seeds or more on damp paper, or buy fresh", 100*g.Share.Low, 100*g.Share.High, q.Want)
	}
	if err != nil {
		return nil, err
	}
	a := &SowAnswer{
		Want: q.Want, Sure: *report.Rounded(q.Sure.Percent(), 3), Germination: report.RoundedAmount(g.Share.Times(100), 1), Basis: g.Basis,
		Seeds: s.Seeds, Reached: *report.Rounded(s.Reached.Percent(), 2), Kind: q.Kind, Notes: []string{},
	}
	a.addKindNotes(q)
	if q.Why {
		names := []string{q.Kind}
		if !math.IsNaN(q.Years) {
			names = append(names, "packet", "fresh seed")
		}
		a.Figures = FigureAnswers(supply.FiguresOf(names...))
	}
	return a, nil
}

func (q SowQuestion) germination() (supply.Germination, error) {
	told, tested, aged := !math.IsNaN(float64(q.Germination)), q.Of != 0, !math.IsNaN(q.Years)
	switch {
	case tested && (told || aged):
		return supply.Germination{}, errors.New("a test says more than the packet; give --tested alone")
	case tested:
		return supply.Tested(q.Good, q.Of)
	case aged && q.Kind == "":
		return supply.Germination{}, errors.New("how seed ages depends on its kind; give --kind beside --age")
	case aged:
		p := supply.Packet{Kind: q.Kind, Years: q.Years, Kept: q.Kept, Humidity: q.Humidity, Moisture: q.Moisture}
		if told {
			p.Began = q.Germination
		}
		return supply.Aged(p)
	case told:
		return supply.Told(q.Germination)
	}
	return supply.Germination{}, errors.New("say what is known of the seed: --germination 85, --tested 17/20, or --kind with --age 3")
}

// manySeeds for each plant are so many that a test costs less than sowing them.
var manySeeds = int(culture.Usual("sow.many"))

// addKindNotes adds what is known about seed of the kind.
func (a *SowAnswer) addKindNotes(q SowQuestion) {
	if keeps := supply.Keeps(q.Kind); !math.IsNaN(keeps.Value) {
		a.Keeps = report.Rounded(keeps.Value, 1)
		if q.Years > keeps.Value {
			a.Notes = append(a.Notes, fmt.Sprintf("Older than the %g years that %s seed is said to keep: test it before you count on it.", keeps.Value, q.Kind))
		}
	}
	if least := supply.Standard(q.Kind); !math.IsNaN(least.Value) {
		a.Standard = report.Rounded(100*least.Value, 1)
		if told := float64(q.Germination); told < least.Value {
			a.Notes = append(a.Notes, fmt.Sprintf("Below %.0f %%, the least at which %s seed may be sold unmarked in the United States (7 CFR 201.31).", 100*least.Value, q.Kind))
		}
	}
	if a.Seeds > manySeeds*a.Want {
		a.Notes = append(a.Notes, "So many for so few plants: the seed may be all but dead. Test twenty or more on damp paper, or buy fresh.")
	}
	switch {
	case q.Of > 0:
		a.Notes = append(a.Notes, fmt.Sprintf("A test of %d seeds leaves much uncertain, and the number allows for it; an official test uses 400.", q.Of))
	case math.IsNaN(q.Years):
		a.Notes = append(a.Notes, "The germination given was used unchanged. A test of your own, given with --tested, is worth more.")
	}
}

// Print writes the answer for the grower.
func (a *SowAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("Sow %d seeds for %d plants", a.Seeds, a.Want))
	p.Line("")
	p.Line(fmt.Sprintf("  sure          %.1f %% (asked: %g %%)", a.Reached, a.Sure))
	p.Wrap("  germination   ", a.germinationWords())
	if a.Keeps != nil {
		p.Line(fmt.Sprintf("  keeps         about %g years under good storage", *a.Keeps))
	}
	for _, note := range a.Notes {
		p.Line("")
		p.Wrap("", note)
	}
	printWhy(p, a.Figures, units)
}

func (a *SowAnswer) germinationWords() string {
	g := a.Germination
	if g.Low == g.High {
		return fmt.Sprintf("%g %%, %s", g.Middle, a.Basis)
	}
	return fmt.Sprintf("%.0f %% (%.0f to %.0f), %s", g.Middle, g.Low, g.High, a.Basis)
}
