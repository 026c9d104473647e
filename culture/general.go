package culture

import (
	"fmt"
	"strconv"
	"sync"
)

// generalKeys are all figures that do not belong to one kind, in the order in which they are
// shown. A key that kinds have too is taken for those of which it is not known.
var generalKeys = []key{
	{"cold.dead", Celsius, "", false, "where not known: leaves are killed at"},
	{"cold.back", Weeks, "", false, "where not known: set back by frost on the leaves"},
	{"cold.damage", Celsius, "", false, "where not known: leaves are harmed below"},
	{"cold.night", Celsius, "", false, "where not known: lowest night for leafy plants"},
	{"plant.ready", Days, "", false, "where not known, and no flower either: up to fit for planting out, at best"},
	{"plant.harden", Days, "", false, "where not known: hardening before planting out"},
	{"plant.soil_leafy", Celsius, "", false, "where not known: soil for leafy plants, at least"},
	{"bench.meet", Share, "", false, "where not known: way to flower at which leaves meet"},
	{"flower.cut_for", Days, "", false, "where not known: cut or picked under cover, from first flower"},

	{"store.packed", Days, "", false, "stock is packed away, after 1 Sep (south: 1 Mar)"},
	{"store.round", Days, "", false, "from one round of a store to the next"},
	{"store.stirs", Celsius, "", false, "clumps in store move in spring from"},
	{"store.freezes", Celsius, "", false, "tubers and corms freeze in store at"},
	{"store.air", Share, "", false, "humidity of a store of which nothing is said"},
	{"divide.before", Weeks, "", false, "clumps are cut in spring before planting out"},
	{"divide.varieties", Share, "", false, "how unlike varieties are in good divisions from a clump, against their mean"},
	{"divide.uneven", Times, "", false, "variance of good divisions from clumps of a variety, against their mean"},

	{"start.corms", Days, "", false, "corms are planted from, before 1 Jan (south: 1 Jul)"},
	{"start.frost", Weeks, "", false, "stock from the store is started before the average last frost"},
	{"lot.up.1", Share, "", false, "first of five that stand for a lot: slower to come up than"},
	{"lot.up.2", Share, "", false, "second of five: slower to come up than"},
	{"lot.up.3", Share, "", false, "third of five: slower to come up than"},
	{"lot.up.4", Share, "", false, "fourth of five: slower to come up than"},
	{"lot.up.5", Share, "", false, "fifth of five: slower to come up than"},
	{"lot.flower.1", Share, "", false, "first of five that stand for a lot: slower from up to flower than"},
	{"lot.flower.2", Share, "", false, "second of five: slower from up to flower than"},
	{"lot.flower.3", Share, "", false, "third of five: slower from up to flower than"},
	{"lot.flower.4", Share, "", false, "fourth of five: slower from up to flower than"},
	{"lot.flower.5", Share, "", false, "fifth of five: slower from up to flower than"},
	{"flower.spread", Times, "", false, "spread of the days to flower within a lot (of the logarithm)"},
	{"pot.cell_to", Litres, "", false, "a container is a cell up to"},
	{"pot.small_to", Litres, "", false, "a container is a 4-5 in pot up to"},
	{"pot.last", Days, "", false, "nothing is potted up any more before planting out begins"},
	{"pot.freezes", Celsius, "", false, "what is not up is lost where its pot is colder than"},
	{"lamps.wait", Days, "", false, "after coming up, what waits to be handed on does without lamps"},

	{"house.usual", Celsius, "", false, "glass for young plants is kept at"},
	{"house.slack", Kelvin, "", false, "a heated place may swing below a limit by"},
	{"house.ahead", Days, "", false, "a house is heated before its first plants"},
	{"cold.hardy", Celsius, "", false, "a hardy kind stands frost of"},
	{"cold.shrugged", Each, "", false, "nights below the limit of harm that a plant shrugs off"},

	{"get.before", Days, "", false, "a thing is to be there before its first use"},
	{"sow.sure", Share, "", false, "how sure to be of enough seedlings"},
	{"sow.many", Times, "", false, "seeds for each plant beyond which a test costs less"},
	{"mite.look", Days, "", false, "from one look for mites to the next"},
	{"patch.before", Days, "", false, "stock is counted for the patch before the last frost"},
	{"autumn.prove", Days, "", false, "names are proved after first flower"},
	{"autumn.mark", Days, "", false, "keepers and sick are marked before the first freeze"},
	{"autumn.lift", Days, "", false, "clumps are lifted after the first freeze"},
	{"autumn.cure", Days, "", false, "clumps cure before they are packed"},
}

// general reads data/general.csv once. It is part of the program, so that a table which cannot
// be read is a programmer's mistake: it panics, and the tests see it first.
var general = sync.OnceValue(func() map[string]Figure {
	all := map[string]Figure{}
	err := rows("general.csv", 7, func(r []string) error { return addFigure(all, generalKeys, r) })
	if err != nil {
		panic("culture: " + err.Error())
	}
	return all
})

// General returns a figure that does not belong to one kind, or stands in where it is not known
// of a kind: "store.round", "plant.harden". It panics for a key that is not in the table, which
// is a programmer's mistake.
func General(name string) Figure {
	f, known := general()[name]
	if !known {
		panic(fmt.Sprintf("culture: the general figures have no %q", name))
	}
	return f
}

// Usual returns the value of a general figure, in its unit. See General.
func Usual(name string) float64 { return General(name).Value }

// GeneralFigures returns all figures that do not belong to one kind, in the order of generalKeys.
func GeneralFigures() []NamedFigure {
	var all []NamedFigure
	for _, key := range generalKeys {
		all = append(all, NamedFigure{key.name, key.meaning, General(key.name)})
	}
	return all
}

// Individual is one of the plants that stand for a lot: the share of the lot that is quicker
// than it to come up, and from up to flower.
type Individual struct{ Up, Flower float64 }

// Individuals returns the plants that stand for a lot. Each stands for a fifth of the lot in
// coming up and for another fifth in flowering, so that one does not follow the other.
func Individuals() []Individual {
	all := make([]Individual, 5)
	for i := range all {
		n := strconv.Itoa(i + 1)
		all[i] = Individual{Usual("lot.up." + n), Usual("lot.flower." + n)}
	}
	return all
}
