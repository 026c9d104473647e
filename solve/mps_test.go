package solve

import (
	"math"
	"strings"
	"testing"
)

// TestWriteMPS holds the file to the format's description: GLPK 5.0 Reference Manual,
// appendix B. That GLPK reads it as meant is tried in internal/highs.
func TestWriteMPS(t *testing.T) {
	inf := math.Inf(1)
	p := &Programme{Offset: 2.5}
	p.Column(Column{Name: "trays\nof dahlias", Cost: -1, Low: -2, High: 7, Whole: true})
	p.Column(Column{Cost: 0.1, Low: -inf, High: inf})
	p.Column(Column{Low: -inf, High: 4})
	p.Column(Column{Low: 3, High: 3, Whole: true})
	p.Column(Column{High: inf})
	p.Row(Row{Name: "bench", Low: -inf, High: 6, Terms: []Term{{0, 0.25}, {1, 1}}})
	p.Row(Row{Low: 1, High: 5, Terms: []Term{{0, 1}, {2, 0}}})
	p.Row(Row{Low: 2, High: 2, Terms: []Term{{4, -3}}})
	p.Row(Row{Low: -inf, High: inf, Terms: []Term{{4, 1}}})
	var b strings.Builder
	if err := p.WriteMPS(&b); err != nil {
		t.Fatal(err)
	}
	want := `* c0 "trays\nof dahlias"
* r0 "bench"
NAME programme
ROWS
 N cost
 L r0
 G r1
 E r2
 N r3
COLUMNS
 marker0 'MARKER' 'INTORG'
 c0 cost -1
 c0 r0 0.25
 c0 r1 1
 marker1 'MARKER' 'INTEND'
 c1 cost 0.1
 c1 r0 1
 c2 cost 0
 marker2 'MARKER' 'INTORG'
 c3 cost 0
 marker3 'MARKER' 'INTEND'
 c4 cost 0
 c4 r2 -3
 c4 r3 1
 offset cost 2.5
RHS
 rhs r0 6
 rhs r1 1
 rhs r2 2
RANGES
 ranges r1 4
BOUNDS
 FX bounds offset 1
 LO bounds c0 -2
 UP bounds c0 7
 FR bounds c1
 MI bounds c2
 UP bounds c2 4
 FX bounds c3 3
 LO bounds c4 0
 PL bounds c4
ENDATA
`
	if b.String() != want {
		t.Errorf("wrote\n%s", b.String())
	}
	p.Rows[0].Terms[0].Column = 9
	if p.WriteMPS(&b) == nil {
		t.Error("a programme that is not sound is written")
	}
}
