package plans

import (
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
	"eyeup/season"
	"eyeup/week"
)

// gardenTables makes the tables of a garden: its stock and places, and a plan with its jobs and needs.
// Where no plan was named and none can be made, only stock and places are written, and a notice says why.
func gardenTables(g *garden.Garden, followed *Followed, plan string, today civil.Date) (tables []exchange.Table, notices []string, err error) {
	tables, notices = []exchange.Table{exchange.StockTable(g.Stock), placesTable(g)}, []string{}
	worked, p, err := Planned(g, followed, plan, today)
	switch {
	case err != nil && plan == "":
		return tables, append(notices, "Only stock and places are written, because no plan could be made: "+err.Error()+"."), nil
	case err != nil:
		return nil, nil, err
	case worked.Weather.MadeUp:
		notices = append(notices, "The weather is made up, so every date of the plan is made up too.")
	}
	return append(tables, batchesTable(p), startsTable(p), staysTable(p), benchesTable(p),
		jobsTable(worked.JobsOf(p.Name)), needsTable(p), frostTable(worked.FrostWeeks)), notices, nil
}

// TablesBook writes a garden's tables to w as one XLSX workbook.
func TablesBook(g *garden.Garden, followed *Followed, plan string, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	tables, notices, err := gardenTables(g, followed, plan, today)
	if err != nil {
		return nil, err
	}
	if err := exchange.WriteXLSX(w, tables); err != nil {
		return nil, err
	}
	return tablesAnswer("workbook", tables, notices), nil
}

// TablesFolder writes a garden's tables as CSV files, with a description of their types and units. create
// opens each file by its name.
func TablesFolder(g *garden.Garden, followed *Followed, plan string, today civil.Date, create func(name string) (io.WriteCloser, error)) (*report.WrittenAnswer, error) {
	tables, notices, err := gardenTables(g, followed, plan, today)
	if err != nil {
		return nil, err
	}
	if err := exchange.WritePackage(exchange.Package{Garden: g.Name, Written: today, Tables: tables}, create); err != nil {
		return nil, err
	}
	return tablesAnswer("tables", tables, notices), nil
}

func tablesAnswer(what string, tables []exchange.Table, notices []string) *report.WrittenAnswer {
	rows := 0
	for _, t := range tables {
		rows += len(t.Rows)
	}
	return &report.WrittenAnswer{What: what, Count: rows, Of: fmt.Sprintf("rows in %d tables", len(tables)), LeftOut: []string{}, Notices: notices}
}

func placesTable(g *garden.Garden) exchange.Table {
	t := exchange.Table{Name: "places", Says: "Where stock can stand.", Fields: []exchange.Field{
		{Name: "place", Type: exchange.Text, Says: "its name"},
		{Name: "sort", Type: exchange.Text, Says: "store, room, glass, frame or ground"},
		{Name: "crates", Type: exchange.Whole, Unit: "crates", Says: "that a store takes"},
		{Name: "bench", Type: exchange.Number, Unit: "m2", Says: "bench, shelf or bed"},
		{Name: "spacing", Type: exchange.Number, Unit: "m", Says: "from plant to plant in the ground"},
	}}
	for _, p := range g.Places {
		t.Rows = append(t.Rows, []any{p.Name, string(p.Sort), some(p.Crates), amount(float64(p.Bench)), amount(float64(p.Spacing))})
	}
	return t
}

// some is a count for a table's cell; an empty cell for 0.
func some(n int) any {
	if n == 0 {
		return nil
	}
	return n
}

// amount is a measure for a table's cell; an empty cell for 0.
func amount(x float64) any {
	if x == 0 {
		return nil
	}
	return x
}

func date(name, says string) exchange.Field {
	return exchange.Field{Name: name, Type: exchange.Day, Says: says}
}

func word(name, says string) exchange.Field {
	return exchange.Field{Name: name, Type: exchange.Text, Says: says}
}

func figure(name, unit, says string) exchange.Field {
	return exchange.Field{Name: name, Type: exchange.Number, Unit: unit, Says: says}
}

func whole(name, unit, says string) exchange.Field {
	return exchange.Field{Name: name, Type: exchange.Whole, Unit: unit, Says: says}
}

// withSpread makes the three fields of a date with its range.
func withSpread(name, says string) []exchange.Field {
	return []exchange.Field{
		date(name+"_early", says+"; one year in ten earlier"), date(name+"_middle", says+"; even odds"), date(name+"_late", says+"; one year in ten later"),
	}
}

func batchesTable(p *season.Plan) exchange.Table {
	t := exchange.Table{Name: "batches", Says: "What the plan “" + p.Name + "” does with each batch. A date is empty where it is not reached in that many years."}
	t.Fields = []exchange.Field{
		word("batch", "its name in the plan"), word("code", "code of its lot"), word("kind", "kind of plant"), word("variety", "name of the variety"),
		word("form", "form it is stored in"), whole("count", "plants", "plants raised"), word("container", "container of each until planting out; empty: straight into the ground"), word("begins_in", "first container"),
	}
	for _, f := range [][2]string{{"eyed", "eyes swollen"}, {"up", "shoots through the mix"}, {"hand_on", "moved from the warm place to light"}, {"pot_up", "moved from a small pot to a larger one"}, {"frame", "moved to a frame to harden"}, {"plant_out", "planted out"}, {"first_flower", "first flower"}} {
		t.Fields = append(t.Fields, withSpread(f[0], f[1])...)
	}
	t.Fields = append(t.Fields, figure("gain_low", "weeks", "weeks of flower gained; one year in ten less"), figure("gain_middle", "weeks", "weeks of flower gained; even odds"), figure("gain_high", "weeks", "weeks of flower gained; one year in ten more"),
		whole("years_without_flower", "years", "years in which half of the batch does not flower before frost"), whole("years_lost", "years", "years in which cold kills it"))
	for _, b := range p.Batches {
		row := []any{b.ID, b.Code, b.Kind, b.Variety, b.Form, b.Count, b.Container, b.BeginsIn}
		for _, w := range []civil.When{b.Dates.Eyed, b.Dates.Up, b.Dates.HandOn, b.Dates.PotUp, b.Dates.Frame, b.Dates.PlantOut, b.Dates.FirstFlower} {
			row = append(row, w.Early, w.Middle, w.Late)
		}
		t.Rows = append(t.Rows, append(row, b.Gain.Low, b.Gain.Middle, b.Gain.High, b.NoFlower, b.Lost))
	}
	return t
}

