package desk

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// followed lays the invented garden open with a decision worked out by hand: of a lot, 4
// are to be started in the week of 29 March, up by 14 April (10 to 20), planted out by 25
// May (20 May to 1 June), in flower by 20 July (10 July to 1 August).
func followed(t *testing.T, lines ...string) (*Scratch, stock.Lot) {
	t.Helper()
	day := civil.MustOn(2027, time.January, 20)
	d, err := DemoDesk(day, func() time.Time { return time.Date(2027, 1, 20, 12, 0, 0, 0, time.UTC) })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = d.Close() })
	var lot stock.Lot
	for _, l := range d.Shelf().Lots {
		if l.Kind == "dahlia" && len(l.Standing) == 1 && l.Standing[0].Spot.Form == stock.Clump && l.Count() >= 4 {
			lot = l
		}
	}
	if len(lines) == 0 {
		lines = []string{"whole"}
	}
	var said []string
	for _, how := range lines {
		said = append(said, fmt.Sprintf(`{"id":"%s %s","code":%q,"kind":"dahlia","variety":%q,"how":%q,"start":"2027-03-29","count":4,
			"up":{"early":"2027-04-10","middle":"2027-04-14","late":"2027-04-20"},"out":{"early":"2027-05-20","middle":"2027-05-25","late":"2027-06-01"},
			"flower":{"early":"2027-07-10","middle":"2027-07-20","late":"2027-08-01"}}`, lot.Code, how, lot.Code, lot.Name(), how))
	}
	write(t, d, "2027-01-20", "decided", `{"plan":"by hand","lines":[`+strings.Join(said, ",")+`]}`)
	return d, lot
}

// write writes an entry of a day down; LOT in its body is the lot's code.
func write(t testing.TB, d *Scratch, on, kind, body string) []stock.Added {
	t.Helper()
	e, err := d.book.NewEntry(kind, []byte(body))
	if err != nil {
		t.Fatal(err)
	}
	if e.On, err = civil.Parse(on); err != nil {
		t.Fatal(err)
	}
	added, err := d.Append(e)
	if err != nil {
		t.Fatalf("%s %s: %v", on, kind, err)
	}
	return added
}

// on tells the first lot's steps as they are on a day, and whether it is late.
func on(t *testing.T, d *Scratch, day string) (steps string, late bool) {
	t.Helper()
	today, err := civil.Parse(day)
	if err != nil {
		t.Fatal(err)
	}
	a := d.Against(today)
	if a == nil || len(a.Lots) == 0 {
		t.Fatalf("on %s nothing is held against the plan", day)
	}
	var all []string
	for _, s := range a.Lots[0].Steps {
		says := "not yet"
		switch {
		case !s.On.IsZero():
			says = s.Says()
		case s.Missing:
			says = "not written down"
		case s.Late:
			says = "overdue"
		}
		all = append(all, says)
	}
	return strings.Join(all, "; "), a.Lots[0].IsLate()
}

func TestDatesAreHeldAgainstThePlan(t *testing.T) {
	d, lot := followed(t)
	is := func(day, want string, wantLate bool) {
		t.Helper()
		if got, late := on(t, d, day); got != want || late != wantLate {
			t.Errorf("on %s: %q, late %v; want %q, %v", day, got, late, want, wantLate)
		}
	}
	say := func(day, kind, rest string) { write(t, d, day, kind, fmt.Sprintf(`{"lot":%q,%s}`, lot.ID, rest)) }

	is("2027-04-04", "not yet; not yet; not yet; not yet", false) // the last day of its week
	is("2027-04-05", "overdue; not yet; not yet; not yet", true)
	say("2027-03-31", "started", `"count":1,"to":{"form":"pot","place":"warm room"}`)
	is("2027-04-05", "overdue; not yet; not yet; not yet", true) // one of four is not half
	say("2027-04-02", "started", `"form":"clump","count":3,"to":{"form":"pot","place":"warm room"}`)
	is("2027-04-05", "in its week; not yet; not yet; not yet", false)
	is("2027-04-21", "in its week; overdue; not yet; not yet", true)
	say("2027-04-12", "up", `"form":"pot","count":1`)
	say("2027-04-20", "up", `"form":"pot","count":1`)
	is("2027-04-21", "in its week; 6 days later than the middle date, within the dates promised; not yet; not yet", false)
	is("2027-06-02", "in its week; 6 days later than the middle date, within the dates promised; overdue; not yet", true)
	say("2027-06-04", "planted out", `"form":"pot","count":4,"to":{"place":"patch","bed":"1"}`)
	is("2027-06-05", "in its week; 6 days later than the middle date, within the dates promised; 10 days later than the middle date, later than promised; not yet", true)
	say("2027-07-09", "first flower", `"form":"plant"`) // no count: all that stand there
	is("2027-09-01", "in its week; 6 days later than the middle date, within the dates promised; 10 days later than the middle date, later than promised; 11 days sooner than the middle date, sooner than promised", false)
}

