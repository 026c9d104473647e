package page

import (
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/plans"
	"eyeup/internal/sources"
	"eyeup/quantity"
	"eyeup/season"
)

// seasonView is the plans side by side.
type seasonView struct {
	Answer  *plans.SeasonAnswer
	Behind  int
	Plan    *season.Plan // the one that is shown in full
	Drawn   template.HTML
	Changed bool
	Change  changeView
	Heated  []string // places that some plan heats
	Asks    url.Values

	LotChoices []lotChoice
	Against    *desk.Against
	Best       bestView
	display    display
}

// changeView is the form by which the season is changed.
type changeView struct {
	Risk   string
	Levels []levelChoice
	Prices []priceChoice
	Lot    string
	Plant  string
	Start  string
}

// levelChoice is a heated place and the levels it may have.
type levelChoice struct {
	Place   string
	Chosen  string
	Choices []string
}

// priceChoice is a fuel and what a kilowatt-hour of it costs.
type priceChoice struct {
	Fuel, Price, Now string
	Currency         string
}

// season shows the plans, one of them in full, as they are or with a change.
func (s *server) season(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	change, err := s.changeOf(r)
	if err != nil {
		return err
	}
	v := seasonView{Changed: !change.IsZero(), Asks: r.Form}
	if err = s.answer(&v, r, change); err != nil {
		return err
	}
	if v.Plan, err = planNamed(v.Answer, r.FormValue("plan"), v.Answer.Followed); err != nil {
		return err
	}
	if v.Drawn, err = r.drawing(v.Answer, v.Plan.Name); err != nil {
		return err
	}
	v.Heated, v.Against = heated(v.Answer), s.desk.Against(s.today())
	v.Change, v.display = s.changeForm(r), r.display
	for _, h := range s.desk.Garden().Stock {
		if h.Plant > 0 {
			v.LotChoices = append(v.LotChoices, lotChoice{h.Code, h.Variety.Name, h.Plant})
		}
	}
	return s.show(r, http.StatusOK, "season", view{Title: "Season", Here: "season", Main: v, Again: v.again(), From: sources.OfSeason(s.desk, v.Answer, v.Plan)})
}

// answer takes the season that was asked for: the best plans if they were found and are to
// be shown, else the everyday ones.
func (s *server) answer(v *seasonView, r *request, change desk.Change) (err error) {
	v.Best.Best, v.Best.Known = s.desk.BestOf(s.today(), change)
	v.Best.Shown = r.FormValue("best") != ""
	switch {
	case v.Best.Found():
		if v.Answer, err = s.desk.OpenedBest(s.today(), change, r.FormValue("plan")); err != nil {
			return notFound(err.Error())
		}
	case v.Changed:
		v.Answer, err = s.desk.SeasonWith(s.today(), change)
	default:
		var w desk.Worked
		w, err = s.desk.Season(s.today())
		v.Answer, v.Behind = w.SeasonAnswer, w.Behind
	}
	return err
}

// planNamed returns the plan asked for, the one that is followed, or the usual one.
func planNamed(a *plans.SeasonAnswer, asked, followed string) (*season.Plan, error) {
	for _, name := range []string{asked, followed, season.Usual} {
		for _, p := range a.Plans {
			if p.Name == name {
				return p, nil
			}
		}
		if asked != "" && name == asked {
			return nil, notFound(fmt.Sprintf("there is no plan named %q. Choose one on the season page", asked))
		}
	}
	return a.Plans[0], nil
}

// drawing returns the picture of a plan, and lets its style pass.
func (r *request) drawing(a *plans.SeasonAnswer, plan string) (template.HTML, error) {
	svg, err := a.Picture(plan, r.display.Units)
	if err != nil {
		return "", err
	}
	text := string(svg)
	if from, to := strings.Index(text, "<style>"), strings.Index(text, "</style>"); from >= 0 && to > from {
		sum := sha256.Sum256([]byte(text[from+len("<style>") : to]))
		r.style = append(r.style, base64.StdEncoding.EncodeToString(sum[:]))
	}
	return template.HTML(text), nil // drawn by package picture, which escapes every name
}

