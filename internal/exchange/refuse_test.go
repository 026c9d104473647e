package exchange

import (
	"errors"
	"strings"
	"testing"
)

// told reads a folder that must be refused, and returns the faults.
func told(t *testing.T, garden, list string) Faults {
	t.Helper()
	_, err := ReadGarden(folder(garden, list), "")
	var all Faults
	var one Fault
	switch {
	case errors.As(err, &all):
		return all
	case errors.As(err, &one):
		return Faults{one}
	}
	t.Fatalf("it was taken, or refused without a place: %v", err)
	return nil
}

// spotOf finds where a text first stands, counting lines and columns from 1.
func spotOf(t *testing.T, in, text string) (line, column int) {
	t.Helper()
	at := strings.Index(in, text)
	if at < 0 {
		t.Fatalf("%q is not in the file", text)
	}
	before := in[:at]
	return 1 + strings.Count(before, "\n"), 1 + len([]rune(before[strings.LastIndexByte(before, '\n')+1:]))
}

// Each row changes one thing in the good garden. The fault must stand at the text `at`
// and say the words.
func TestGardenRefusals(t *testing.T) {
	for _, c := range []struct{ old, new, at, says string }{
		{`latitude  = 45.1`, `lattitude = 45.1`, `lattitude`, "did you mean latitude"},
		{`latitude  = 45.1`, `latitude  = 91.0`, `91.0`, "-90 to 90"},
		{`latitude  = 45.1`, `latitude  = "45.1"`, `"45.1"`, "without quotes"},
		{`latitude  = 45.1`, `latitude  = nan`, `nan`, "-90 to 90"},
		{`longitude = -76.5`, `longitude = -276.5`, `-276.5`, "-180 to 180"},
		{`"400 ft"`, `400`, `400`, "no unit"},
		{`"400 ft"`, `"40 km"`, `"40 km"`, "no unit of length"},
		{`"400 ft"`, `"40000 ft"`, `"40000 ft"`, "-430 to 9000 m"},
		{`"America/Toronto"`, `"Eastern"`, `"Eastern"`, "region/city"},
		{`"America/Toronto"`, `"../../etc/passwd"`, `"../../etc/passwd"`, "region/city"},
		{`units     = "us"`, `units     = "metrical"`, `"metrical"`, "did you mean metric"},
		{`currency  = "CAD"`, `currency  = "QQQ"`, `"QQQ"`, "no currency"},
		{`"made-up"`, `"../weather.csv"`, `"../weather.csv"`, "is not in the folder"},
		{`"made-up"`, `"w.csv"` + "\nfrom_year = 2010\nto_year = 1981", `1981`, "swap them"},
		{`[normals]`, `[normal]`, `"made-up"`, "no [normals]"},
		{`name      = "Fallow End"`, `name      = "Fallow\u001b[2J"`, `"Fallow\u001b`, "can't be printed"},
		{`name      = "Fallow End"`, `name      = " "`, `" "`, "empty"},
		{`"-15C", `, ``, `low  = ["-14C"`, "twelve"},
		{`"-15C", `, `-15, `, `-15`, "in quotes"},
		{`high = ["-5C"`, `high = ["-25C"`, `normals]`, "January"},
		{`night = "-1.0 K"`, `night = "-100 K"`, `"-100 K"`, "outside"},
		{`day   = "0.5 F"`, `days  = "0.5 F"`, `days`, "did you mean day"},
		{`= 2027`, `= 1027`, `1027`, "1701 to 2199"},
		{`= 2027`, `= "2027"`, `"2027"`, "without quotes"},
		{`"10%"`, `"0%"`, `"0%"`, "can't be planned for"},
		{`"10%"`, `0.1`, `0.1`, "no unit"},
		{`"90%"`, `"190%"`, `"190%"`, "0% to 100%"},
		{`"12.5 h"`, `"-12.5 h"`, `"-12.5 h"`, "0 to 1000 hours"},
		{`"11 CAD/ft3"`, `"11 USD/ft3"`, `"11 USD/ft3"`, "currency is CAD"},
		{`"11 CAD/ft3"`, `"11 CAD"`, `"11 CAD"`, "for each of what"},
		{`"11 CAD/ft3"`, `"-11 CAD/ft3"`, `"-11 CAD/ft3"`, "a negative price"},
		{`"0.60 CAD"`, `"-0.60 CAD"`, `"-0.60 CAD"`, "a negative price"},
		{`"0.92 CAD/gal"`, `"0.92 CAD/lb"`, `"0.92 CAD/lb"`, "not sold by weight"},
		{`"0.92 CAD/gal"`, `"0.92 CAD/K"`, `"0.92 CAD/K"`, "bought by the gal"},
		{`pot_no1 `, `pot_no9 `, `pot_no9`, "did you mean pot_no"},
		{`sprout.sum`, `sprout.summ`, `"180`, "sprout.sum"},
		{`"180 °C·d"`, `"180"`, `"180"`, "unit"},
		{`[figures.dahlia]`, `[figures.dalia]`, `dalia`, "did you mean dahlia"},
		{`name        = "landing"`, `name        = "cellar"`, `"cellar"` + "\nsort        = \"room\"", "a place with the same name"},
		{`sort        = "room"`, `sort        = "roam"`, `"roam"`, "did you mean room"},
		{`temperature = "68F"`, `temperature = 68`, `68`, "68 F or 68 C"},
		{`temperature = "68F"`, `temperature = "680F"`, `"680F"`, "outside"},
		{`"3.0 m2"`, `"-3.0 m2"`, `"-3.0 m2"`, "no room for anything"},
		{`"3.0 m2"`, `"3.0 m"`, `"3.0 m"`, "unit of length"},
		{`hours = "14 h"`, `hours = "25 h"`, `{ area = "1.5 m2", light`, "25 hours"},
		{`crates      = 40`, `crates      = -4`, `-4`, "1 to 100000"},
		{`crates      = 40`, `crates      = 4.5`, `4.5`, "whole number"},
		{`width       = "12 ft"`, `width       = "0 ft"`, `"0 ft"`, "outside"},
		{`ridge       = "9 ft"`, `ridge       = "5 ft"`, `"5 ft"`, "lower than the eaves"},
		{`"twin-wall"`, `"twinwall"`, `"twinwall"`, "did you mean twin-wall"},
		{`"150 sq ft"`, `"1500 sq ft"`, `"1500 sq ft"`, "does not fit"},
		{`power = "6 kW"`, `power = "0 W"`, `"0 W"`, "gives no heat"},
		{`power = "6 kW"`, `power = "-6 kW"`, `"-6 kW"`, "gives no heat"},
		{`fuel = "propane"`, `fuel = "propan"`, `"propan"`, "did you mean propane"},
		{`fuel = "propane"`, `fule = "propane"`, `fule`, "did you mean fuel"},
		{`efficiency = "80%"`, `efficiency = "0%"`, `"0%"`, "an efficiency of 0% is not possible"},
		{`heater      = { power = "6 kW", fuel = "propane", efficiency = "80%" }`, `heater      = "6 kW"`, `"6 kW"`, "expected a group"},
		{"heater      = { power = \"6 kW\", fuel = \"propane\", efficiency = \"80%\" }\n", "", `levels      = ["off"`, "no heater to hold them"},
		{`by = "hand"`, `by = "hands"`, `"hands"`, "did you mean hand"},
		{`"off", "40F"`, `"of", "40F"`, `"of"`, "number"},
		{`"off", "40F"`, `"off", 40`, `40,`, "in quotes"},
		{`"50F"]`, `"150F"]`, `"150F"`, "-10 to 40 °C"},
		{`u     = "4.0 W/m2/K"`, `u     = "4.0"`, `"4.0"`, "W/m2/K"},
		{"u     = \"4.0 W/m2/K\"\n", "", `frame"`, ""},
		{`"18 in"`, `"18 ins"`, `"18 ins"`, "did you mean in"},
		{"spacing = \"18 in\"\n", "", `place]]` + "\nname    = \"patch\"", "spacing is missing"},
		{`[offset]`, `[offsets]`, `offsets]`, "did you mean offset"},
		{`[season]`, `[season`, `season`, ""},
		{`fits           = "90%"`, `fits           = "90%` + "\n", ``, ""},
		{`[offset]`, "[garden]", ``, ""},
	} {
		changed := strings.Replace(goodGarden, c.old, c.new, 1)
		if changed == goodGarden {
			t.Errorf("%q is not in the good garden", c.old)
			continue
		}
		faults := told(t, changed, goodStock)
		if !strings.Contains(faults.Error(), c.says) {
			t.Errorf("%s → %s: %q does not say %q", c.old, c.new, faults.Error(), c.says)
		}
		if c.says == "" {
			continue
		}
		line, column := spotOf(t, changed, c.at)
		found := false
		for _, f := range faults {
			found = found || f.File == "garden.toml" && f.Line == line && f.Column == column
			inForm(t, f)
		}
		if !found {
			t.Errorf("%s → %s: no fault at %d:%d in\n%v", c.old, c.new, line, column, faults)
		}
	}
}

