package stockbook

import (
	"bytes"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/testkit"
	"eyeup/stock"
)

// manySpots is a stock list of lots that stand at several spots. The rows with most detail come first.
const manySpots = `code,variety,kind,form,count,place,crate,bed,row,pack
,Loose Leaf,dahlia,plant,2,patch,,,,
MRMM5,Grey Barn,dahlia,plant,4,patch,,2,3,
MRMM5,Grey Barn,dahlia,plant,3,patch,,2,1,
MRMM5,Grey Barn,dahlia,plant,5,patch,,2,,
MRMM5,Grey Barn,dahlia,plant,1,patch,,,9,
MRMM5,Grey Barn,dahlia,plant,6,patch,,,,
MRMM5,Grey Barn,dahlia,clump,7,cellar,04,,,bare
MRMM5,Grey Barn,dahlia,clump,8,cellar,05,,,bare
PT877,Copper Gate,dahlia,plant,9,patch,,1,2,
PT877,Copper Gate,dahlia,plant,1,patch,,1,,
PT877,Copper Gate,dahlia,plant,1,patch,,1,,
`

// TestSpotsSurviveARoundTrip takes in a list, writes it as CSV and XLSX, and takes in each again: the same
// lots stand at the same spots.
func TestSpotsSurviveARoundTrip(t *testing.T) {
	day := civil.MustOn(2027, time.June, 15)
	first, err := ReadStock("list.csv", []byte(manySpots), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	was := newTestBook(t)
	if err := first.Write(was, day); err != nil {
		t.Fatal(err)
	}
	want := map[string]int{
		"patch": 2 + 6, "patch bed 2 row 3": 4, "patch bed 2 row 1": 3, "patch bed 2": 5, "patch row 9": 1,
		"cellar crate 04 in bare": 7, "cellar crate 05 in bare": 8, "patch bed 1 row 2": 9, "patch bed 1": 2,
	}
	checkSpots(t, was, want)
	table := exchange.StockTable(holdingsOf(was))
	var asCSV, asXLSX bytes.Buffer
	if err := exchange.WriteCSV(&asCSV, table); err != nil {
		t.Fatal(err)
	}
	if err := exchange.WriteXLSX(&asXLSX, []exchange.Table{table}); err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{"stock.csv": asCSV.Bytes(), "stock.xlsx": asXLSX.Bytes()} {
		list, err := ReadStock(name, data, nil, nil)
		if err != nil {
			t.Fatal(name, err)
		}
		again := newTestBook(t)
		if err := list.Write(again, day); err != nil {
			t.Fatal(name, err)
		}
		checkSpots(t, again, want)
	}
}

// checkSpots checks how many stand at each spot, and that there is no other spot.
func checkSpots(t *testing.T, b *Book, want map[string]int) {
	t.Helper()
	got := map[string]int{}
	for _, r := range *b.Lots() {
		got[r.where()] += r.Count
	}
	for spot, n := range want {
		if got[spot] != n {
			t.Errorf("%d stand in %s, not %d", got[spot], spot, n)
		}
		delete(got, spot)
	}
	if len(got) > 0 {
		t.Errorf("unexpected spots: %v", got)
	}
}

// TestFolderKeepsBedsAndRows writes a garden as a folder and reads it again: bed and row are kept.
func TestFolderKeepsBedsAndRows(t *testing.T) {
	g, err := garden.OpenDemo(civil.MustOn(2026, time.November, 16))
	if err != nil {
		t.Fatal(err)
	}
	g.Stock[0].Place, g.Stock[0].Crate, g.Stock[0].Bed, g.Stock[0].Row = "patch", "", "north", "2"
	out := testkit.Memory{MapFS: fstest.MapFS{}}
	if err := exchange.WriteGarden(g.Garden, out.Create); err != nil {
		t.Fatal(err)
	}
	read, err := exchange.ReadGarden(out, "out")
	if err != nil {
		t.Fatal(err)
	}
	if h := read.Stock[0]; h.Bed != "north" || h.Row != "2" || h.Crate != "" {
		t.Errorf("%+v", h)
	}
	g.Stock[0].Crate = "7"
	if err := exchange.WriteGarden(g.Garden, out.Create); err != nil {
		t.Fatal(err)
	}
	if _, err := exchange.ReadGarden(out, "out"); err == nil {
		t.Error("a holding with both a crate and a bed was accepted")
	}
}

func holdingsOf(s *Book) (all []stock.Holding) {
	s.Read(func(b *stock.Book) { all = b.Holdings() })
	return all
}
