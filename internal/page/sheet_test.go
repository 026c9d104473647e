package page

import (
	"bytes"
	"net/http"
	"net/url"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"eyeup/internal/desk"
	"eyeup/stock"
)

const sheetPath = "/rounds/cellar/sheet"

// sheetForm is the form of the round sheet as the browser would send it, and the codes of
// its lots in their order.
func sheetForm(t *testing.T, h http.Handler) (form url.Values, codes []string) {
	t.Helper()
	status, body := get(t, h, sheetPath)
	if status != http.StatusOK {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	form = url.Values{}
	for _, m := range regexp.MustCompile(`<input[^>]* name="((?:at|id|on|page)[^"]*)" value="([^"]*)"`).FindAllStringSubmatch(body, -1) {
		form.Set(m[1], m[2])
	}
	for _, m := range regexp.MustCompile(`<th scope="row" class="code">(\w+)`).FindAllStringSubmatch(body, -1) {
		codes = append(codes, m[1])
	}
	form.Set("on", testDay.String())
	form.Set("whole", "yes")
	return form, codes
}

// codeIn is the code of the lot that a round was of.
func codeIn(d *desk.Desk, g stock.Round) string {
	for _, l := range d.Shelf().Lots {
		if l.ID == g.Lot {
			return string(l.Code)
		}
	}
	return ""
}

// TestASheetIsTypedIn writes the lots that something was typed of, in one go, and takes
// all back in one.
func TestASheetIsTypedIn(t *testing.T) {
	h, d := writing(t)
	before := len(d.Shelf().Rounds)
	form, codes := sheetForm(t, h)
	p, _ := d.Shelf().Place("cellar")
	first := crateRows(p)[0].Holdings[0]
	form.Set("soft.0", "2")
	form.Set("wrinkled.0", "1")
	form.Set("firm.3", "4")
	status, body, to := post(t, h, sheetPath, form)
	if status != http.StatusSeeOther || !strings.HasPrefix(to, "/rounds?wrote=") {
		t.Fatalf("status %d, to %s: %s", status, to, gist(body))
	}
	rounds := d.Shelf().Rounds
	if len(rounds) != before+2 {
		t.Fatalf("%d rounds were written, want 2", len(rounds)-before)
	}
	one, two := rounds[before], rounds[before+1]
	if codeIn(d, one) != codes[0] || one.Firm != first.Count-3 || one.Soft != 2 || one.Wrinkled != 1 || !one.Whole || one.Unaccounted != 0 {
		t.Errorf("the first is %+v", one)
	}
	if codeIn(d, two) != codes[3] || two.Firm != 4 {
		t.Errorf("the second is %+v", two)
	}
	ids := strings.Split(strings.TrimPrefix(to, "/rounds?wrote="), ".")
	if status, body, _ = post(t, h, "/undo", url.Values{"entry": ids}); status != http.StatusSeeOther || len(d.Shelf().Rounds) != before {
		t.Errorf("undoing: status %d, %d rounds are left: %s", status, len(d.Shelf().Rounds)-before, gist(body))
	}
}

// TestASheetAllFirm writes every lot where those left empty were firm.
func TestASheetAllFirm(t *testing.T) {
	h, d := writing(t)
	before := len(d.Shelf().Rounds)
	form, codes := sheetForm(t, h)
	form.Set("rest", "yes")
	if status, body, _ := post(t, h, sheetPath, form); status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	written := d.Shelf().Rounds[before:]
	if len(written) != len(codes) {
		t.Fatalf("%d rounds of %d lots", len(written), len(codes))
	}
	for _, g := range written {
		if g.Soft+g.Lost+g.Wrinkled != 0 || g.Unaccounted != 0 {
			t.Errorf("%+v", g)
		}
	}
}

// TestASheetRefused writes nothing, says where it is wrong, and keeps what was typed.
func TestASheetRefused(t *testing.T) {
	h, d := writing(t)
	before := len(d.Shelf().Rounds)
	for want, typed := range map[string]map[string]string{
		"nothing was typed":              {},
		"is not a whole number":          {"firm.0": "5", "soft.2": "two"},
		"fill in how many were firm too": {"lost.1": "9000"},
		"is in the future":               {"firm.0": "5", "on": "2031-01-01"},
		"has changed since":              {"firm.0": "5", "at.0": "FCXEN"},
	} {
		form, _ := sheetForm(t, h)
		for name, value := range typed {
			form.Set(name, value)
		}
		status, body, _ := post(t, h, sheetPath, form)
		if status < 400 || !strings.Contains(strings.ToLower(body), want) {
			t.Errorf("%s: status %d: %s", want, status, gist(body))
		}
		if typed["soft.2"] != "" && !strings.Contains(body, `name="soft.2" value="two"`) {
			t.Errorf("what was typed is lost: %s", gist(body))
		}
	}
	if now := len(d.Shelf().Rounds); now != before {
		t.Errorf("%d rounds were written all the same", now-before)
	}
}

// TestASheetIsInTheOrderOfPaper holds the order of the page to that of the printed sheet.
func TestASheetIsInTheOrderOfPaper(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("left out: pdftotext is not installed")
	}
	h, d := writing(t)
	_, codes := sheetForm(t, h)
	var pdf bytes.Buffer
	if _, err := d.Paper(desk.PaperQuestion{Name: "round"}, testDay, &pdf); err != nil {
		t.Fatal(err)
	}
	read := exec.Command("pdftotext", "-layout", "-", "-")
	read.Stdin = &pdf
	said, err := read.Output()
	if err != nil {
		t.Fatal(err)
	}
	said = said[bytes.Index(said, []byte("cellar\n")):]
	var printed []string
	for _, word := range strings.Fields(string(said)) {
		if slices.Contains(codes, word) {
			printed = append(printed, word)
		}
	}
	if !slices.Equal(printed, codes) {
		t.Errorf("printed %v, on the page %v", printed, codes)
	}
}

// TestBrowserKeysASheetIn keys a sheet in without touching the mouse.
func TestBrowserKeysASheetIn(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	before := len(d.Shelf().Rounds)
	_, codes := sheetForm(t, h)
	b := open(t, h)
	b.to(sheetPath)
	b.does(chromedp.Focus(`input[name="firm.0"]`))
	for i := range codes {
		for column := range sheetFields {
			if i == 1 && column == 2 {
				b.does(chromedp.KeyEvent("3"))
			}
			b.does(chromedp.KeyEvent(kb.Enter))
		}
	}
	if on := script[string](b, "document.activeElement.outerHTML.slice(0, 90)"); !strings.Contains(on, `class="write"`) {
		t.Fatalf("after the last box the keyboard is at %q", on)
	}
	b.press("button.write:focus")
	rounds := d.Shelf().Rounds
	if len(rounds) != before+1 || rounds[before].Soft != 3 || codeIn(d, rounds[before]) != codes[1] {
		t.Errorf("%d rounds were written, the last is %+v", len(rounds)-before, rounds[len(rounds)-1])
	}
}
