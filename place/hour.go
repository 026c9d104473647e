package place

// Hour is one hour of a covered place: temperatures in °C, flows in W, positive into the
// house. The stored heat is the sum of all flows.
type Hour struct {
	Index int // of the hour in the span

	Outside, Ground float64 // mean outside; ground deep under the floor
	Air, Floor      float64 // mean of the hour
	Level           float64 // set for the heater; below -100: off

	Asked, Given     float64 // heat
	Sun, SunOnFloor  float64 // solar heat to the air and to the floor
	Lamps, WarmBench float64
	Cover            float64 // through cover, gaps and vents
	Vent             float64 // the part of it through the vents
	Edge, Deep       float64 // from the floor

	StoredAir, StoredFloor float64 // heat stored by the air and the floor
}

// record makes the Hour from the results of a step.
func (r *run) record(i int, before track, o outcome, d drive, asked, bench float64) Hour {
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
