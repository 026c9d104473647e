package quantity

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"
)

func TestMoneyRounds(t *testing.T) {
	for amount, minor := range map[float64]int64{0.30: 30, 1.005: 100, 1.006: 101, -0.125: -13, 0.125: 13, 12.5: 1250} {
		if got := MoneyOf(amount, "USD"); got.Minor != minor {
			t.Errorf("%g is %d cents", amount, got.Minor)
		}
	}
}

func TestMoneyAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Money{rapid.Int64Range(-1e12, 1e12).Draw(t, "a"), "USD"}
		b := Money{rapid.Int64Range(-1e12, 1e12).Draw(t, "b"), "USD"}
		if a.Plus(b) != b.Plus(a) || a.Plus(b).Minor != a.Minor+b.Minor || (Money{}).Plus(a) != a || a.Plus(Money{}) != a {
			t.Fatalf("%v and %v", a, b)
		}
		text, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		var back Money
		if err := json.Unmarshal(text, &back); err != nil || back != a {
			t.Fatalf("%s read back as %v, %v", text, back, err)
		}
		if read, err := ParseMoney(a.String()); err != nil || read != a {
			t.Fatalf("%v read back as %v, %v", a, read, err)
		}
	})
}

func TestCurrenciesDoNotMix(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("dollars and euros were added")
		}
	}()
	MoneyOf(1, "USD").Plus(MoneyOf(1, "EUR"))
}

func TestMoneyTimes(t *testing.T) {
	if got := MoneyOf(0.60, "USD").Times(30); got != MoneyOf(18, "USD") {
		t.Errorf("thirty pots cost %v", got)
	}
	if got := MoneyOf(12.5, "USD").String(); got != "12.50 USD" {
		t.Errorf("got %q", got)
	}
	var m Money
	if err := json.Unmarshal([]byte(`{"amount": "x"}`), &m); err == nil {
		t.Errorf("x was taken for %v", m)
	}
}
