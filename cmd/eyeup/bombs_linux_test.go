package main

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"strings"
)

// bomb is a file made to exhaust a reader.
type bomb struct {
	name string
	args []string // FILE stands for it, FOLDER for its folder
	file string
	make func() []byte
	good bool // it is large, and no more than is read
}

var (
	readsStock   = []string{"read", "stock", "FILE", "--kind", "dahlia", "--form", "clump", "--place", "cellar"}
	readsWeather = []string{"read", "weather", "FILE"}
	readsLogger  = []string{"read", "logger", "FILE"}
	readsGarden  = []string{"season", "FOLDER"}
	readsLog     = []string{"book", "new", "FILE.book", "--folder", "FOLDER"}
)

var bombs = []bomb{
	{name: "a cell in the last column of every row", args: readsStock, file: "a.xlsx", make: func() []byte {
		return sheetOf(90000, func(row int) string { return fmt.Sprintf(`<c r="XFD%d"><v>1</v></c>`, row) })
	}},
	{name: "a cell in the last column allowed", args: readsStock, file: "a.xlsx", make: func() []byte {
		return sheetOf(90000, func(row int) string { return fmt.Sprintf(`<c r="IV%d"><v>1</v></c>`, row) })
	}},
	{name: "a million cells", args: readsStock, file: "a.xlsx", good: true, make: func() []byte {
		return sheetOf(99000, func(row int) string {
			if row == 1 {
				return `<c t="inlineStr"><is><t>variety</t></is></c><c t="inlineStr"><is><t>count</t></is></c>`
			}
			return `<c t="str"><v>Heron</v></c>` + strings.Repeat(`<c><v>14</v></c>`, 9)
		})
	}},
	{name: "cells without end", args: readsStock, file: "a.xlsx", make: func() []byte {
		return sheetOf(90000, func(int) string { return strings.Repeat(`<c><v>1</v></c>`, 200) })
	}},
	{name: "one long text in every cell", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf(`<si><t>`+strings.Repeat("x", 30000)+`</t></si>`, func(w io.Writer) {
			for range 90000 {
				io.WriteString(w, `<row>`+strings.Repeat(`<c t="s"><v>0</v></c>`, 10)+`</row>`)
			}
		})
	}},
	{name: "shared texts without end", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf(strings.Repeat(`<si/>`, 8<<20), func(io.Writer) {})
	}},
	{name: "a shared text of 40 MB", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf(`<si><t>`+strings.Repeat("x", 40<<20)+`</t></si>`, func(io.Writer) {})
	}},
	{name: "a sheet of a gigabyte of blanks", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf("", func(w io.Writer) {
			for range 1 << 10 {
				w.Write(bytes.Repeat([]byte{' '}, 1<<20))
			}
		})
	}},
	{name: "an element with ten million attributes", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf("", func(w io.Writer) { io.WriteString(w, "<row "+strings.Repeat(`a="" `, 9<<20)+"/>") })
	}},
	{name: "elements in elements", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf("", func(w io.Writer) { io.WriteString(w, strings.Repeat("<a>", 15<<20)) })
	}},
	{name: "elements that say nothing", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf("", func(w io.Writer) { io.WriteString(w, strings.Repeat("<a/>", 11<<20)) })
	}},
	{name: "a remark of 40 MB full of elements", args: readsStock, file: "a.xlsx", make: func() []byte {
		return workbookOf("", func(w io.Writer) { io.WriteString(w, "<row><c><v><![CDATA["+strings.Repeat("<a>", 14<<20)) })
	}},
	{name: "130,000 parts", args: readsStock, file: "a.xlsx", make: func() []byte {
		var out bytes.Buffer
		z := zip.NewWriter(&out)
		for i := range 130000 {
			z.CreateHeader(&zip.FileHeader{Name: fmt.Sprintf("%x", i)})
		}
		z.Close()
		return out.Bytes()
	}},
	{name: "a workbook of 30 MB of noise", args: readsStock, file: "a.xlsx", make: func() []byte {
		return append([]byte("PK\x03\x04"), bytes.Repeat([]byte{7}, 30<<20)...)
	}},
	{name: "a list of commas", args: readsStock, file: "a.csv", make: func() []byte { return bytes.Repeat([]byte(","), 15<<20) }},
	{name: "a list of more commas", args: readsStock, file: "a.csv", make: func() []byte { return bytes.Repeat([]byte(","), 30<<20) }},
	{name: "a list with one quotation mark", args: readsStock, file: "a.csv", make: func() []byte {
		return []byte("variety,count\n\"" + strings.Repeat("x\n", 7<<20))
	}},
	{name: "a list of long words that are wrong", args: readsStock, file: "a.csv", make: func() []byte {
		return []byte("variety,count,timing,colour,height\n" + strings.Repeat("A,b,"+strings.Repeat("tim", 30)+",#1,2\n", 99000))
	}},
	{name: "a list with a million headers", args: readsStock, file: "a.csv", make: func() []byte {
		return []byte(strings.Repeat("varieta,", 1<<20) + "count\n")
	}},
	{name: "a stock.csv of commas", args: readsGarden, file: "stock.csv", make: func() []byte { return bytes.Repeat([]byte(","), 15<<20) }},
	{name: "a stock.csv that is all wrong", args: readsGarden, file: "stock.csv", make: func() []byte {
		return []byte("variety,kind,form,count,place\n" + strings.Repeat("A,,x,y,"+strings.Repeat("z", 100)+"\n", 99000))
	}},
	{name: "a garden of brackets", args: readsGarden, file: "garden.toml", make: func() []byte { return []byte("a = " + strings.Repeat("[", 15<<20)) }},
	{name: "a smaller garden of brackets", args: readsGarden, file: "garden.toml", make: func() []byte { return []byte("a = " + strings.Repeat("[", 200<<10)) }},
	{name: "a garden of braces", args: readsGarden, file: "garden.toml", make: func() []byte { return []byte("a = " + strings.Repeat("{b=", 80<<10)) }},
	{name: "a garden of keys", args: readsGarden, file: "garden.toml", make: func() []byte {
		var s strings.Builder
		for i := range 24000 {
			fmt.Fprintf(&s, "k%d = 1\n", i)
		}
		return []byte(s.String())
	}},
	{name: "a garden of keys in one line", args: readsGarden, file: "garden.toml", make: func() []byte {
		var s strings.Builder
		for i := range 24000 {
			fmt.Fprintf(&s, "k%d=1,", i)
		}
		return []byte("a = {" + s.String() + "z=1}\n")
	}},
	{name: "a garden of dots", args: readsGarden, file: "garden.toml", make: func() []byte { return []byte(strings.Repeat("a.", 120<<10) + "a = 1\n") }},
	{name: "a garden of places", args: readsGarden, file: "garden.toml", make: func() []byte { return []byte(strings.Repeat("[[place]]\nname='x'\n", 13000)) }},
	{name: "weather of endless days", args: readsWeather, file: "a.csv", good: true, make: func() []byte {
		var s strings.Builder
		s.WriteString("date,low (C),high (C)\n")
		for i := range 4 << 20 {
			fmt.Fprintf(&s, "%d-01-01,%d,9\n", 1700+i%499, i%8)
		}
		return []byte(s.String())
	}},
	{name: "weather of 70 MB", args: readsWeather, file: "a.csv", make: func() []byte {
		return []byte("date,low (C),high (C)\n" + strings.Repeat("\n", 70<<20))
	}},
	{name: "weather of many stations", args: readsWeather, file: "a.csv", good: true, make: func() []byte {
		var s strings.Builder
		s.WriteString("STATION,STATION_NAME,DATE,TMAX,TMIN\n")
		for i := range 2 << 20 {
			fmt.Fprintf(&s, "S%d,n,%d0101,9,%d\n", i%900, 1900+i%100, i%9)
		}
		return []byte(s.String())
	}},
	{name: "a logger without end", args: readsLogger, file: "a.csv", make: func() []byte {
		return []byte("time,temperature (C)\n" + strings.Repeat("2026-11-03 14:10,5\n", 9<<20))
	}},
	{name: "a logger of columns", args: readsLogger, file: "a.csv", make: func() []byte {
		return []byte(strings.Repeat(strings.Repeat("time;", 13000)+"\n", 900))
	}},
	{name: "entries of brackets", args: readsLog, file: "log.jsonl", make: func() []byte { return bytes.Repeat([]byte("["), 3<<20) }},
	{name: "a list of nothings", args: readsLog, file: "log.jsonl", make: func() []byte { return []byte("[" + strings.Repeat("0,", 1900<<10) + "0]") }},
	{name: "a line of 60 MB", args: readsLog, file: "log.jsonl", make: func() []byte { return bytes.Repeat([]byte("x"), 60<<20) }},
}

