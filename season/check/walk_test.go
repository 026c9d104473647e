package check

import (
	"math"
	"slices"
	"testing"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/place"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/supply"
)

// level is a course of one temperature throughout, with so much light, over a season.
func level(days int, celsius, light float64) *place.Course {
	return &place.Course{
		Air: slices.Repeat([]float64{celsius}, 24*days), Root: slices.Repeat([]float64{celsius}, 24*days),
		Light: slices.Repeat([]float64{light}, days), DayLength: slices.Repeat([]float64{16}, days),
	}
}

// northern is the calendar of a season of 2027 in the north, and a dahlia's way through a
// room and glass that is started on Monday 1 March.
func northern(t *testing.T) (*calendar, *way) {
	t.Helper()
	b := season.Brief{Given: season.Given{Span: civil.Span{From: civil.MustOn(2026, 9, 1), To: civil.MustOn(2027, 12, 31)}, Today: civil.MustOn(2026, 11, 1), Kinds: culture.Lookup}}
	c := calendarOf(&b)
	n, err := needsOf(&b, stock.Variety{Name: "Slow Ferry", Kind: "dahlia", Timing: stock.Mid}, stock.Clump, season.Whole)
	if err != nil {
		t.Fatal(err)
	}
	return &c, &way{needs: n, start: c.day(civil.MustOn(2027, 3, 1)), outFrom: c.day(civil.MustOn(2027, 5, 24)), framed: never}
}

// TestWalkAtOneTemperature leads a clump through places that never change, where every
// date follows by division from the kind's own figures.
func TestWalkAtOneTemperature(t *testing.T) {
	c, w := northern(t)
	best := w.kind.Grow.Best.Celsius()
	room, glass := level(c.days, 21, 0), level(c.days, best, 40)
	r := w.walk(c, through{first: room, on: glass, ground: level(c.days, best, 40)})
	rate := w.kind.Sprout.Rate(21) // °C·d a day

	wantUp := w.start + int(math.Ceil(24*w.sprout/rate)-1)/24
	if got := dayOf(r.middle.up); got != wantUp {
		t.Errorf("up on day %d, not %d", got, wantUp)
	}
	if want := c.monday(wantUp + 1); r.handOn != want {
		t.Errorf("handed on on day %d, not on the next Monday, %d", r.handOn, want)
	}
	// The room is dark, so that leaves make nothing of it; in the glass a day counts as one, until
	// the pot is full at its limit of the way, and less from then on.
	wantMeet := 24 * (float64(r.handOn) + w.meets)
	if w.meets > w.pots*w.flower {
		t.Fatal("leaves meet when the pot is full already")
	}
	if got := float64(r.middle.meet + 1); math.Abs(got-wantMeet) > 1 {
		t.Errorf("leaves meet in hour %.0f, not %.0f", got, wantMeet)
	}
	if r.out != w.outFrom {
		t.Errorf("planted out on day %d, not on the Monday fixed, %d", r.out, w.outFrom)
	}
	if got := dayOf(r.middle.bloom); got <= r.out || r.middle.died != never {
		t.Errorf("flowers on day %d, planted out on %d", got, r.out)
	}
}

// TestWalkInItsPot keeps a plant in its pot, at the best temperature throughout, until it flowers. Its
// share of growth falls as it comes on, so that what it has come to goes by an exponential: the
// floor is met after log(1/floor) of the pace at which it falls, and the rest of the way is at that.
func TestWalkInItsPot(t *testing.T) {
	c, w := northern(t)
	best := level(c.days, w.kind.Grow.Best.Celsius(), 40)
	w.outFrom = never - 1
	r := w.walk(c, through{first: best, on: best, ground: best})
	limit, floor := w.pots*w.flower, w.kind.RateFloor
	pace := (limit / 2) / (1 - floor) // days of growth in which the share would fall to nothing
	days := limit + pace*math.Log(1/floor) + (w.flower-1.5*limit)/floor
	want := 24*float64(dayOf(r.middle.up)+1) + 24*days
	if got := r.middle.bloom + 1; got != int(math.Ceil(want)) {
		t.Errorf("flowers by the end of hour %d, not in %.2f", got, want)
	}
}