// TestWhatNobodyWroteDownIsNotLate plants out without a word of shoots before; and a lot
// that is used up is late with nothing.
func TestWhatNobodyWroteDownIsNotLate(t *testing.T) {
	d, lot := followed(t)
	write(t, d, "2027-04-08", "started", fmt.Sprintf(`{"lot":%q,"count":4,"to":{"form":"pot","place":"warm room"}}`, lot.ID))
	write(t, d, "2027-05-25", "planted out", fmt.Sprintf(`{"lot":%q,"form":"pot","count":4,"to":{"place":"patch","bed":"1"}}`, lot.ID))
	if got, late := on(t, d, "2027-05-26"); got != "4 days later than its week; not written down; on the middle date; not yet" || late {
		t.Errorf("%q, late %v", got, late)
	}
	for _, s := range standingOf(t, d, lot) {
		write(t, d, "2027-05-27", "destroyed", fmt.Sprintf(`{"lot":%q,"form":%q,"place":%q,"all":true}`, lot.ID, s.Spot.Form, s.Spot.Place))
	}
	if got, late := on(t, d, "2027-09-01"); late {
		t.Errorf("nothing is left, and it is late: %q", got)
	}
}

func standingOf(t *testing.T, d *Scratch, lot stock.Lot) (all []stock.Standing) {
	t.Helper()
	d.Read(func(b *stock.Book) {
		l, err := b.Find(lot.ID.String())
		if err != nil {
			t.Error(err)
		}
		all = l.Standing
	})
	return all
}

// TestWaysOfOneLotAreToldApart raises a lot whole and divided: what is divided counts for
// the divided alone.
func TestWaysOfOneLotAreToldApart(t *testing.T) {
	d, lot := followed(t, "whole", "divided")
	born := write(t, d, "2027-03-29", "divided", fmt.Sprintf(`{"from":%q,"clumps":1,"good":4}`, lot.ID))[0].Born
	write(t, d, "2027-03-30", "started", fmt.Sprintf(`{"lot":%q,"count":4,"to":{"form":"pot","place":"warm room"}}`, born[0].Code))
	for _, l := range d.Against(civil.MustOn(2027, time.April, 9)).Lots {
		if !l.IsLate() && l.how == "whole" {
			t.Errorf("%s was not started whole, and is not late", l.Code)
		}
		if got, want := !l.Steps[0].On.IsZero(), l.how == "divided"; got != want {
			t.Errorf("%s, %s: started is %v", l.Code, l.how, got)
		}
	}
}

// TestWhatIsNotDividedYetIsLate raises a lot by dividing, and nothing is divided.
func TestWhatIsNotDividedYetIsLate(t *testing.T) {
	d, _ := followed(t, "whole", "divided")
	if late := d.Against(civil.MustOn(2027, time.April, 9)).Late(); len(late) != 2 {
		t.Errorf("%d of two batches are late", len(late))
	}
}

// TestADecisionOfBeforeTellsNoDates reads a decision whose lines have no dates, as they
// were once written: kinds are counted still.
func TestADecisionOfBeforeTellsNoDates(t *testing.T) {
	d, lot := followed(t)
	write(t, d, "2027-01-20", "decided", fmt.Sprintf(`{"plan":"of before","lines":[{"id":%q,"kind":"dahlia","start":"2027-03-29","count":4}]}`, lot.Code))
	a := d.Against(civil.MustOn(2027, time.June, 1))
	if a.Plan != "of before" || len(a.Lots) != 0 || len(a.Late()) != 0 || len(a.Lines) != 1 || a.Lines[0].Due != 4 {
		t.Errorf("%+v", a)
	}
}
