package stock

import (
	"slices"
	"testing"
)

// Every kind tells its shape, and what it tells is what its body may say.
func TestEveryKindHasAShape(t *testing.T) {
	for _, name := range Kinds() {
		shape, known := Shape(name)
		if !known || len(shape) == 0 {
			t.Errorf("%s has no shape", name)
		}
		var names []string
		for _, m := range shape {
			names = append(names, m.Name)
			if m.Sort == Group && len(m.Of) == 0 {
				t.Errorf("%s: %s is a group of nothing", name, m.Name)
			}
		}
		if members := kinds[kindByName[name]].members; !slices.Equal(names, members) {
			t.Errorf("%s: %v, members %v", name, names, members)
		}
	}
	shape, _ := Shape("moved")
	want := map[string]MemberSort{"lot": Text, "place": Text, "to": Group, "count": Number, "all": Truth}
	for _, m := range shape {
		if sort, told := want[m.Name]; told && m.Sort != sort {
			t.Errorf("%s is a %s", m.Name, m.Sort)
		}
		if m.Due != (m.Name == "lot") {
			t.Errorf("%s: due %v", m.Name, m.Due)
		}
	}
	if _, known := Shape("danced"); known {
		t.Error("danced is no kind")
	}
}
