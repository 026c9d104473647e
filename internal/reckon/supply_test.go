package reckon

import (
	"math"
	"testing"

	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/quantity"
)

func TestSupplyAnswersFollowTheirSchemas(t *testing.T) {
	mix := func(q MixQuestion) report.Answer {
		q.Bag = Bag{Volume: 2 * quantity.CubicFoot}
		a, err := Mix(q)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	sow := func(q SowQuestion) report.Answer {
		a, err := Sow(q)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	pack := func(q PackQuestion) report.Answer {
		q.Bag = Bag{Volume: 4 * quantity.CubicFoot}
		a, err := Pack(q)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	keep := func(q KeepQuestion) report.Answer {
		a, err := Keep(q)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	none, untold := quantity.Share(math.NaN()), math.NaN()
	dahlia := KindQuestion{Kind: "dahlia"}
	for name, all := range map[string][]report.Answer{
		"reckon mix": {
			mix(MixQuestion{Container: "no1", Count: 30, Form: "clump"}), mix(MixQuestion{Container: "tray72", Count: 2, Why: true}),
			mix(MixQuestion{Container: "no1", From: "round4", Count: 4, Why: true}), mix(MixQuestion{Container: "no2", Count: 0}),
			mix(MixQuestion{Container: "no1", Count: 30, Holds: 3 * quantity.Litre, Nitrogen: .2, Why: true}), mix(MixQuestion{Container: "tray1020", Count: 9, Form: "clump", Why: true}),
		},
		"reckon pack": {
			pack(PackQuestion{Count: 380, Form: "clump", Why: true}), pack(PackQuestion{Count: 200, Form: "corm", Bare: true}),
		},
		"reckon sow": {
			sow(SowQuestion{Want: 50, Sure: .95, Germination: .85, Years: untold}), sow(SowQuestion{Want: 9, Sure: .9, Germination: none, Years: untold, Good: 17, Of: 20, Kind: "spinach"}),
			sow(SowQuestion{Want: 9, Sure: .9, Germination: none, Years: 2, Kind: "beet", Why: true}), sow(SowQuestion{Want: 9, Sure: .9, Germination: .5, Years: untold, Kind: "tomato"}),
		},
		"reckon keep": {
			keep(KeepQuestion{KindQuestion: dahlia, Form: "clump", Pack: "bare", Temperature: quantity.Fahrenheit(42), Humidity: .52, Days: 150, Why: true}),
			keep(KeepQuestion{KindQuestion: dahlia, Form: "clump", Pack: "bare", Temperature: quantity.Celsius(-2), Humidity: .52, Days: 10}),
			keep(KeepQuestion{KindQuestion: dahlia, Form: "division", Pack: "peat", Temperature: quantity.Celsius(4), Humidity: 1, Days: 0}),
		},
	} {
		for _, a := range all {
			testkit.Holds(t, name, a)
			testkit.Narrow(t, a)
		}
	}
}
