package desk

import (
	"slices"
	"strconv"
	"strings"

	"eyeup/culture"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
)

// groups arranges what is said of a part, with a field for all that may be said, and one
// empty group more where several may stand.
func groups(g *garden.Garden, part string, body map[string]any) []PartGroup {
	said := flat("", body)
	a := arranger{part: part, garden: g, said: said, body: body}
	words := exchange.Words(part)
	for i := 0; i < len(words); {
		stem, _, several := strings.Cut(words[i].Key, "#")
		if !several {
			a.word(words[i])
			i++
			continue
		}
		own := slices.IndexFunc(words[i:], func(w exchange.Word) bool { return !strings.HasPrefix(w.Key, stem+"#") })
		if own < 0 {
			own = len(words) - i
		}
		for n := 1; n <= a.count(stem)+1; n++ {
			for _, w := range words[i : i+own] {
				w.Key = strings.Replace(w.Key, "#", strconv.Itoa(n), 1)
				a.word(w)
			}
		}
		i += own
	}
	a.rest()
	a.more()
	for i := range a.groups {
		a.groups[i].About = about(a.groups[i].Fields)
	}
	return a.groups
}

// about tells what a group is of: a variety by its name, a mix by its kind and trait.
func about(fields []PartField) string {
	said := map[string]string{}
	for _, f := range fields {
		if f.Value != "" {
			said[f.Key[strings.LastIndex(f.Key, ".")+1:]] = f.Value
		}
	}
	switch {
	case said["name"] != "":
		return said["name"]
	case said["by"] != "" && said["kind"] != "":
		return said["kind"] + " by " + said["by"]
	case len(said) > 0:
		return ""
	case len(fields) > 0 && strings.ContainsAny(fields[0].Key, "0123456789"):
		return "one more"
	}
	return "nothing is said"
}

// arranger puts fields into groups.
type arranger struct {
	part   string
	garden *garden.Garden
	body   map[string]any
	said   []PartField
	groups []PartGroup
}

// rest adds what is said and no word asks for, so that nothing is lost when the form is sent:
// figures, and keys that only a file would say.
func (a *arranger) rest() {
	asked := Part{Groups: a.groups}.Fields()
	for _, f := range a.said {
		if !slices.ContainsFunc(asked, func(one PartField) bool { return one.Key == f.Key }) {
			a.add(f.Key, f.Value)
		}
	}
}

// count returns how many tables stand under a stem such as "mix.".
func (a *arranger) count(stem string) int {
	list, _ := a.body[strings.TrimSuffix(stem, ".")].([]any)
	return len(list)
}

// value returns what is said of a key.
func (a *arranger) value(key string) string {
	i := slices.IndexFunc(a.said, func(f PartField) bool { return f.Key == key })
	if i < 0 {
		return ""
	}
	return a.said[i].Value
}

// word adds the field of a word; of one that the grower names those that are said, and the
// parts of a mix where they all have names.
func (a *arranger) word(w exchange.Word) {
	stem, open := strings.CutSuffix(w.Key, "*")
	if !open {
		a.add(w.Key, a.value(w.Key))
		return
	}
	var names []string
	if by := a.value(strings.TrimSuffix(stem, "want.") + "by"); strings.HasSuffix(stem, "want.") && by != "" {
		if all, free := exchange.SharesOf(by); !free {
			names = all
		}
	}
	for _, f := range a.said {
		if name, under := strings.CutPrefix(f.Key, stem); under && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, name := range names {
		a.add(stem+name, a.value(stem+name))
	}
}

// add adds a field, to the group it belongs to.
func (a *arranger) add(key, value string) {
	f := PartField{Key: key, Value: value, Label: key, Fixed: key == "sort"}
	if w, known := exchange.WordOf(a.part, key); known {
		f.Label, f.Help, f.Choices = w.Label, w.HelpIn(a.garden.System), w.Choices
	}
	g := a.group(exchange.Group(a.part, key))
	g.Fields = append(g.Fields, f)
}

func (a *arranger) group(title string) *PartGroup {
	i := slices.IndexFunc(a.groups, func(g PartGroup) bool { return g.Title == title })
	if i < 0 {
		i = len(a.groups)
		a.groups = append(a.groups, PartGroup{Title: title})
	}
	return &a.groups[i]
}

// more asks, where the grower names the keys, for one more.
func (a *arranger) more() {
	switch a.part {
	case "figures":
		for _, kind := range a.kinds() {
			if choices := a.figures(kind); len(choices) > 0 {
				a.group(kind).More = &PartMore{Under: kind + ".", Label: "one more figure", Says: "what it is with you", Help: "with its unit, such as 48F, 12 % or 30 d", Choices: choices}
			}
		}
	case "patch":
		a.group(exchange.Group(a.part, "spacing.*")).More = &PartMore{
			Under: "spacing.", Label: "one more kind", Says: "from plant to plant", Help: "such as 45 cm or 18 in", Choices: plainly(culture.Kinds()),
		}
		for n := 1; n <= a.count("mix.")+1; n++ {
			mix := "mix." + strconv.Itoa(n) + "."
			if names, open := exchange.SharesOf(a.value(mix + "by")); open {
				a.group(exchange.Group(a.part, mix)).More = &PartMore{
					Under: mix + "want.", Label: "one more to wish a share of", Says: "its share", Help: "of the kind's plants, such as 25%", Choices: plainly(names), Open: true,
				}
			}
		}
	}
}

// kinds returns the kinds of which figures are said, or of which there is stock.
func (a *arranger) kinds() []string {
	var all []string
	for kind := range a.body {
		all = append(all, kind)
	}
	for _, h := range a.garden.Stock {
		all = append(all, h.Variety.Kind)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// figures returns the figures of a kind of which nothing is said.
func (a *arranger) figures(kind string) []PartChoice {
	k, known := culture.Lookup(kind)
	if !known {
		return nil
	}
	var all []PartChoice
	for _, f := range k.Figures() {
		if a.value(kind+"."+f.Key) == "" {
			all = append(all, PartChoice{f.Key, f.Meaning})
		}
	}
	return all
}

// plainly returns choices that say what they are.
func plainly(keys []string) []PartChoice {
	var all []PartChoice
	for _, key := range keys {
		all = append(all, PartChoice{key, key})
	}
	return all
}
