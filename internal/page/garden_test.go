package page

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"eyeup/internal/desk"
)

// partForm returns the form of a part as the page sends it.
func partForm(t *testing.T, d *desk.Desk, what, name string) url.Values {
	t.Helper()
	parts, err := d.Parts()
	if err != nil {
		t.Fatal(err)
	}
	form := url.Values{"what": {what}, "name": {name}}
	for _, p := range parts {
		if p.What != what || p.Name != name {
			continue
		}
		for _, g := range p.Groups {
			for _, f := range g.Fields {
				form.Set("key."+f.Key, f.Value)
			}
			if g.More != nil {
				form["under"], form["new"], form["value"] = append(form["under"], g.More.Under), append(form["new"], ""), append(form["value"], "")
			}
		}
	}
	return form
}

// TestTheGardenIsAskedInWords opens every part: no field is called by a key of a file.
func TestTheGardenIsAskedInWords(t *testing.T) {
	h, _ := writing(t)
	_, body := get(t, h, "/garden?part=patch")
	labels := regexp.MustCompile(`<label>([^<]*)`).FindAllStringSubmatch(body, -1)
	if len(labels) < 150 {
		t.Fatalf("only %d fields are asked", len(labels))
	}
	for _, l := range labels {
		if regexp.MustCompile(`_|\w\.\w|\d\.`).MatchString(strings.ReplaceAll(l[1], "no. ", "")) {
			t.Errorf("a field is called %q", l[1])
		}
	}
	for _, want := range []string{
		`<details id="garden/patch" open><summary>wishes for the patch</summary>`, `<summary>variety 1: Gable Red</summary>`, `<summary>mix 2: dahlia by colour</summary>`,
		`<summary>mix 3: one more</summary>`, `<label>share of mid <small>of the kind&#39;s plants, such as 25%</small>`, `<summary>place: cold frame</summary>`, `<summary>place: patch, open ground</summary>`,
		`<label>length of a row <small>such as 30 ft</small>`, `<option value="sprout.base">no sprouting at or below</option>`,
	} {
		if !strings.Contains(body, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
}

// TestWishesAreRefusedInWords sends wishes that can't be: what is refused is called as its field
// is, what was typed is kept, and nothing is written.
func TestWishesAreRefusedInWords(t *testing.T) {
	h, d := writing(t)
	for _, c := range []struct{ key, value, says string }{
		{"key.mix.1.want.early", "135%", "Mix 1, share of early: "},
		{"key.mix.2.slack", "", "Mix 2, deviation allowed at no cost: it is missing"},
		{"key.variety.1.least", "some", "Variety 1, fewest worth planting: expected a whole number from 1 to "},
		{"key.variety.11.name", "Sloe Morning", "Variety 11, kind: it is missing"},
		{"key.low", "130 cm", "A variety is tall from: give it together with “a variety is low up to”"},
		{"key.row_length", "30", "Length of a row: "},
	} {
		form := partForm(t, d, "garden", "patch")
		form.Set(c.key, c.value)
		status, body, _ := post(t, h, "/garden", form)
		if status != http.StatusUnprocessableEntity || !strings.Contains(said(body), c.says) || !strings.Contains(body, `name="`+c.key+`" value="`+c.value+`"`) {
			t.Errorf("%s = %q: status %d: %s", c.key, c.value, status, gist(body))
		}
	}
	if got := d.Site().Patch.Mixes[0].Want[0].Of; got != 0.35 {
		t.Errorf("the wish has become %v", got)
	}
}

// TestOneMoreIsWished adds a variety whose name is a number, a mix, a share and a spacing.
func TestOneMoreIsWished(t *testing.T) {
	h, d := writing(t)
	form := partForm(t, d, "garden", "patch")
	for key, value := range map[string]string{
		"variety.11.name": "1917", "variety.11.kind": "dahlia", "variety.11.plant": "3",
		"mix.3.kind": "dahlia", "mix.3.by": "height", "mix.3.slack": "5%",
	} {
		form.Set("key."+key, value)
	}
	for i, under := range form["under"] {
		switch under {
		case "spacing.":
			form["new"][i], form["value"][i] = "anemone", "6 in"
		case "mix.2.want.":
			form["new"][i], form["value"][i] = "red", "10%"
		case "mix.3.want.":
			form["new"][i], form["value"][i] = "tall", "20%"
		}
	}
	if status, body, _ := post(t, h, "/garden", form); status != http.StatusSeeOther {
		t.Fatal(status, gist(body))
	}
	p := d.Site().Patch
	if p.Varieties[10].Name != "1917" || p.Spacing["anemone"] < 0.15 || len(p.Mixes[1].Want) != 2 || p.Mixes[2].Want[0].Name != "tall" {
		t.Errorf("%+v", p)
	}
	form = partForm(t, d, "garden", "figures")
	for i, under := range form["under"] {
		if under == "dahlia." {
			form["new"][i], form["value"][i] = "sprout.base", "47F"
		}
	}
	if status, body, _ := post(t, h, "/garden", form); status != http.StatusSeeOther {
		t.Fatal(status, gist(body))
	}
	if own := d.Site().Figures["dahlia"]; len(own) != 1 || own[0].Key != "sprout.base" || own[0].Text != "47F" {
		t.Errorf("%+v", own)
	}
	form = partForm(t, d, "garden", "figures")
	form.Set("key.dahlia.sprout.base", "warm")
	if status, body, _ := post(t, h, "/garden", form); status != http.StatusUnprocessableEntity || !strings.Contains(said(body), "Dahlia, no sprouting at or below: ") {
		t.Error(status, gist(body))
	}
}