func heated(a *plans.SeasonAnswer) []string {
	var names []string
	for _, pl := range a.Plans[0].Places {
		for _, p := range a.Plans {
			for _, at := range p.Places {
				if at.Place == pl.Place && at.Heat != nil {
					names = append(names, pl.Place)
					break
				}
			}
			if len(names) > 0 && names[len(names)-1] == pl.Place {
				break
			}
		}
	}
	return names
}

// changeOf reads the change that was asked for: risk, level.PLACE, price.FUEL, and
// for a lot how many are planted (plant) and when it is started (start).
func (s *server) changeOf(r *request) (desk.Change, error) {
	c := desk.Change{Levels: map[string]*quantity.Temperature{}, HeatPrice: map[string]float64{}, Plant: map[string]int{}, Starts: map[string]civil.Date{}}
	for name := range r.Form {
		value := strings.TrimSpace(r.FormValue(name))
		if value == "" {
			continue
		}
		what, of, _ := strings.Cut(name, ".")
		var err error
		switch what {
		case "risk":
			c.Risk, err = quantity.ParseShare(value)
		case "level":
			c.Levels[of], err = levelOrOff(value)
		case "price":
			c.HeatPrice[of], err = strconv.ParseFloat(value, 64)
		case "plant":
			if lot := r.FormValue("lot"); lot != "" {
				c.Plant[lot], err = strconv.Atoi(value)
			}
		case "start":
			if lot := r.FormValue("lot"); lot != "" {
				c.Starts[lot], err = civil.Parse(value)
			}
		}
		if err != nil {
			return c, refused("%s: %v", name, err)
		}
	}
	return c, nil
}

// levelOrOff reads a level; off is none.
func levelOrOff(text string) (*quantity.Temperature, error) {
	if text == "off" {
		return nil, nil
	}
	t, err := quantity.ParseTemperature(text)
	return &t, err
}

// changeForm fills the form with what was asked and what there is.
func (s *server) changeForm(r *request) changeView {
	g := s.desk.Site()
	v := changeView{Risk: r.FormValue("risk"), Lot: r.FormValue("lot"), Plant: r.FormValue("plant"), Start: r.FormValue("start")}
	for _, p := range s.desk.Places(s.today()) {
		if len(p.Levels) == 0 {
			continue
		}
		choice := levelChoice{Place: p.Name, Chosen: r.FormValue("level." + p.Name)}
		for _, l := range p.Levels {
			choice.Choices = append(choice.Choices, l.Setting)
		}
		v.Levels = append(v.Levels, choice)
		if p.Fuel != "" && p.FuelPrice > 0 {
			v.Prices = append(v.Prices, priceChoice{p.Fuel, r.FormValue("price." + p.Fuel), figure(p.FuelPrice, 3), g.Currency})
		}
	}
	return v
}

// follow writes down that a plan is followed, with what it promises today: a plan of every day by
// its name, one of the best that were found with its decisions held.
func (s *server) follow(r *request) error {
	body, err := s.decision(r)
	if err != nil {
		return err
	}
	id, err := s.append(r, "decided", s.today(), body)
	if err != nil {
		return err
	}
	r.goTo("/?wrote=" + id.String())
	return nil
}

// decision is the body of the entry by which a plan is followed.
func (s *server) decision(r *request) ([]byte, error) {
	plan := r.FormValue("plan")
	if r.FormValue("best") != "" {
		body, err := s.desk.HoldBest(s.today(), plan)
		if err != nil {
			return nil, refused("%v", err)
		}
		return body, nil
	}
	worked, err := s.desk.Season(s.today())
	if err != nil {
		return nil, err
	}
	body, err := worked.Decide(plan)
	if err != nil {
		return nil, notFound(err.Error())
	}
	return body, nil
}
