package culture

import "testing"

func TestKindsCanBeReckoned(t *testing.T) {
	for _, name := range Kinds() {
		k, ok := Lookup(name)
		if !ok {
			t.Fatalf("%s cannot be looked up", name)
		}
		if err := k.check(); err != nil {
			t.Error(err)
		}
		for _, l := range k.Lacks() {
			t.Logf("%s lacks %s (%s), blocks %v", name, l.Key, l.Meaning, l.Blocks)
		}
	}
}
