package culture_test

import (
	"fmt"

	"eyeup/culture"
)

func ExampleKind_With() {
	dahlia, _ := culture.Lookup("dahlia")
	own, err := dahlia.With([]culture.Override{{Key: "cold.night", Text: "50F"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, _ := own.Figure("cold.night")
	fmt.Println(f.Value, f.Unit, f.Source)
	_, err = dahlia.With([]culture.Override{{Key: "cold.nihgt", Text: "50F"}})
	fmt.Println(err)
	// Output:
	// 10 °C this garden's own
	// culture of dahlia: there is no figure "cold.nihgt"; the nearest is "cold.night"
}