// sheetOf packs a workbook whose sheet has so many rows.
func sheetOf(rows int, row func(int) string) []byte {
	return workbookOf("", func(w io.Writer) {
		for i := range rows {
			fmt.Fprintf(w, `<row r="%d">%s</row>`, i+1, row(i+1))
		}
	})
}

// workbookOf packs a workbook with texts that cells share and one sheet of rows.
func workbookOf(shared string, rows func(io.Writer)) []byte {
	const kind = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	part := func(name, before, after string, between func(io.Writer)) {
		w, err := z.Create(name)
		if err != nil {
			panic(err)
		}
		io.WriteString(w, before)
		between(w)
		io.WriteString(w, after)
	}
	none := func(io.Writer) {}
	part("[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml"/></Types>`, "", none)
	part("_rels/.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="`+kind+`/officeDocument" Target="xl/workbook.xml"/></Relationships>`, "", none)
	part("xl/_rels/workbook.xml.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="`+kind+`/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="`+kind+`/sharedStrings" Target="sharedStrings.xml"/></Relationships>`, "", none)
	part("xl/workbook.xml", `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="`+kind+`"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`, "", none)
	part("xl/sharedStrings.xml", `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">`+shared, "</sst>", none)
	part("xl/worksheets/sheet1.xml", `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`, "</sheetData></worksheet>", rows)
	if err := z.Close(); err != nil {
		panic(err)
	}
	return out.Bytes()
}
