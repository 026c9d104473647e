package season

// choice is an outcome with all that counts of it when ways are weighed against each other,
// for one plant. Rows are numbered as by programmeRow and hoursRow.
type Choice struct {
	*outcome
	Gain        float64 // the outcome's, at hand
	Money       float64 // mix and containers, units of the currency
	BenchHeat   float64 // electricity of the warm bench that it begins on, units of the currency
	StretchCost float64 // what its stretched days take off its worth, units of the currency
	Takes       []Take  // m² by bench and week
	Hours       []Take  // hours of work by week
	Use         []Days  // by burner: the days on which it wants it on; from is never where it does not
	Place       int     // whose level steps, on some of the days from and to which it is so; -1: none
	Steps       [2]int  // the first and last of those days
}

// take is so much of what a row limits.
type Take struct {
	Row    int
	Amount float64
}

// Start is the day on which the way begins.
func (c *Choice) Start() int { return c.start }

// Route names the way through the places.
func (c *Choice) Route() string { return c.route.name }

// StretchedDays is how many days, in the mean of the years, the plant stands too warm for its light.
func (c *Choice) StretchedDays() float64 { return c.drawn }

// IsDirect reports whether the way leads straight into the ground. It takes no room under cover,
// so that a plant need never be left out.
func (c *Choice) IsDirect() bool { return c.route.direct }

// beats reports whether c is no worse than d in anything.
func (c *Choice) beats(d *Choice) bool {
	if c.Gain < d.Gain || c.Money > d.Money || c.BenchHeat > d.BenchHeat || c.StretchCost > d.StretchCost || c.Place >= 0 && (c.Steps[0] > d.Steps[0] || c.Steps[1] < d.Steps[1]) {
		return false
	}
	for i, used := range c.Use {
		if used.From != Never && (used.From < d.Use[i].From || used.To > d.Use[i].To) {
			return false
		}
	}
	return within(c.Takes, d.Takes) && within(c.Hours, d.Hours)
}

// within reports whether no row of a asks for more than that of b; both are in the order of
// their rows.
func within(a, b []Take) bool {
	for _, t := range a {
		for len(b) > 0 && b[0].Row < t.Row {
			b = b[1:]
		}
		if len(b) == 0 || b[0].Row != t.Row || b[0].Amount < t.Amount {
			return false
		}
	}
	return true
}
