package season

// programmeRow numbers the limit of a bench in a week.
func (m *Planner) BenchRow(bench, week int) int { return bench*m.Weeks + week }

// hoursRow numbers the limit of one's own hours in a week.
func (m *Planner) HoursRow(week int) int { return 2*len(m.Given.Places)*m.Weeks + week }

// weekOn returns the week of a day.
func (m *Planner) WeekOn(day int) int { return (day - m.FirstMonday) / 7 }

// rowCount is how many rows are numbered.
func (m *Planner) RowCount() int { return (2*len(m.Given.Places) + 1) * m.Weeks }
