package odds

import (
	"encoding/json"
	"math"
)

// Amount is a figure with its spread: in one case in ten it is below Low, at even odds
// below Middle, in one case in ten above High. An infinite part says "never" and is
// written as null.
type Amount struct {
	Low, Middle, High float64
}

// Exactly is an amount without spread.
func Exactly(x float64) Amount { return Amount{x, x, x} }

// AmountOf sums up a sample by its type-8 quantiles at one in ten, even odds and nine
// in ten. The sample may be in any order and is left alone; an empty one gives NaN.
func AmountOf(sample []float64) Amount {
	s := Sorted(sample)
	return Amount{s.At(0.1), s.At(0.5), s.At(0.9)}
}

// Times returns the amount multiplied by a positive f.
func (a Amount) Times(f float64) Amount { return Amount{a.Low * f, a.Middle * f, a.High * f} }

type amountJSON struct {
	Low    *float64 `json:"low"`
	Middle *float64 `json:"middle"`
	High   *float64 `json:"high"`
}

// MarshalJSON writes the three parts; what is not a finite number becomes null.
func (a Amount) MarshalJSON() ([]byte, error) {
	return json.Marshal(amountJSON{finite(a.Low), finite(a.Middle), finite(a.High)})
}

// UnmarshalJSON reads what MarshalJSON writes; null becomes not-a-number.
func (a *Amount) UnmarshalJSON(b []byte) error {
	var j amountJSON
	if err := json.Unmarshal(b, &j); err != nil {
		return err
	}
	*a = Amount{orNaN(j.Low), orNaN(j.Middle), orNaN(j.High)}
	return nil
}

func finite(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

func orNaN(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}
