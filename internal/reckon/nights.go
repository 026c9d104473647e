package reckon

import (
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/weather"
)

// NightsQuestion asks how cold the nights ahead may be, outside and in each place.
type NightsQuestion struct {
	From   civil.Date            // the first night begins in its evening
	Nights int                   // how many, 1 to 30
	Low    *quantity.Temperature // tonight's low at the patch, as the grower has it; nil: the record's
	Level  *quantity.Temperature // to which heated places are set; nil: the lowest of their levels
	Off    bool                  // the heaters are off, whatever Level says
}

// NightsAnswer is how cold the nights ahead may be, from the years of the record.
type NightsAnswer struct {
	Garden  string       `json:"garden"`
	From    civil.Date   `json:"from" jsonschema:"description=the first night begins in its evening"`
	Nights  int          `json:"nights"`
	Typed   *float64     `json:"low_c,omitempty" jsonschema:"description=tonight's low as it was typed"`
	Years   int          `json:"years" jsonschema:"description=of the record, one answer each"`
	MadeUp  bool         `json:"made_up" jsonschema:"description=no station measured this weather"`
	Outside odds.Amount  `json:"outside_low_c" jsonschema:"description=lowest low of these nights outside"`
	Freezes float64      `json:"freezes" jsonschema:"description=share of the years in which it freezes outside"`
	Places  []NightPlace `json:"places"`
	Notes   []string     `json:"notes"`
}

// NightPlace is how cold it gets in one place.
type NightPlace struct {
	Name    string      `json:"name"`
	Sort    string      `json:"sort"`
	Level   *float64    `json:"level_c" jsonschema:"oneof_type=number;null,description=the level it is held at; null: not heated"`
	Inside  odds.Amount `json:"inside_low_c" jsonschema:"description=mean of the coldest hour inside"`
	Short   odds.Amount `json:"short_k" jsonschema:"description=by how much it falls below its level at worst; 0 where it holds or has none"`
	Fails   float64     `json:"short_share" jsonschema:"description=share of the years in which it falls more than half a kelvin short"`
	Freezes float64     `json:"freezes" jsonschema:"description=share of the years in which it freezes inside"`
	AtRisk  []AtRisk    `json:"at_risk" jsonschema:"description=what stands there and may be hurt"`
}

// Nights answers a NightsQuestion for a garden. It refuses fewer than 1 or more than 30 nights, and a low
// outside -70 to 40 °C.
func Nights(g *garden.Garden, q NightsQuestion) (*NightsAnswer, error) {
	if q.Nights < 1 || q.Nights > 30 {
		return nil, fmt.Errorf("can't look %d nights ahead; ask for 1 to 30", q.Nights)
	}
	if q.Low != nil && (q.Low.Celsius() < -70 || q.Low.Celsius() > 40) {
		return nil, fmt.Errorf("no night on Earth has a low of %.1f °C; check the number and its unit", q.Low.Celsius())
	}
	w := nightsIn(g.Span, q.From, q.Nights)
	years := w.weather(g, q.Low)
	a := &NightsAnswer{Garden: g.Name, From: q.From, Nights: q.Nights, Years: len(years), MadeUp: g.Record.MadeUp, Places: []NightPlace{}}
	if q.Low != nil {
		a.Typed = report.Rounded(q.Low.Celsius(), 2)
	}
	outside := make([]float64, len(years))
	for i, h := range years {
		outside[i] = w.lowest(h.Days)
	}
	a.Outside, a.Freezes = report.RoundedAmount(odds.AmountOf(outside), 2), shareBelow(outside, 0)
	for _, p := range g.Places {
		a.Places = append(a.Places, nightPlace(g, p, w, years, q))
	}
	a.Notes = nightNotes(g, q)
	return a, nil
}

func nightNotes(g *garden.Garden, q NightsQuestion) []string {
	notes := []string{"The odds are those of the record's years for these nights. They are not a forecast: read one, and give tonight's low with --low."}
	if q.Low != nil {
		notes[0] = "Tonight's low is the one you gave. The days around it are the record's; today and tomorrow are shifted as a whole, so that their range stays the same."
	}
	if g.Record.MadeUp {
		notes = append(notes, "This weather is made up from monthly normals: no station measured it.")
	}
	return append(notes, "Count on an unheated cover for no more than 2 K above the air outside. On still, clear nights leaves are colder than the air.")
}

// warmUp is how many days before the first night the simulation of a place starts, so that floor and soil
// have taken up the weather.
const warmUp = 21

// nightWindow is the part of the season that is simulated, and the hours of it that count.
type nightWindow struct {
	span     civil.Span
	offset   int // of the stretch's first day in the season's span
	tonight  int // index of the day whose evening begins the first night
	from, to int // hours that count: noon to noon
}

