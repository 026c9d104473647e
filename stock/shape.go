package stock

import (
	"reflect"
	"strings"
)

// Member is one member of the body of a kind of entry.
type Member struct {
	Name string
	Sort MemberSort
	Due  bool // whether it is required
	Of   []Member
}

// MemberSort is the type of a member.
type MemberSort string

// The types of members.
const (
	Text   MemberSort = "text"
	Number MemberSort = "number"
	Truth  MemberSort = "truth"
	List   MemberSort = "list"   // of texts, or of groups
	Group  MemberSort = "group"  // of members, Of
	Opaque MemberSort = "opaque" // any JSON
)

// Shape returns the members of the body of a kind of entry, in the order in which a grower
// would fill them in, and whether there is such a kind.
func Shape(kindName string) ([]Member, bool) {
	n, known := kindByName[kindName]
	if !known {
		return nil, false
	}
	return shapeOf(reflect.TypeOf(kinds[n].empty()).Elem()), true
}

func shapeOf(t reflect.Type) []Member {
	var all []Member
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && name == "":
			all = append(all, shapeOf(f.Type)...)
		case name != "":
			m := Member{Name: name, Due: options != "omitzero"}
			m.Sort, m.Of = sortOf(f.Type)
			all = append(all, m)
		}
	}
	return all
}

func sortOf(t reflect.Type) (MemberSort, []Member) {
	switch t.Kind() {
	case reflect.String, reflect.Array: // an array is an ID
		return Text, nil
	case reflect.Int, reflect.Int32:
		return Number, nil
	case reflect.Bool:
		return Truth, nil
	case reflect.Pointer:
		return sortOf(t.Elem())
	case reflect.Struct:
		return Group, shapeOf(t)
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Uint8 {
			return Opaque, nil
		}
		_, of := sortOf(t.Elem())
		return List, of
	}
	return Opaque, nil
}
