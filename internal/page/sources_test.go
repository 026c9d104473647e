package page

import (
	"html"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
)

var (
	whyLinks  = regexp.MustCompile(`<a class="why" href="#why-([^"]*)">`)
	whyAsks   = regexp.MustCompile(`href="#why-([^"]*)"`)
	whyStands = regexp.MustCompile(`<section id="why-([^"]*)">`)
	tables    = regexp.MustCompile(`(?s)<table.*?</table>`)
	rows      = regexp.MustCompile(`(?s)<tr.*?</tr>`)
	cells     = regexp.MustCompile(`(?s)<(th|td)[^>]*>(.*?)</t[hd]>`)
	tags      = regexp.MustCompile(`<[^>]*>`)
)

// keysIn are the keys that a pattern finds on a page, each once.
func keysIn(body string, pattern *regexp.Regexp) []string {
	var keys []string
	for _, m := range pattern.FindAllStringSubmatch(body, -1) {
		keys = append(keys, html.UnescapeString(m[1]))
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}

// TestEveryFigureTellsWhereItComesFrom asks every figure of the pages: what is linked has
// sources, all sources are asked for, each cell of a table with a figure leads to sources
// itself or by the head of its row or column, and the figures outside of tables do too.
func TestEveryFigureTellsWhereItComesFrom(t *testing.T) {
	h := reading(t)
	d, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	d.Warm(testDay)
	d.Rest()
	_, list := get(t, h, "/stock?by=lot&q=dahlia")
	lot := regexp.MustCompile(`/stock/[0-9A-Z]{5}`).FindString(list)
	for path, keys := range map[string]string{
		"/":                          "outside round night-cellar night-glass",
		"/?low=10F":                  "night-glass",
		"/stock":                     "count",
		"/stock?by=lot":              "count",
		"/stock?by=place":            "count",
		lot:                          "count start up out flower weight good",
		"/rounds":                    "there found weight tells",
		"/rounds/cellar/0":           "there found weight",
		"/season":                    "frost held flower gain stretched heat light-cost mix total work fits cold decide early bench start up out kind-dahlia get",
		"/season?plan=no+added+heat": "frost flower gain",
		"/season?risk=30%25":         "frost flower gain",
		"/patch":                     "ground places counted mix wanted hand raised over",
		"/places":                    "there room heat-glass",
		"/places/cellar":             "there room climate night-cellar",
		"/places/glass":              "night-glass asked cost short cold bench light hours",
		"/places/patch":              "room",
		"/weather":                   "odds dates planting year",
		"/gallery":                   "jobs minutes-dahlia",
	} {
		status, body := get(t, h, path)
		if status != http.StatusOK {
			t.Fatalf("%s: status %d", path, status)
		}
		asksWell(t, path, body, strings.Fields(keys))
	}
}

// TestJobsTellWhereTheyComeFrom does the same in a week of many jobs.
func TestJobsTellWhereTheyComeFrom(t *testing.T) {
	if testing.Short() {
		t.Skip("left out of short tests: a season more is worked out for it")
	}
	day := civil.MustOn(2027, time.April, 14)
	d, err := desk.DemoDesk(day, testNow)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = d.Close() }()
	h, err := New(d.Desk, Options{Now: testNow, Today: day})
	if err != nil {
		t.Fatal(err)
	}
	_, body := get(t, h, "/")
	asksWell(t, "/ in April", body, []string{"jobs", "minutes-dahlia", "outside"})
}

// asksWell looks at one page: see TestEveryFigureTellsWhereItComesFrom.
func asksWell(t *testing.T, path, body string, keys []string) {
	t.Helper()
	linked, asked, stand := keysIn(body, whyLinks), keysIn(body, whyAsks), keysIn(body, whyStands)
	if !slices.Equal(asked, stand) {
		t.Errorf("%s asks for the sources %q, and has %q", path, asked, stand)
	}
	for _, key := range keys {
		if !slices.Contains(linked, key) {
			t.Errorf("%s does not lead to the sources %s from any figure; it does to %q", path, key, linked)
		}
	}
	if n := len(whyStands.FindAllString(body, -1)); n != len(stand) {
		t.Errorf("%s has %d sources under %d keys", path, n, len(stand))
	}
	for _, table := range tables.FindAllString(body, -1) {
		asksCells(t, path, table)
	}
	for _, g := range strings.Split(body, `<section id="why-`)[1:] {
		g, _, _ = strings.Cut(g, "</section>")
		if !strings.Contains(g, "<dt>record</dt>") || !strings.Contains(g, "<dt>to change it</dt>") {
			t.Errorf("%s: sources without a record, or what to do to change them: %.200s", path, g)
		}
		_, figures, _ := strings.Cut(g, "figures and their sources")
		for _, one := range strings.Split(figures, "<li>")[1:] {
			if !regexp.MustCompile(`\), (measured|practice|assumption|memory|own|common practice|from memory): \S`).MatchString(one) {
				t.Errorf("%s: a figure without its source: %s", path, one)
			}
		}
	}
}

// asksCells looks at each cell of a table that has a figure in it.
func asksCells(t *testing.T, path, table string) {
	t.Helper()
	var heads []bool // whether a column's head leads to sources
	for i, row := range rows.FindAllString(table, -1) {
		isAsked := false // by the head of the row
		for col, c := range cells.FindAllStringSubmatch(row, -1) {
			leads := whyLinks.MatchString(c[2])
			switch {
			case i == 0:
				heads = append(heads, leads)
			case c[1] == "th":
				isAsked = leads
			case strings.ContainsAny(tags.ReplaceAllString(c[2], ""), "0123456789") && !leads && !isAsked && !(col < len(heads) && heads[col]):
				t.Errorf("%s: nothing tells where %q comes from, in %.200s", path, tags.ReplaceAllString(c[2], ""), row)
			}
		}
	}
}

// TestSourcesOfWeightNameTheEntries follows a crate's sources to the entry of a lot's life.
func TestSourcesOfWeightNameTheEntries(t *testing.T) {
	h := reading(t)
	_, body := get(t, h, "/rounds/cellar/0")
	to := regexp.MustCompile(`href="(/stock/[0-9A-Z]{5})#([0-9a-f-]{36})"`).FindStringSubmatch(body)
	if to == nil {
		t.Fatal("the crate's sources name no entry")
	}
	status, lot := get(t, h, to[1])
	if status != http.StatusOK || !strings.Contains(lot, `id="`+to[2]+`"`) {
		t.Errorf("%s has no entry %s", to[1], to[2])
	}
}
