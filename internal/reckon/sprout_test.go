package reckon

import (
	"testing"

	"eyeup/culture"
	"eyeup/internal/testkit"
	"eyeup/quantity"
)

// TestKindAnswersFollowTheirSchemas asks after every kind where it is too cold, warm, and
// too hot.
func TestKindAnswersFollowTheirSchemas(t *testing.T) {
	unknown := quantity.Unknown()
	for _, name := range culture.Kinds() {
		kind := KindQuestion{Kind: name}
		known, err := Culture(kind, true)
		if err != nil {
			t.Fatal(err)
		}
		testkit.Holds(t, "reckon culture", known)
		for _, celsius := range []float64{-5, 20, 45} {
			a, err := Sprout(SproutQuestion{KindQuestion: kind, Warm: quantity.Celsius(celsius), Night: unknown, Day: unknown, Why: celsius > 0})
			if err != nil {
				t.Fatal(err)
			}
			if comes := a.Up.Middle != nil; comes != (celsius == 20) {
				t.Errorf("%s at %g °C comes up: %v", name, celsius, comes)
			}
			testkit.Holds(t, "reckon sprout", a)
		}
	}
	for _, pest := range []string{"mites", "thrips"} {
		for _, celsius := range []float64{2, 10, 25} {
			a, err := Mite(MiteQuestion{Pest: pest, Warm: quantity.Celsius(celsius)})
			if err != nil {
				t.Fatal(err)
			}
			testkit.Holds(t, "reckon mite", a)
		}
		places, err := MitePlaces(brightGarden(), pest, unknown)
		if err != nil {
			t.Fatal(err)
		}
		testkit.Holds(t, "reckon mite garden", places)
	}
}