// TestWalkPlantsOutByTheSoil: the soil is warm enough from a Wednesday on; it has been so over
// seven days on the second Monday after.
func TestWalkPlantsOutByTheSoil(t *testing.T) {
	c, w := northern(t)
	ground := level(c.days, 20, 40)
	warm := c.day(civil.MustOn(2027, 6, 9))
	for hour := range 24 * warm {
		ground.Root[hour] = w.leafy - 0.1
	}
	for hour := 24 * warm; hour < len(ground.Root); hour++ {
		ground.Root[hour] = w.leafy + 0.01
	}
	r := w.walk(c, through{first: level(c.days, 21, 0), on: level(c.days, 18, 40), ground: ground})
	if want := civil.MustOn(2027, 6, 21); c.date(r.out) != want {
		t.Errorf("planted out on %v, not %v", c.date(r.out), want)
	}
}

// TestWalkThroughFrost: one hour of frost sets a dahlia on its tuber back by so many weeks,
// and kills a cutting.
func TestWalkThroughFrost(t *testing.T) {
	c, w := northern(t)
	in := through{first: level(c.days, 21, 0), on: level(c.days, 18, 40), ground: level(c.days, 18, 40)}
	mild := w.walk(c, in)
	cold := level(c.days, 18, 40)
	cold.Air[24*c.day(civil.MustOn(2027, 6, 14))] = w.kill - 0.1
	in.ground = cold
	late := w.walk(c, in)
	if got := dayOf(late.middle.bloom) - dayOf(mild.middle.bloom); got != w.setBack {
		t.Errorf("set back by %d days, not %d", got, w.setBack)
	}
	w.setBack = 0
	if dead := w.walk(c, in); dayOf(dead.middle.died) != c.day(civil.MustOn(2027, 6, 14)) || dead.middle.bloom != never {
		t.Errorf("killed on day %d", dayOf(dead.middle.died))
	}
}

// TestWalkCountsNights: each night below the limit of young leaves counts once, from the day
// after coming up to planting out.
func TestWalkCountsNights(t *testing.T) {
	c, w := northern(t)
	glass := level(c.days, 18, 40)
	for _, day := range []int{10, 11, 12} { // of April
		for hour := range 5 {
			glass.Air[24*c.day(civil.MustOn(2027, 4, day))+hour] = w.harm - slack - 0.1
		}
	}
	glass.Air[24*c.day(civil.MustOn(2027, 4, 20))] = w.harm - slack + 0.1
	r := w.walk(c, through{first: level(c.days, 21, 0), on: glass, ground: level(c.days, 18, 40)})
	if r.middle.coldNights != 3 {
		t.Errorf("%d cold nights, not 3", r.middle.coldNights)
	}
}

// TestWalkCountsStretchedDays: in a dark room every day in leaf is one, in bright glass none;
// and where there is as much light as the warmth of the glass asks for, one kelvin more
// makes every day one, and one mole more none.
func TestWalkCountsStretchedDays(t *testing.T) {
	c, w := northern(t)
	w.start = c.day(civil.MustOn(2027, 4, 12))
	ground, light := level(c.days, 18, 40), w.kind.LightFor(18)
	in := through{first: level(c.days, 21, 0), on: level(c.days, 18, light), ground: ground}
	r := w.walk(c, in)
	dark := r.handOn - dayOf(r.middle.up) - 1
	if r.middle.drawn != dark || dark <= 0 {
		t.Errorf("%d stretched days, not the %d in the dark", r.middle.drawn, dark)
	}
	in.on = level(c.days, 19, light)
	if r = w.walk(c, in); r.middle.drawn != r.out-dayOf(r.middle.up)-1 {
		t.Errorf("%d stretched days, not the %d till it is planted out", r.middle.drawn, r.out-dayOf(r.middle.up)-1)
	}
	in.on = level(c.days, 19, light+1)
	if r = w.walk(c, in); r.middle.drawn != dark {
		t.Errorf("%d stretched days, not %d, with enough light", r.middle.drawn, dark)
	}
}

