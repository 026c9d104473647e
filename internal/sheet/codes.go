package sheet

import (
	"encoding/binary"
	"slices"

	"github.com/go-text/typesetting/font"
)

// The private-use range of Unicode. In a PDF its letters name the glyphs that no letter maps
// to.
const firstOwn, lastOwn = 0xE000, 0xF8FF

// codesOf assigns each glyph of a typeface the letter that maps to it, or a private-use
// letter; 0 when those are used up. glyphs is the inverse.
func codesOf(f *font.Font, count int) (codes []rune, glyphs []uint16) {
	codes, glyphs = make([]rune, count), make([]uint16, widest+1)
	for all := f.Cmap.Iter(); all.Next(); {
		r, g := all.Char()
		if r < ' ' || r >= widest || r >= firstOwn && r <= lastOwn || int(g) >= count {
			continue
		}
		glyphs[r] = uint16(g)
		if codes[g] == 0 || r < codes[g] {
			codes[g] = r
		}
	}
	own := rune(firstOwn)
	for g := 1; g < count && own <= lastOwn; g++ {
		if codes[g] == 0 {
			codes[g], glyphs[own] = own, uint16(g)
			own++
		}
	}
	return codes, glyphs
}

// widest is the last letter that the PDF writer can address.
const widest = 0xFFFF

// Tables of a typeface's file are listed after a head, an entry each: name, sum, place and
// length. Source: ISO/IEC 14496-22, section 4.
const tablesHead, tableEntry = 12, 16

// tableIn finds the entry of a table in the list, and its position; 0 if there is none.
func tableIn(file []byte, name string) (entry, place int) {
	for entry = tablesHead; entry < tablesHead+tableEntry*int(binary.BigEndian.Uint16(file[4:])); entry += tableEntry {
		if string(file[entry:entry+4]) == name {
			return entry, int(binary.BigEndian.Uint32(file[entry+8:]))
		}
	}
	return 0, 0
}

// glyphsIn returns the number of glyphs of a typeface, from table maxp.
func glyphsIn(file []byte) int {
	_, place := tableIn(file, "maxp")
	return int(binary.BigEndian.Uint16(file[place+4:]))
}

// withChart returns a typeface's file with another mapping from letters to glyphs.
func withChart(file []byte, glyphs []uint16) []byte {
	entry, _ := tableIn(file, "cmap")
	chart := chartOf(glyphs)
	out := slices.Grow(slices.Clone(file), len(chart)+4)
	for len(out)%4 != 0 {
		out = append(out, 0)
	}
	binary.BigEndian.PutUint32(out[entry+8:], uint32(len(out)))
	binary.BigEndian.PutUint32(out[entry+12:], uint32(len(chart)))
	return append(out, chart...)
}

// chartOf returns a cmap table in format 4: one segment for each run of letters with
// consecutive glyphs. Source: ISO/IEC 14496-22, table cmap.
func chartOf(glyphs []uint16) []byte {
	var ends, starts, deltas []uint16
	for r, g := range glyphs[:widest] {
		if g == 0 {
			continue
		}
		delta, n := g-uint16(r), len(ends)
		if n > 0 && int(ends[n-1])+1 == r && deltas[n-1] == delta {
			ends[n-1]++
			continue
		}
		ends, starts, deltas = append(ends, uint16(r)), append(starts, uint16(r)), append(deltas, delta)
	}
	ends, starts, deltas = append(ends, widest), append(starts, widest), append(deltas, 1)

	count := uint16(len(ends))
	words := []uint16{0, 1, 3, 1, 0, 12, 4, 16 + 8*count, 0, 2 * count, 0, 0, 0}
	words = slices.Concat(words, ends, []uint16{0}, starts, deltas, make([]uint16, count))
	chart := make([]byte, 0, 2*len(words))
	for _, w := range words {
		chart = binary.BigEndian.AppendUint16(chart, w)
	}
	return chart
}
