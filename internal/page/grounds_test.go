package page

import (
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// TestFiguresTellWhereTheyComeFrom looks for the grounds of each section of figures: they
// name a record or a model, and each figure among them says how sure it is and its source.
func TestFiguresTellWhereTheyComeFrom(t *testing.T) {
	h := reading(t)
	code := regexp.MustCompile(`/stock/[0-9A-Z]{5}$`)
	lot := ""
	for _, path := range every(t, h) {
		if code.MatchString(path) {
			lot = path
		}
	}
	for path, sections := range map[string][]string{
		"/": {"the jobs", "the nights"}, "/?low=10F": {"the nights"}, "/rounds": {"weight lost, and what was found"}, "/rounds/cellar/0": {"weight lost"},
		"/places": {"the places"}, "/places/glass": {"the nights", "heat and cost", "light"}, "/places/cellar": {"the nights", "warmth and humidity"},
		"/weather": {"the odds of frost", "the typical year"}, "/stock": {"the counts"}, lot: {"what comes next"},
	} {
		_, body := get(t, h, path)
		for _, section := range sections {
			_, grounds, found := strings.Cut(body, "where this comes from: "+section+"</summary>")
			grounds, _, _ = strings.Cut(grounds, "</details>")
			if !found || !strings.Contains(grounds, "<dt>record</dt>") {
				t.Errorf("%s does not say what record %s come from", path, section)
			}
			_, figures, has := strings.Cut(grounds, "<dt>figures and their sources</dt>")
			if !has {
				continue
			}
			for _, one := range strings.Split(figures, "<dd>")[1:] {
				if !regexp.MustCompile(`\), (measured|practice|assumption|memory|own|common practice|from memory): \S`).MatchString(one) {
					t.Errorf("%s, %s: a figure without its source: %s", path, section, one)
				}
			}
		}
	}
}

// TestGroundsOfWeightNameTheEntries follows a crate's grounds to the entry of a lot's life.
func TestGroundsOfWeightNameTheEntries(t *testing.T) {
	h := reading(t)
	_, body := get(t, h, "/rounds/cellar/0")
	to := regexp.MustCompile(`href="(/stock/[0-9A-Z]{5})#([0-9a-f-]{36})"`).FindStringSubmatch(body)
	if to == nil {
		t.Fatal("the crate's grounds name no entry")
	}
	status, lot := get(t, h, to[1])
	if status != http.StatusOK || !strings.Contains(lot, `id="`+to[2]+`"`) {
		t.Errorf("%s has no entry %s", to[1], to[2])
	}
}