// TestWalkPotsUp: at the best temperature throughout, a day in leaf is worth a day, so that a
// small pot which tells at 30 % of 48 days is full in the fifteenth; the Monday after, the
// plant is potted up, and grows on at full rate. Near planting out it is left in its pot.
func TestWalkPotsUp(t *testing.T) {
	c, w := northern(t)
	w.start = c.day(civil.MustOn(2027, 3, 29))
	small, err := supply.ContainerNamed("square4half")
	if err != nil {
		t.Fatal(err)
	}
	w.small = &smallPot{small, 0.3 * w.flower, w.meets * math.Sqrt(small.Bench.Value/w.tight)}
	best := level(c.days, w.kind.Grow.Best.Celsius(), 40)
	in := through{first: best, on: best, ground: best}
	r := w.walk(c, in)
	up := dayOf(r.middle.up)
	if got, want := dayOf(r.middle.full), up+1+int(math.Ceil(24*0.3*w.flower)-1)/24; got != want {
		t.Errorf("its pot is full on day %d, not %d", got, want)
	}
	if want := c.monday(dayOf(r.middle.full) + 1); r.potted != want {
		t.Errorf("potted up on day %d, not on the Monday after, %d", r.potted, want)
	}
	if got, want := dayOf(r.middle.touch), up+1+int(math.Ceil(24*w.small.touch)-1)/24; got != want || r.middle.touch >= r.middle.meet {
		t.Errorf("leaves meet in the small pot on day %d, not %d", got, want)
	}
	w.outFrom = r.potted + 13
	if late := w.walk(c, in); late.potted != never {
		t.Errorf("potted up on day %d, thirteen days before it may be planted out", late.potted)
	}
}

// TestWalkHardensInFrame: a plant that is long ready goes into the frame one Monday before the
// one fixed, and is checked for as many days less as the figures say: at the best temperature
// throughout, each of them saves what the check takes of a day.
func TestWalkHardensInFrame(t *testing.T) {
	c, w := northern(t)
	best := level(c.days, w.kind.Grow.Best.Celsius(), 40)
	in := through{first: level(c.days, 21, 0), on: best, frame: best, ground: best}
	w.start = c.day(civil.MustOn(2027, 4, 12))
	w.pots = math.Inf(1) // what the pot does is another rule
	carried := w.walk(c, in)
	w.framed = w.outFrom - 7
	r := w.walk(c, in)
	if r.framed != w.outFrom-7 || r.out != w.outFrom || carried.framed != never {
		t.Errorf("in the frame on day %d and out on %d, not on %d and %d", r.framed, r.out, w.outFrom-7, w.outFrom)
	}
	check := w.kind.Transplant
	want := 24 * (check.Days - check.Framed) * (1 - check.Share)
	if got := float64(carried.middle.bloom - r.middle.bloom); math.Abs(got-want) > 1 || want <= 0 {
		t.Errorf("the frame brings flower forward by %.0f hours, not %.0f", got, want)
	}
	w.framed = w.outFrom + 7 // frost comes into the frame until then
	if late := w.walk(c, in); late.framed != w.outFrom+7 || late.out != w.outFrom+14 {
		t.Errorf("in the frame on day %d and out on %d, not on %d and %d", late.framed, late.out, w.outFrom+7, w.outFrom+14)
	}
}

// TestCalendar holds weeks and Mondays to the calendar of 2026 and 2027 (ISO 8601).
func TestCalendar(t *testing.T) {
	c, _ := northern(t)
	if got, want := c.date(c.firstMonday), civil.MustOn(2026, 9, 7); got != want {
		t.Errorf("first Monday %v, not %v", got, want)
	}
	if got, want := c.date(c.week(c.weeks-1)), civil.MustOn(2027, 12, 27); got != want {
		t.Errorf("last week of %v, not %v", got, want)
	}
	for day, want := range map[civil.Date]civil.Date{
		civil.MustOn(2027, 5, 24): civil.MustOn(2027, 5, 24), civil.MustOn(2027, 5, 25): civil.MustOn(2027, 5, 31),
	} {
		if got := c.date(c.monday(c.day(day))); got != want {
			t.Errorf("the Monday on or after %v is %v, not %v", day, got, want)
		}
	}
}
