package sheet

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// everyScript are invented names in each script there is type for, with what is hard about
// it: letters that join, reach round others, stack, or take marks.
var everyScript = map[string][]string{
	"Latin":        {"Tallow Bell", "AVATAR Toffee fjord", "Ǹg\u0303o\u0302\u0301 Łąka", "efficient"},
	"Greek":        {"Λευκή Αυγή", "Ἀνατολὴ"},
	"Cyrillic":     {"Осенний Ёжик", "Ўзбек", "а\u0301"},
	"Armenian":     {"Ձմեռային Վարդ", "և"},
	"Georgian":     {"ზამთრის ვარდი", "Ზამთარი"},
	"Hebrew":       {"ורד לבן מאוד", "שָׁלוֹם (12)", "[ורד]"},
	"Arabic":       {"زهرة الشتاء البيضاء", "مَرْحَبًا", "سنبل\u200cالطیب", "پژمرده گل (۱۲)", "لالا", "گلِ یخ"},
	"Thaana":       {"ހުދު މަލެއް"},
	"NKo":          {"ߝߌߙߌ߫ ߜߍ"},
	"Devanagari":   {"सफेद गुलाब", "हिन्दी की ऋतु", "कर्म श्रृंगार", "क्षत्रिय द्वार", "र्\u200dय"},
	"Bengali":      {"সাদা গোলাপ", "বৃষ্টির ফুল", "স্ত্রী কর্তা"},
	"Gurmukhi":     {"ਚਿੱਟਾ ਗੁਲਾਬ", "ਸ੍ਰੀ"},
	"Gujarati":     {"સફેદ ગુલાબ", "શ્રી વર્ષા"},
	"Oriya":        {"ଧଳା ଗୋଲାପ", "ସ୍ତ୍ରୀ"},
	"Tamil":        {"வெள்ளை ரோஜா", "ஸ்ரீ கோடை"},
	"Telugu":       {"తెల్ల గులాబి", "శ్రీ వర్షం"},
	"Kannada":      {"ಬಿಳಿ ಗುಲಾಬಿ", "ಶ್ರೀ ಕರ್ಣ"},
	"Malayalam":    {"വെളുത്ത റോസ്", "ശ്രീ ക്ഷേത്രം", "അവൻ"},
	"Sinhala":      {"සුදු රෝස", "ශ්\u200dරී ක්\u200dෂ"},
	"Thai":         {"กุหลาบขาว", "น้ำค้างเหมันต์", "ปู่ที่"},
	"Lao":          {"ກຸຫຼາບຂາວ", "ນ້ຳຄ້າງ"},
	"Tibetan":      {"མེ་ཏོག་དཀར་པོ", "བསྒྲུབས"},
	"Myanmar":      {"နှင်းဆီဖြူ", "ကြွေ သ္မီး"},
	"Ethiopic":     {"ነጭ ጽጌረዳ"},
	"Cherokee":     {"ᎤᏁᎦ ᎠᏥᎸᏍᎩ"},
	"Aboriginal":   {"ᐊᓄᕆ ᐱᕈᖅᑐᖅ"},
	"Khmer":        {"ផ្កាកុលាបស", "ព្រះស្រី", "ខ្មែរ"},
	"Han":          {"白い鷺の歌", "雪ノ華ガ", "하얀 왜가리"},
	"side by side": {"Rose सफेद 12 ورد", "กุหลาบ Bell (白)"},
}

func inEveryScript() []string {
	return slices.Sorted(slices.Values(slices.Concat(slices.Collect(maps.Values(everyScript))...)))
}

// TestShapes holds which glyphs stand for a name, and where, to hb-shape, the shaper that
// most screens and printers' programs are built on, in every script.
func TestShapes(t *testing.T) {
	need(t, "hb-shape")
	folder := t.TempDir()
	s := newSetter()
	for script, all := range everyScript {
		for _, name := range all {
			text, left := readable(name)
			faces, bad := facesOf(text, plain)
			if bad != 0 || len(left) > 0 {
				t.Errorf("%s, %q: no type for %q, left out %q", script, name, bad, left)
				continue
			}
			for _, part := range fromLeft(text) {
				for from, to := part.from, 0; from < part.to; from = to {
					to = sameType(text, faces, from, part.to)
					s.shape(text, from, to, faces[from], part.fromRight)
					var got []string
					for i, g := range s.buffer.Info {
						at := s.buffer.Pos[i]
						got = append(got, fmt.Sprintf("%d=%d@%d,%d+%d", g.Glyph, g.Cluster-from, at.XOffset, at.YOffset, at.XAdvance))
					}
					if want := outsideShape(t, folder, faces[from], text[from:to], part.fromRight); strings.Join(got, "|") != want {
						t.Errorf("%s, %q in %s:\n%s, hb-shape says\n%s", script, string(text[from:to]), faces[from].id, strings.Join(got, "|"), want)
					}
				}
			}
		}
	}
}

// outsideShape is what hb-shape says, in its own words without offsets of nothing.
func outsideShape(t *testing.T, folder string, f *face, text []rune, fromRight bool) string {
	direction := "ltr"
	if fromRight {
		direction = "rtl"
	}
	said := tool(t, []byte(string(text)), "hb-shape", "--no-glyph-names", "--language=und", "--direction="+direction, "--script="+scriptOf(text).String(), "--font-file="+unpackedTo(t, folder, f))
	var all []string
	for _, g := range strings.Split(strings.Trim(strings.TrimSpace(said), "[]"), "|") {
		if head, advance, found := strings.Cut(g, "+"); found && !strings.Contains(head, "@") {
			g = head + "@0,0+" + advance
		}
		all = append(all, g)
	}
	return strings.Join(all, "|")
}

// unpackedTo keeps a typeface for other programs to read.
func unpackedTo(t *testing.T, folder string, f *face) string {
	file := filepath.Join(folder, f.id+".ttf")
	if _, err := os.Stat(file); err == nil {
		return file
	}
	b, err := f.unpacked()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}