func TestStockRefusals(t *testing.T) {
	for _, c := range []struct{ old, new, at, says string }{
		{`code,variety`, `code,varieties`, `varieties`, "did you mean variety"},
		{`code,variety`, `code`, `code`, `"variety" is missing`},
		{`code,variety`, `variety,variety`, `variety,kind`, "twice"},
		{`MRMM5`, `MRMM6`, `MRMM6`, "check character"},
		{`,14,cellar`, `,-14,cellar`, `-14`, "from 1"},
		{`,14,cellar`, `,fourteen,cellar`, `fourteen`, "whole number"},
		{`,14,cellar`, `,1e3,cellar`, `1e3`, "whole number"},
		{`,14,cellar`, `,14,celar`, `celar`, "did you mean cellar"},
		{`,14,cellar`, `,14,attic`, `attic`, "names the places"},
		{`,clump,14`, `,clumps,14`, `clumps`, "did you mean clump"},
		{`,late,`, `,later,`, `later`, "did you mean late"},
		{`#F4EFE4`, `white`, `white`, "is not a colour"},
		{`130 cm`, `130`, `130`, "no unit"},
		{`130 cm`, `-130 cm`, `-130`, "is not plausible"},
		{`Grey Barn`, ``, `,dahlia`, "variety is missing"},
		{`PT877`, `MRMM5`, `MRMM5,Copper`, "give every lot its own"},
		{`PT877,Copper Gate`, `PT877,Grey Barn`, `early`, "make them agree"},
		{`Copper Gate`, `Copper, Gate`, `PT877`, "the header 14"},
		{`Copper Gate`, "Copper\x1b[2J Gate", "Copper", "can't be printed"},
		{`Copper Gate`, "Copp\xe9 Gate", "PT877", "UTF-8"},
		{`code,variety,kind,form,count,place,crate,pack,timing,colour,height,plant,reserve,note`, `code;variety;kind`, `code`, "separated by commas"},
		{`Copper Gate`, `Copper "Gate"`, `"Gate"`, "double quotes"},
	} {
		changed := strings.Replace(goodStock, c.old, c.new, 1)
		if changed == goodStock {
			t.Errorf("%q is not in the good list", c.old)
			continue
		}
		faults := told(t, goodGarden, changed)
		if !strings.Contains(faults.Error(), c.says) {
			t.Errorf("%s → %s: %q does not say %q", c.old, c.new, faults.Error(), c.says)
		}
		line, column := spotOf(t, changed, c.at)
		found := false
		for _, f := range faults {
			found = found || f.File == "stock.csv" && f.Line == line && (f.Column == column || f.Column == 0)
		}
		if !found {
			t.Errorf("%s → %s: no fault at %d:%d in\n%v", c.old, c.new, line, column, faults)
		}
	}
}