// nightsIn finds the nights in the season's span by month and day.
func nightsIn(season civil.Span, from civil.Date, nights int) nightWindow {
	first := season.From
	for year := season.From.Year(); year <= season.To.Year(); year++ {
		d := from.MonthDay().In(year)
		if !d.Before(season.From) && !d.AddDays(civil.Days(nights)).After(season.To) {
			first = d
		}
	}
	start := first.AddDays(-warmUp)
	if start.Before(season.From) {
		start = season.From
	}
	tonight := int(first.Sub(start))
	return nightWindow{
		span:    civil.Span{From: start, To: first.AddDays(civil.Days(nights))},
		offset:  int(start.Sub(season.From)),
		tonight: tonight, from: 24*tonight + 12, to: 24*(tonight+nights) + 12,
	}
}

// weather returns the hours of the window, one for each year. A given low shifts today and tomorrow as a
// whole, so that the evening cools down to it.
func (w nightWindow) weather(g *garden.Garden, low *quantity.Temperature) []*weather.Hours {
	years := make([]*weather.Hours, len(g.Members))
	for i, m := range g.Members {
		days := slices.Clone(m.Days[w.offset : w.offset+int(w.span.Days())])
		if low != nil {
			today, morning := &days[w.tonight], &days[w.tonight+1]
			by := low.Sub(morning.Low)
			today.Low, today.High = today.Low.Add(by), today.High.Add(by)
			if today.High.Below(*low) { // it grew warmer overnight that year
				today.High = *low
			}
			morning.High, morning.Low = morning.High.Add(by), *low
		}
		years[i] = weather.Member{Year: m.Year, Span: w.span, Days: days}.Hours(g.Site, g.Sky)
	}
	return years
}

// coldest returns the lowest of the hours that count.
func (w nightWindow) coldest(hourly []float64) float64 { return slices.Min(hourly[w.from:w.to]) }

// lowest returns the lowest low of the mornings after the nights, in °C.
func (w nightWindow) lowest(days []weather.Day) float64 {
	lowest := math.Inf(1)
	for _, d := range days[w.tonight+1:] {
		lowest = min(lowest, d.Low.Celsius())
	}
	return lowest
}

// nightPlace simulates one place in every year.
func nightPlace(g *garden.Garden, p exchange.Place, w nightWindow, years []*weather.Hours, q NightsQuestion) NightPlace {
	setting, level := nightSetting(p, q.Level, w.span.From)
	if q.Off {
		setting, level = place.Off(), nil
	}
	inside, short := make([]float64, len(years)), make([]float64, len(years))
	for i, h := range years {
		course := p.Model.Run(h, g.Site, setting)
		inside[i] = w.coldest(course.Air)
		if level == nil {
			inside[i] = min(inside[i], promised(p, w.lowest(h.Days)))
		}
		if level != nil {
			short[i] = max(0, level.Celsius()-inside[i])
		}
	}
	a := NightPlace{Name: p.Name, Sort: string(p.Sort), Inside: report.RoundedAmount(odds.AmountOf(inside), 2), Short: report.RoundedAmount(odds.AmountOf(short), 2)}
	if level != nil {
		a.Level = report.Rounded(level.Celsius(), 2)
		a.Fails = 1 - shareBelow(short, 0.5)
	}
	a.Freezes = shareBelow(inside, 0)
	a.AtRisk = atRisk(g, p, inside)
	return a
}

// promised is the highest temperature, in °C, that an unheated place is counted on for on a frost night
// with that low outside: the low plus the lift measured for its cover. The hourly model may be warmer,
// because the low may come after sunrise and the first sun warms a house. That can't be relied on.
func promised(p exchange.Place, low float64) float64 {
	house, covered := p.Model.(place.Covered)
	if !covered || low > 0 {
		return math.Inf(1)
	}
	return low + float64(house.Cover.FrostLift)
}

// nightSetting returns the setting and level of a place: the level asked for if it is heated, or the lowest
// of its levels. The level is nil if the place is not heated.
func nightSetting(p exchange.Place, asked *quantity.Temperature, on civil.Date) (place.Setting, *quantity.Temperature) {
	var lowest *quantity.Temperature
	for _, s := range p.Levels {
		if level, heated := s.At(on); heated && (lowest == nil || level.Below(*lowest)) {
			lowest = &level
		}
	}
	if lowest != nil && asked != nil {
		lowest = asked
	}
	if lowest == nil {
		return place.Off(), nil
	}
	return place.Steadily(*lowest), lowest
}

// shareBelow returns the share of the figures at or below a limit.
func shareBelow(figures []float64, limit float64) float64 {
	count := 0
	for _, x := range figures {
		if x <= limit {
			count++
		}
	}
	return *report.Rounded(float64(count)/float64(len(figures)), 4)
}
