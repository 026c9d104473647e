package culture

import "strings"

// Life is the life cycle of a kind as it is grown.
type Life string

// The life cycles.
const (
	Store Life = "store" // a tuber or rhizome that is stored and woken
	Soak  Life = "soak"  // a dry corm that is soaked and sprouted in the cool
	Sow   Life = "sow"   // sown anew each year
)

// key is the description of one figure that a kind may have.
type key struct {
	name    string
	unit    Unit
	due     string // life cycles for which a season uses it; empty: optional
	blocks  bool   // whether a season can't be computed without it
	meaning string
}

const every = "store soak sow"

// keys are all figures, in the order of display. "At best" means at the best temperature; soil
// is soil at 10 cm.
var keys = []key{
	{"rest.until", Days, "store", false, "deep rest ends, after 1 Jan (south: 1 Jul)"},
	{"store.temperature", Celsius, "store soak", false, "temperature of the store"},
	{"store.humidity", Share, "store", false, "humidity of the air in the store"},
	{"store.success", Share, "", false, "share that comes through a well-kept store"},
	{"divide.pieces", Each, "", false, "good divisions from a clump"},
	{"divide.tray", Area, "", false, "bench of one division in a waking tray"},
	{"soak.time", Hours, "soak", false, "time in water"},
	{"soak.temperature", Celsius, "soak", false, "temperature of the water"},
	{"presprout.temperature", Celsius, "soak", false, "temperature of pre-sprouting"},
	{"presprout.time", Days, "soak", false, "time of pre-sprouting"},

	{"sprout.base", Celsius, every, true, "no sprouting at or below"},
	{"sprout.warm_from", Celsius, every, true, "fastest sprouting from"},
	{"sprout.warm_to", Celsius, every, true, "fastest sprouting to"},
	{"sprout.ceiling", Celsius, every, true, "no sprouting at or above"},
	{"sprout.sum", DegreeDays, every, true, "warmth above that till half are up"},
	{"sprout.eyed", Share, "store soak", true, "share of it at which eyes show"},
	{"sprout.spread", Times, every, true, "spread within a lot (of the logarithm)"},
	{"sprout.sorts", Times, "", false, "quick and slow sorts, against the middle"},
	{"sprout.never", Share, every, true, "share that never comes up"},
	{"sprout.look", Days, "store", false, "after starting, look at what is not up"},
	{"start.weeks", Weeks, every, false, "usual start before planting out"},
	{"start.warmth", Celsius, every, false, "usual warmth for starting"},
	{"start.depth", Depth, "", false, "depth of mix over it"},
	{"start.prick", Days, "sow", false, "from up to pricking out or potting"},

	{"grow.base", Celsius, every, true, "no growth at or below"},
	{"grow.best", Celsius, every, true, "fastest growth at"},
	{"grow.ceiling", Celsius, every, true, "no growth at or above"},
	{"grow.day", Celsius, "", false, "usual day temperature under glass"},
	{"grow.night", Celsius, "", false, "usual night temperature under glass"},
	{"flower.early", Days, "", false, "up to first flower at best, early sorts"},
	{"flower.mid", Days, every, true, "up to first flower at best, middling sorts"},
	{"flower.late", Days, "", false, "up to first flower at best, late sorts"},
	{"flower.stems", Each, "", false, "stems a plant"},
	{"flower.week", Each, "", false, "stems a plant, in a week of flower"},
	{"flower.cut_for", Days, "", false, "cut or picked under cover, from first flower"},

	{"pot.cell", Share, every, false, "way to flower where a cell holds it back"},
	{"pot.small", Share, every, false, "way to flower where a 4-5 in pot does"},
	{"pot.gallon", Share, every, false, "way to flower where a trade gallon does"},
	{"pot.floor", Share, every, false, "growth left to a pot-bound plant"},
	{"day.none", Hours, every, false, "no progress to flower in days of up to"},
	{"day.full", Hours, every, false, "full progress in days from"},
	{"day.blind", Hours, "", false, "tubers and blind buds in days below"},
	{"day.least", Share, "", false, "progress left in the shortest days"},
	{"day.lamps", Hours, "", false, "light days to"},
	{"light.least", Light, "", false, "poor below a daily light of"},
	{"light.enough", Light, every, false, "full growth from a daily light of"},

	{"cold.dead", Celsius, every, false, "leaves are killed at"},
	{"cold.back", Weeks, "store", false, "set back by frost on the leaves"},
	{"cold.damage", Celsius, every, false, "leaves are harmed below"},
	{"cold.night", Celsius, every, false, "lowest night for leafy plants"},
	{"cold.warn", Celsius, "", false, "slow and at risk below"},
	{"heat.damage", Celsius, "", false, "harmed above"},
	{"heat.stop", Celsius, "soak", false, "flowering ends near"},

	{"plant.ready", Days, "sow", false, "up to fit for planting out, at best"},
	{"plant.harden", Days, every, false, "hardening before planting out"},
	{"plant.check", Days, every, false, "set back by transplanting for"},
	{"plant.check_framed", Days, "", false, "set back so long where a frame hardened it"},
	{"plant.check_rate", Share, every, false, "growth while set back"},
	{"plant.soil_leafy", Celsius, every, false, "soil for leafy plants, at least"},
	{"plant.soil_dormant", Celsius, "store soak", false, "soil for dormant stock, at least"},
	{"plant.density", PerArea, every, false, "plants in the bed"},
	{"plant.depth", Depth, "", false, "depth in the bed"},

	{"bench.tray", Area, every, false, "bench of one in a waking tray, or a cell"},
	{"bench.tight", Area, every, false, "bench of a pot, pot-tight"},
	{"bench.spaced", Area, every, false, "bench of a pot, spaced"},
	{"bench.meet", Share, every, false, "way to flower at which leaves meet"},

	{"cut.each", Each, "", false, "cuttings from a mother"},
	{"cut.first", Days, "", false, "starting a mother to its first shoots"},
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
