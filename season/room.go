package season

import (
	"math"
	"slices"

	"eyeup/culture"
)

// taken is the room that a plant takes on one bench.
type taken struct {
	bench int
	area  float64
}

// room returns the room that a plant of this outcome takes on each bench in each week, on
// the basis of the share fits of years: in that share it takes no more. Weeks are counted
// from the first Monday of the span.
func (o *outcome) room(fits float64, weeks int, m *Planner) map[int][]float64 {
	if fits != float64(m.Asked.Fits) { // a wider basis is seldom asked for
		return o.reckonRoom(fits, weeks, m)
	}
	o.later.room.Do(func() { o.need = o.reckonRoom(fits, weeks, m) })
	return o.need
}

func (o *outcome) reckonRoom(fits float64, weeks int, m *Planner) map[int][]float64 {
	all := map[int][]float64{}
	need := func(bench int) []float64 {
		if all[bench] == nil {
			all[bench] = make([]float64, weeks)
		}
		return all[bench]
	}
	years := len(o.fates())
	at := max(0, int(math.Ceil(fits*float64(years)))-1)
	settled := o.settled()
	var areas [][]float64 // by bench, in the order in which benches are met, and year
	var benches []int
	var most [8]taken
	for week := range weeks {
		from := o.firstMonday + 7*week
		if from+7 <= o.start {
			continue
		}
		if from >= settled {
			need(o.route.groundPlace)[week] = o.life.bed
			continue
		}
		for _, a := range areas {
			clear(a)
		}
		for year, f := range o.fates() {
			for _, t := range o.takes(f, week, m, most[:0]) {
				row := slices.Index(benches, t.bench)
				if row < 0 {
					row = len(benches)
					benches, areas = append(benches, t.bench), append(areas, make([]float64, years))
				}
				areas[row][year] = t.area
			}
		}
		for row, bench := range benches {
			slices.Sort(areas[row])
			if areas[row][years-1] > 0 {
				need(bench)[week] = areas[row][at]
			}
		}
	}
	return all
}

// settled returns the day from which the plant stands in the open ground in every year,
// and never where in some it does not, or dies.
func (o *outcome) settled() int {
	last := 0
	for _, f := range o.fates() {
		last = max(last, f.out)
		if f.died != Never {
			return Never
		}
	}
	return last
}

// takes adds to most the room that a plant of fate f takes on each bench during one week:
// the most on any of its days.
func (o *outcome) takes(f fate, week int, m *Planner, most []taken) []taken {
	take := func(bench int, area float64) {
		for i := range most {
			if most[i].bench == bench {
				most[i].area = max(most[i].area, area)
				return
			}
		}
		most = append(most, taken{bench, area})
	}
	from := o.firstMonday + 7*week
	for day := max(from, o.start); day < from+7; day++ {
		place, area := o.stands(f, day)
		if place < 0 {
			continue
		}
		take(place, area)
		if m.Given.Places[place].Lit > 0 && f.up != Never && day > f.up+o.dark(place) {
			take(m.Lamps(place), area)
		}
	}
	return most
}

// dark returns how many days after coming up a plant stands in a place without lamps:
// none where it stays, some where it waits to be handed on.
func (o *outcome) dark(place int) int {
	if o.route.onPlace == place {
		return 0
	}
	return lampless
}

// lampless is how many days after coming up what waits to be handed on does without lamps.
var lampless = int(culture.Usual("lamps.wait"))

// changes adds to a list, in order, the days from the start to the end of the span on which a plant may
// come to stand elsewhere, to be lit or to take other room: between two of them all is as on
// the first. See stands.
func (o *outcome) changes(f fate, end int, all []int) []int {
	begin := max(o.start, o.firstMonday)
	all = append(all, begin, end)
	for _, day := range []int{
		f.handOn, f.framed, f.out, f.died, f.up + 1, f.up + lampless + 1, f.up + o.life.prick + 1, f.meet, f.touch, f.potted, f.eyed + 1, f.flower + o.life.cutFor + 1,
	} {
		if day > begin && day < end {
			all = append(all, day)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// stands returns where a plant of fate f stands on a day, and the room it takes there.
func (o *outcome) stands(f fate, day int) (place int, area float64) {
	l := o.life
	switch {
	case day < o.start, day >= f.died:
		return -1, 0
	case o.route.stays:
		if f.flower != Never && day > f.flower+l.cutFor {
			return -1, 0
		}
		if day < f.handOn && o.route.firstPlace != o.route.onPlace {
			break
		}
		return o.route.onPlace, l.bed
	case day >= f.out:
		return o.route.groundPlace, l.bed
	case o.route.direct:
		return -1, 0
	}
	place = o.route.firstPlace
	switch {
	case day >= f.framed:
		place = o.route.framePlace
	case day >= f.handOn:
		place = o.route.onPlace
	}
	switch {
	case l.pieces > 0 && l.upAfter == 0 && day > f.eyed && day <= f.up: // cut and potted
		return place, o.potArea(l, f, day)
	case f.up == Never || day-f.up <= l.prick:
		return place, l.tray
	}
	return place, o.potArea(l, f, day)
}

// weighed distinguishes what room is computed of.
type weighed struct {
	*outcome
	basis float64
}
