package exchange

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"
)

// What a workbook may hold. A workbook is a zip: a few kB can ask for any memory. So all is
// counted while it is unpacked, and nothing is kept that was not counted.
const (
	mostPacked   = 16 << 20 // bytes of the file
	mostParts    = 2000     // files in the zip
	mostUnpacked = 48 << 20 // bytes, of the parts that are read, as they come out
	mostRun      = 1 << 20  // bytes without a new element: holds what one element makes the parser keep
	mostDeep     = 64       // elements within one another
	mostTokens   = 8000000  // elements, ends and texts
	mostShared   = 500000   // texts that cells share
	mostColumns  = 256
	mostCells    = 1000000 // gaps counted: a row counts as far as its last column
	mostCellText = 1 << 15 // bytes; the format's own limit is 32,767 signs
	mostText     = 32 << 20
)

// tooLarge says that a list is more than is read, and what to do.
func tooLarge(name string, line int, what string, most int) error {
	return Fault{File: name, Line: line, What: fmt.Sprintf("%s, more than %d; a stock list is smaller: keep the columns that are needed in a sheet of its own, or bring it in by parts", what, most)}
}

// packedBook is an XLSX file while it is read.
type packedBook struct {
	name     string
	parts    map[string]*zip.File
	unpacked int64 // bytes so far
	tokens   int
	shared   []string
}

// workbookCells reads the cells of the first sheet of a workbook, row by row, without the
// empty rows at its end. A cell is its value as it is kept, not as its format shows it.
// What is more than a stock list can be is refused before it is held.
func workbookCells(name string, data []byte) ([][]string, error) {
	if len(data) > mostPacked {
		return nil, tooLarge(name, 0, fmt.Sprintf("the workbook has %d bytes", len(data)), mostPacked)
	}
	if n := bytes.Count(data, []byte("PK\x01\x02")); n > mostParts { // each part is listed behind these four
		return nil, tooLarge(name, 0, fmt.Sprintf("the workbook has %d parts", n), mostParts)
	}
	w := &packedBook{name: name, parts: map[string]*zip.File{}}
	packed, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, w.unreadable(err)
	}
	for _, part := range packed.File {
		if w.parts[part.Name] == nil {
			w.parts[part.Name] = part
		}
	}
	sheet, texts, err := w.places()
	if err != nil {
		return nil, w.unreadable(err)
	}
	if texts != "" {
		if err := w.readShared(texts); err != nil {
			return nil, w.unreadable(err)
		}
	}
	rows, err := w.readSheet(sheet)
	return rows, w.unreadable(err)
}

// unreadable makes a fault of what is wrong with a workbook; nothing is none.
func (w *packedBook) unreadable(err error) error {
	var told Fault
	if err == nil || errors.As(err, &told) {
		return err
	}
	return Fault{File: w.name, What: fmt.Sprintf("it can't be read as an XLSX file (%v); save the table again, or as CSV", err)}
}

// places finds the parts with the first sheet and with the texts that cells share.
func (w *packedBook) places() (sheet, texts string, err error) {
	book := "xl/workbook.xml"
	if of, err := w.relations("", "_rels/.rels"); err == nil {
		for _, r := range of {
			if path.Base(r.kind) == "officeDocument" {
				book = r.target
			}
		}
	}
	of, err := w.relations(path.Dir(book), path.Join(path.Dir(book), "_rels", path.Base(book)+".rels"))
	if err != nil {
		return "", "", err
	}
	for _, r := range of {
		if path.Base(r.kind) == "sharedStrings" {
			texts = r.target
		}
	}
	err = w.read(book, func(start *xml.StartElement, _ []byte) error {
		if start == nil || start.Name.Local != "sheet" || sheet != "" {
			return nil
		}
		for _, r := range of {
			if r.id == attribute(start, "id") && path.Base(r.kind) == "worksheet" {
				sheet = r.target
			}
		}
		return nil
	})
	if err == nil && sheet == "" {
		err = errors.New("it has no sheet")
	}
	return sheet, texts, err
}

// relation tells where a part is that another needs.
type relation struct{ id, kind, target string }

// relations reads a part that lists relations; their targets are taken from a folder.
func (w *packedBook) relations(folder, part string) (all []relation, err error) {
	err = w.read(part, func(start *xml.StartElement, _ []byte) error {
		if start == nil || start.Name.Local != "Relationship" || len(all) == mostParts {
			return nil
		}
		r := relation{attribute(start, "Id"), attribute(start, "Type"), attribute(start, "Target")}
		if r.target = strings.TrimPrefix(r.target, "/"); r.target == attribute(start, "Target") {
			r.target = path.Join(folder, r.target)
		}
		all = append(all, r)
		return nil
	})
	return all, err
}

// attribute returns an attribute by its name, whatever space of names it is of.
func attribute(start *xml.StartElement, name string) string {
	for _, a := range start.Attr {
		if a.Name.Local == name && a.Name.Space != "xmlns" {
			return a.Value
		}
	}
	return ""
}

// read reads a part of the workbook and gives what it holds to see: the start of an
// element, a text, or neither for the end of the element begun last and not yet ended.
func (w *packedBook) read(part string, see func(start *xml.StartElement, text []byte) error) error {
	file := w.parts[part]
	if file == nil {
		return fmt.Errorf("the part %s is not there", clip(part))
	}
	in, err := file.Open()
	if err != nil {
		return err
	}
	defer in.Close() //nolint:errcheck // it was only read
	d := xml.NewDecoder(&bounded{of: w, in: in})
	for deep := 0; ; {
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) && deep == 0 {
			return nil
		}
		if err != nil {
			return err
		}
		if w.tokens++; w.tokens > mostTokens {
			return tooLarge(w.name, 0, "the workbook has too many elements", mostTokens)
		}
		switch token := token.(type) {
		case xml.StartElement:
			if deep++; deep > mostDeep {
				return tooLarge(w.name, 0, "elements of the workbook stand too deep within one another", mostDeep)
			}
			err = see(&token, nil)
		case xml.CharData:
			err = see(nil, token)
		case xml.EndElement:
			if deep--; deep < 0 {
				return errors.New("an element ends that did not begin")
			}
			err = see(nil, nil)
		}
		if err != nil {
			return err
		}
	}
}

// bounded holds what is unpacked, and what stands in one element, to what is allowed.
type bounded struct {
	of  *packedBook
	in  io.Reader
	run int // bytes since the last element began
}

func (b *bounded) Read(p []byte) (int, error) {
	n, err := b.in.Read(p)
	if b.of.unpacked += int64(n); b.of.unpacked > mostUnpacked {
		return 0, tooLarge(b.of.name, 0, "the workbook unpacks to too many bytes", mostUnpacked)
	}
	if at := bytes.LastIndexByte(p[:n], '<'); at >= 0 {
		b.run = n - at
	} else {
		b.run += n
	}
	if b.run > mostRun {
		return 0, tooLarge(b.of.name, 0, "one element of the workbook has too many bytes", mostRun)
	}
	return n, err
}

// clip shortens what a message repeats of a file.
func clip(text string) string {
	const most = 60
	if len(text) > most {
		text = strings.ToValidUTF8(text[:most], "") + "…"
	}
	return strconv.Quote(text)
}