func startsTable(p *season.Plan) exchange.Table {
	t := exchange.Table{Name: "starts", Says: "How many of each batch are started in which week.", Fields: []exchange.Field{
		word("batch", "its name in the plan"), date("week", "its Monday"), whole("count", "plants", "plants started"), word("route", "places they pass through"),
	}}
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			t.Rows = append(t.Rows, []any{b.ID, s.Week, s.Count, s.Route})
		}
	}
	return t
}

func staysTable(p *season.Plan) exchange.Table {
	t := exchange.Table{Name: "stays", Says: "Where each batch stands from when to when, by middle dates.", Fields: []exchange.Field{
		word("batch", "its name in the plan"), word("place", "where it stands"), date("from", "first day"), date("to", "last day"), figure("area", "m2", "the most room it takes there"),
	}}
	for _, b := range p.Batches {
		for _, s := range b.Stays {
			t.Rows = append(t.Rows, []any{b.ID, s.Place, s.From, s.To, s.AreaM2})
		}
	}
	return t
}

func benchesTable(p *season.Plan) exchange.Table {
	t := exchange.Table{Name: "benches", Says: "How full each place is, week by week, and what its heat costs.", Fields: []exchange.Field{
		word("place", "its name"), date("week", "its Monday"), figure("used", "m2", "room taken"), figure("room", "m2", "room there is"),
		figure("heat_low", p.Cost.Currency, "heat bill; one year in ten less"), figure("heat_middle", p.Cost.Currency, "heat bill; even odds"), figure("heat_high", p.Cost.Currency, "heat bill; one year in ten more"),
	}}
	for _, pl := range p.Places {
		for _, w := range pl.Weeks {
			row := []any{pl.Place, w.Week, w.UsedM2, amount(w.RoomM2), nil, nil, nil}
			if w.Cost != nil {
				row[4], row[5], row[6] = w.Cost.Low, w.Cost.Middle, w.Cost.High
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

func jobsTable(jobs []week.Job) exchange.Table {
	t := exchange.Table{Name: "jobs", Says: "What is due, week by week.", Fields: []exchange.Field{
		date("week", "its Monday"), word("what", "the job"), word("kind", "kind of plant"), whole("count", "plants", "plants it is for"), word("where", "the place"),
		word("sorts", "the varieties"), figure("time", "min", "time it takes; empty: not known"), word("why", "reason it is due"),
	}}
	for _, j := range jobs {
		t.Rows = append(t.Rows, []any{j.Week, j.What, j.Kind, some(j.Count), j.Where, strings.Join(j.Sorts, ", "), amount(j.Minutes), j.Why})
	}
	return t
}

func needsTable(p *season.Plan) exchange.Table {
	t := exchange.Table{Name: "needs", Says: "What to get before the season needs it.", Fields: []exchange.Field{
		word("what", "thing to get"), figure("low", "", "amount; one year in ten less"), figure("middle", "", "amount; even odds"), figure("high", "", "amount; one year in ten more"), word("unit", "unit of the amounts"),
		figure("cost", p.Cost.Currency, "cost of the middle amount; empty: no price is known"), date("by", "day it is needed by"),
	}}
	for _, n := range p.ToGet {
		t.Rows = append(t.Rows, []any{n.What, n.Amount.Low, n.Amount.Middle, n.Amount.High, n.Unit, amount(n.Cost), n.By})
	}
	return t
}

func frostTable(weeks []season.FrostWeek) exchange.Table {
	t := exchange.Table{Name: "frost", Says: "How often it freezes in the patch.", Fields: []exchange.Field{
		date("week", "its Monday"), figure("share", "of years", "share of years in which it freezes in that week"),
	}}
	for _, w := range weeks {
		t.Rows = append(t.Rows, []any{w.Week, w.Share})
	}
	return t
}

// FolderOf writes the garden as a folder of text files. create opens each file by its name. It does not
// write weather and logger files: it returns their names for the caller to copy.
func FolderOf(g *garden.Garden, create func(name string) (io.WriteCloser, error)) (a *report.WrittenAnswer, files []string, err error) {
	if err := exchange.WriteGarden(g.Garden, create); err != nil {
		return nil, nil, err
	}
	return &report.WrittenAnswer{What: "folder", Count: len(g.Stock), Of: "rows of stock", LeftOut: []string{}, Notices: []string{}}, g.Files(), nil
}

// BookFolder writes a book as a folder, from which the same book can be made again. create opens each file
// by its name.
func BookFolder(g *garden.Garden, book *stockbook.Book, create func(name string) (io.WriteCloser, error)) (*report.WrittenAnswer, error) {
	if err := book.WriteFolder(create); err != nil {
		return nil, err
	}
	return &report.WrittenAnswer{What: "folder", Count: len(g.Stock), Of: "rows of stock", LeftOut: []string{}, Notices: []string{}}, nil
}
