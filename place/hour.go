package place

// Hour is what an hour did to a covered place: temperatures in °C, flows in W, positive
// into the house. Warmth stored is what all flows leave.
type Hour struct {
	Index int // of the hour in the span

	Outside, Ground float64 // mean of the hour; deep under the floor
	Air, Floor      float64 // mean of the hour, as reckoned
	Level           float64 // asked of the heater; below -100: off

	Asked, Given     float64 // heat
	Sun, SunOnFloor  float64 // warmth felt by air and by floor
	Lamps, WarmBench float64
	Cover            float64 // through cover, gaps and vents
	Vent             float64 // of that, through the vents
	Edge, Deep       float64 // from the floor

	StoredAir, StoredFloor float64 // what the air and the floor took up
}

// tell puts together what an hour did.
func (r *run) tell(i int, before track, o outcome, d drive, asked, bench float64) Hour {
	p := r.house.day.pair
	lamps := r.house.lamps[i%24]
	bench *= r.house.benchToAir
	return Hour{
		Index: i, Outside: d.out, Ground: d.ground, Air: o.mean.air, Floor: o.mean.floor, Level: o.asked,
		Asked: asked, Given: o.heat, Sun: d.gain - lamps - bench, SunOnFloor: d.floorGain,
		Lamps: lamps, WarmBench: bench,
		Cover: o.loss * (d.out - o.mean.air), Vent: o.vent * (d.out - o.mean.air),
		Edge: p.edge * (d.out - o.mean.floor), Deep: p.deep * (d.ground - o.mean.floor),
		StoredAir:   p.airHeat * (r.real.air - before.air) / hour,
		StoredFloor: p.floorHeat * (r.real.floor - before.floor) / hour,
	}
}
