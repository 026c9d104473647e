package culture

import "strings"

// Life is the way in which a kind comes through the year.
type Life string

// The ways of life.
const (
	Store Life = "store" // a tuber or rhizome that is kept and woken
	Soak  Life = "soak"  // a dry corm that is soaked and sprouted in the cool
	Sow   Life = "sow"   // sown anew each year
)

// key is one figure that a kind may have.
type key struct {
	name    string
	unit    Unit
	due     string // ways of life for which a season wants it; empty: good to know
	blocks  bool   // whether without it no season can be reckoned
	meaning string
}

const every = "store soak sow"

// keys are all figures there are, in the order in which they are shown.
var keys = []key{
	{"rest.until", Days, "store", false, "deep rest ends, days after 1 January (1 July in the south)"},
	{"store.temperature", Celsius, "store soak", false, "temperature of the store"},
	{"store.humidity", Share, "store", false, "humidity of the air in the store"},
	{"store.success", Share, "", false, "share that comes through a well-kept store"},
	{"divide.pieces", Each, "", false, "good divisions from a clump"},
	{"soak.time", Hours, "soak", false, "time in water"},
	{"soak.temperature", Celsius, "soak", false, "temperature of the water"},
	{"presprout.temperature", Celsius, "soak", false, "temperature of pre-sprouting"},
	{"presprout.time", Days, "soak", false, "time of pre-sprouting"},

	{"sprout.base", Celsius, every, true, "no sprouting at or below"},
	{"sprout.warm_from", Celsius, every, true, "fastest sprouting from"},
	{"sprout.warm_to", Celsius, every, true, "fastest sprouting to"},
	{"sprout.ceiling", Celsius, every, true, "no sprouting at or above"},
	{"sprout.sum", DegreeDays, every, true, "warmth above the base till half are up"},
	{"sprout.eyed", Share, "store soak", true, "share of that warmth at which eyes show"},
	{"sprout.spread", Times, every, true, "spread within a lot (standard deviation of the logarithm)"},
	{"sprout.sorts", Times, "", false, "from quick to slow sorts, against the middle one"},
	{"sprout.never", Share, every, true, "share that never comes up"},
	{"sprout.look", Days, "store", false, "look at what is not up so long after starting"},
	{"start.weeks", Weeks, every, false, "usual start before planting out (sown: weeks in the house)"},
	{"start.warmth", Celsius, every, false, "usual warmth for starting"},
	{"start.depth", Depth, "", false, "depth of mix over it"},
	{"start.prick", Days, "sow", false, "from up to pricking out or potting"},

	{"grow.base", Celsius, every, true, "no growth at or below"},
	{"grow.best", Celsius, every, true, "fastest growth at"},
	{"grow.ceiling", Celsius, every, true, "no growth at or above"},
	{"grow.day", Celsius, "", false, "usual day temperature under glass"},
	{"grow.night", Celsius, "", false, "usual night temperature under glass"},
	{"flower.early", Days, "", false, "from up to first flower, early sorts, at best temperature"},
	{"flower.mid", Days, every, true, "from up to first flower, middling sorts, at best temperature"},
	{"flower.late", Days, "", false, "from up to first flower, late sorts, at best temperature"},
	{"flower.stems", Each, "", false, "stems a plant"},

	{"pot.cell", Share, "sow", false, "share of the way to flower at which a tray cell holds it back"},
	{"pot.small", Share, every, false, "the same in a pot of 4 to 5 inches"},
	{"pot.gallon", Share, every, false, "the same in a trade gallon"},
	{"pot.floor", Share, every, false, "share of growth left to a plant that is pot-bound"},
	{"day.none", Hours, every, false, "no progress to flower in days of up to"},
	{"day.full", Hours, every, false, "full progress in days from"},
	{"day.least", Share, "", false, "share of progress left in the shortest days"},
	{"day.lamps", Hours, "", false, "light days to"},
	{"light.least", Light, "", false, "poor below a daily light of"},
	{"light.enough", Light, every, false, "full growth from a daily light of"},

	{"cold.dead", Celsius, every, false, "leafy plants are killed at"},
	{"cold.back", Weeks, "store", false, "set back by frost on the leaves"},
	{"cold.damage", Celsius, every, false, "leaves are harmed below"},
	{"cold.night", Celsius, every, false, "lowest night for leafy plants under glass"},
	{"cold.warn", Celsius, "", false, "slow and at risk below"},
	{"heat.damage", Celsius, "", false, "harmed above"},
	{"heat.stop", Celsius, "soak", false, "flowering ends near"},

	{"plant.ready", Days, "sow", false, "from up to fit for planting out, at best temperature"},
	{"plant.harden", Days, every, false, "hardening before planting out"},
	{"plant.check", Days, every, false, "set back by transplanting for"},
	{"plant.check_rate", Share, every, false, "share of growth while set back"},
	{"plant.soil_leafy", Celsius, every, false, "soil at 10 cm for leafy plants, at least"},
	{"plant.soil_dormant", Celsius, "store soak", false, "soil at 10 cm for dormant stock, at least"},
	{"plant.density", PerArea, every, false, "plants in the bed"},
	{"plant.depth", Depth, "", false, "depth in the bed"},

	{"bench.tray", Area, every, false, "bench a plant takes in a waking tray, or a cell"},
	{"bench.tight", Area, every, false, "bench a pot takes, pot-tight"},
	{"bench.spaced", Area, every, false, "bench a pot takes when leaves would meet"},
	{"bench.meet", Share, every, false, "share of the way to flower at which leaves meet"},

	{"cut.each", Each, "", false, "cuttings from a mother"},
	{"cut.first", Days, "", false, "from starting a mother to its first shoots"},
	{"cut.root", Days, "", false, "from cutting to rooted"},
	{"cut.lost", Share, "", false, "cuttings that do not root"},

	{"seed.0C", Share, "", false, "normal seedlings at 0 °C"},
	{"seed.5C", Share, "", false, "normal seedlings at 5 °C"},
	{"seed.10C", Share, "", false, "normal seedlings at 10 °C"},
	{"seed.15C", Share, "", false, "normal seedlings at 15 °C"},
	{"seed.20C", Share, "", false, "normal seedlings at 20 °C"},
	{"seed.25C", Share, "", false, "normal seedlings at 25 °C"},
	{"seed.30C", Share, "", false, "normal seedlings at 30 °C"},
	{"seed.35C", Share, "", false, "normal seedlings at 35 °C"},

	{"work.round", Minutes, "", false, "going over one in the store"},
	{"work.wake", Minutes, "", false, "setting one to wake"},
	{"work.divide", Minutes, "", false, "dividing a clump"},
	{"work.start", Minutes, every, false, "potting, sowing or boxing one"},
	{"work.prick", Minutes, "sow", false, "pricking one out"},
	{"work.pot_up", Minutes, "", false, "potting one up"},
	{"work.hand_on", Minutes, every, false, "carrying one to the next place"},
	{"work.harden", Minutes, every, false, "hardening one, in all"},
	{"work.plant", Minutes, every, false, "planting one out"},
	{"work.lift", Minutes, "store soak", false, "lifting and cleaning one"},
	{"work.pack", Minutes, "store soak", false, "labelling and packing one"},
}

// numbered finds a key by its name.
var numbered = func() map[string]int {
	m := make(map[string]int, len(keys))
	for i, k := range keys {
		m[k.name] = i
	}
	return m
}()

func (k key) dueFor(l Life) bool { return strings.Contains(" "+k.due+" ", " "+string(l)+" ") }
