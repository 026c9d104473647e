package culture

import (
	"eyeup/growth"
	"eyeup/quantity"
)

// Effect is the effect of frost on a plant.
type Effect string

// The effects of a frost.
const (
	Unhurt  Effect = "unhurt"
	SetBack Effect = "set back"
	Dead    Effect = "dead"
)

// Goal is the purpose of growing a kind.
type Goal string

// The goals. A first flower is computed for Flower and Fruit only.
const (
	ForFlower Goal = "flower"
	ForFruit  Goal = "fruit"
	ForLeaf   Goal = "leaf"
	ForBulb   Goal = "bulb"
	ForRoot   Goal = "root"
)

// Kind holds the growing figures of a kind of plant. Unknown fields are NaN; unknown
// temperatures are not known. Lacks names them.
type Kind struct {
	Name string
	Life Life
	Form string // what it is raised from: clump, corm, seed
	Goal Goal

	StartIn string // container it is started in, as in package supply
	PotOnIn string // container it is potted on into

	Sprout growth.Sprouting
	Grow   growth.Growing

	RestUntil  float64 // end of deep rest, in days after 1 January (1 July in the south)
	LookAfter  float64 // days after starting to check what is not up
	StartWeeks float64 // usual weeks from start to planting out

	Ready      float64 // days at best temperature from emergence to planting out; store kinds: none
	HardenDays float64
	SowToPot   float64 // days from emergence to pricking out or potting
	RateFloor  float64 // share of growth of a pot-bound plant
	CutFor     float64 // days from first flower to clearing what stays under cover

	Transplant Transplant
	DayLength  DayLength
	Light      LightNeed
	Frost      Frost
	Soil       Soil
	Bench      Bench

	ColdDamage quantity.Temperature // leaves are harmed below
	Lowest     quantity.Temperature // lowest night for leafy plants under glass
	WarnBelow  quantity.Temperature // slow and at risk below
	HeatDamage quantity.Temperature // harmed above
	StopsAt    quantity.Temperature // flowering ends near

	figures map[string]Figure
	facts   []Fact
}

// Transplant is the setback by transplanting: for Days the plant grows at Share; for at most
// Framed days if it was hardened in a frame.
type Transplant struct{ Days, Share, Framed float64 }

// DayLength is the response of progress to flower to the day length, in hours: Least up to
// None, then linear to 1 at Full.
type DayLength struct{ None, Full, Least float64 }

// LightNeed is daily light in mol/m²: too little below Least, no further gain above Enough.
type LightNeed struct{ Least, Enough float64 }

// Frost is the effect of frost by the plant's state: at Kills or below leaves die; a plant set
// back loses Weeks.
type Frost struct {
	Dormant, Leafy, Cutting Effect
	Kills                   quantity.Temperature
	Weeks                   float64
}

// Soil is the soil temperature at 10 cm needed for planting.
type Soil struct{ Leafy, Dormant quantity.Temperature }

// Bench is the area of one plant, by stage. Leaves meet, and pots are spaced, at the share
// Meet of the way to flower. InBed is its area in the patch.
type Bench struct {
	Tray, Tight, Spaced, InBed quantity.Area
	Meet                       float64
}

// fill sets the fields from the figures.
func (k *Kind) fill() {
	n, t := k.number, k.temperature
	k.Sprout = growth.Sprouting{
		Base: t("sprout.base"), WarmFrom: t("sprout.warm_from"), WarmTo: t("sprout.warm_to"), Ceiling: t("sprout.ceiling"),
		Sum: n("sprout.sum"), Eyed: n("sprout.eyed"), Sigma: n("sprout.spread"), Never: quantity.Share(n("sprout.never")),
	}
	if k.Life == Sow {
		k.Sprout.Eyed = 1 // seeds have no eyes
	}
	k.Grow = growth.Growing{Base: t("grow.base"), Best: t("grow.best"), Ceiling: t("grow.ceiling")}
	k.RestUntil, k.LookAfter, k.StartWeeks = n("rest.until"), n("sprout.look"), n("start.weeks")
	k.Ready, k.HardenDays, k.SowToPot, k.RateFloor = n("plant.ready"), n("plant.harden"), n("start.prick"), n("pot.floor")
	k.CutFor = n("flower.cut_for")
	k.Transplant = Transplant{n("plant.check"), n("plant.check_rate"), n("plant.check_framed")}
	k.DayLength = DayLength{n("day.none"), n("day.full"), n("day.least")}
	k.Light = LightNeed{n("light.least"), n("light.enough")}
	k.Frost.Kills, k.Frost.Weeks = t("cold.dead"), n("cold.back")
	k.Soil = Soil{t("plant.soil_leafy"), t("plant.soil_dormant")}
	k.Bench = Bench{
		Tray: quantity.Area(n("bench.tray")), Tight: quantity.Area(n("bench.tight")), Spaced: quantity.Area(n("bench.spaced")),
		InBed: quantity.Area(1 / n("plant.density")), Meet: n("bench.meet"),
	}
	k.ColdDamage, k.Lowest, k.WarnBelow = t("cold.damage"), t("cold.night"), t("cold.warn")
	k.HeatDamage, k.StopsAt = t("heat.damage"), t("heat.stop")
}
