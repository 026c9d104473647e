package culture

import (
	"eyeup/growth"
	"eyeup/quantity"
)

// Effect is what a frost does to a plant.
type Effect string

// The effects of a frost.
const (
	Unhurt  Effect = "unhurt"
	SetBack Effect = "set back"
	Dead    Effect = "dead"
)

// Goal is what a kind is raised for.
type Goal string

// The goals. A first flower is reckoned for Flower and Fruit alone.
const (
	ForFlower Goal = "flower"
	ForFruit  Goal = "fruit"
	ForLeaf   Goal = "leaf"
	ForBulb   Goal = "bulb"
	ForRoot   Goal = "root"
)

// Kind is all that is known of how a kind of plant is raised. Fields whose figure is
// unknown are not-a-number (temperatures: not known); Lacks names them.
type Kind struct {
	Name string
	Life Life
	Form string // what it comes from: clump, corm, seed
	Goal Goal

	StartIn string // container it is started in, as in package supply
	PotOnIn string // container it is potted on into

	Sprout growth.Sprouting
	Grow   growth.Growing

	RestUntil  float64 // deep rest ends so many days after 1 January (1 July in the south)
	LookAfter  float64 // days after starting at which what is not up is to be looked at
	StartWeeks float64 // usual weeks from start to planting out

	Ready      float64 // best days from up to fit for planting out; store kinds: none
	HardenDays float64
	SowToPot   float64 // days from up to pricking out or potting
	RateFloor  float64 // share of growth left to a plant that is pot-bound
	CutFor     float64 // days from first flower till what stays under cover is cleared

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

// Transplant is how transplanting sets a plant back: for Days it grows at Share; for no more
// than Framed days where it has stood in a frame to harden.
type Transplant struct{ Days, Share, Framed float64 }

// DayLength is how progress to flower depends on the length of the day, in hours:
// Least up to None, rising in a line to 1 at Full.
type DayLength struct{ None, Full, Least float64 }

// LightNeed is daily light in mol/m²: poor below Least, no more use above Enough.
type LightNeed struct{ Least, Enough float64 }

// Frost is what frost does by how the plant stands, and when: at Kills or below leaves
// die; a plant set back loses Weeks.
type Frost struct {
	Dormant, Leafy, Cutting Effect
	Kills                   quantity.Temperature
	Weeks                   float64
}

// Soil is the warmth of the soil at 10 cm wanted for planting.
type Soil struct{ Leafy, Dormant quantity.Temperature }

// Bench is the room one plant takes, by stage. Leaves meet, and pots are spaced, at the
// share Meet of the way to flower. InBed is the ground it takes in the patch.
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
		k.Sprout.Eyed = 1 // seeds show no eyes
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