// Several faults are told together, in the order of the files, but no more than ten.
func TestFaultsAreToldTogether(t *testing.T) {
	list := "variety,kind,form,count,place\n" + strings.Repeat("Grey Barn,dahlia,clump,none,cellar\n", 12)
	faults := told(t, strings.Replace(goodGarden, "= 45.1", "= 145.1", 1), list)
	if len(faults) != 13 || faults[0].File != "garden.toml" || faults[1].Line != 2 || faults[12].Line != 13 {
		t.Errorf("got %d: %v", len(faults), faults)
	}
	lines := strings.Split(faults.Error(), "\n")
	if len(lines) != 11 || lines[10] != "and 3 more; correct these first" {
		t.Errorf("got %d lines: %s", len(lines), faults.Error())
	}
}

func TestRubbishIsRefused(t *testing.T) {
	for name, text := range map[string]string{
		"nothing":       "",
		"zeros":         strings.Repeat("\x00", 4096),
		"not UTF-8":     "[garden]\nname = \"\xff\xfe\"\n",
		"half a garden": goodGarden[:len(goodGarden)/2],
		"deep":          "x = " + strings.Repeat("[", 20000),
		"a list":        "place = [1, 2]\n",
		"a word":        "garden = 3\nplace = 4\nseason = \"x\"\n",
	} {
		if faults := told(t, text, goodStock); len(faults) == 0 || faults[0].What == "" {
			t.Errorf("%s: %v", name, faults)
		}
	}
	for name, text := range map[string]string{
		"nothing": "", "only a mark": "\ufeff", "zeros": strings.Repeat("\x00", 4096), "an open quote": "variety,kind,form,count,place\n\"x",
	} {
		if faults := told(t, goodGarden, text); len(faults) == 0 || faults[0].What == "" {
			t.Errorf("%s: %v", name, faults)
		}
	}
}
