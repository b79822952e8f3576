package layout

import (
	"fmt"
	"strconv"
	"strings"

	"dropsheet/flip/units"
)

// SeamOf tells seams after columns from those below rows.
type SeamOf byte

// The two kinds, by the letters that sheets are named with.
const (
	ColumnSeam SeamOf = 'C'
	RowSeam    SeamOf = 'R'
)

// FixedSeam is a seam that shall lie where it was put: C2 at 355 mm is the one after column 2.
type FixedSeam struct {
	Of   SeamOf
	No   int     // of the column before it or the row above it, from 1
	AtMM float64 // from the board's left or upper edge
}

// String names the seam: C2.
func (f FixedSeam) String() string { return string(f.Of) + strconv.Itoa(f.No) }

// ParseFixedSeam reads a seam and its place, such as C2=355mm.
func ParseFixedSeam(s string) (FixedSeam, error) {
	name, length, ok := strings.Cut(strings.TrimSpace(s), "=")
	name = strings.ToUpper(strings.TrimSpace(name))
	if !ok || len(name) < 2 || name[0] != byte(ColumnSeam) && name[0] != byte(RowSeam) {
		return FixedSeam{}, notASeam(s)
	}
	no, err := strconv.Atoi(name[1:])
	if err != nil || no < 1 || strings.Trim(name[1:], "0123456789") != "" {
		return FixedSeam{}, notASeam(s)
	}
	mm, err := units.ParseLength(strings.TrimSpace(length))
	if err != nil {
		return FixedSeam{}, err
	}
	if !(mm > 0 && mm <= MaxLengthMM) {
		return FixedSeam{}, fmt.Errorf("%q is not on the board\nhint: say how far from its left or upper edge, above 0mm", s)
	}
	return FixedSeam{SeamOf(name[0]), no, mm}, nil
}

func notASeam(s string) error {
	return fmt.Errorf("%q is not a seam and its place\n"+
		"hint: write C2=355mm for the seam after column 2, or R1=20cm for the "+
		"one below row 1", s)
}

// fix holds those of the seams that are of this kind in their places.
func (l *line) fix(seams []FixedSeam, of SeamOf) error {
	n := len(l.mostMM)
	for _, s := range seams {
		if s.Of != of {
			continue
		}
		if s.No >= n {
			return noSeam(s, n)
		}
		if l.fixed == nil {
			l.fixed = map[int]float64{}
			l.leastMM = min(l.leastMM, minCellMM) // whoever puts a seam knows how narrow a strip may be
		}
		l.fixed[s.No] = s.AtMM
	}
	return nil
}

// noSeam is the error of a seam that a board of so many columns, or rows, does not have.
func noSeam(s FixedSeam, n int) error {
	of, first, last := "column", FixedSeam{Of: s.Of, No: 1}, FixedSeam{Of: s.Of, No: n - 1}
	if s.Of == RowSeam {
		of = "row"
	}
	switch n {
	case 1:
		return fmt.Errorf("there is no seam %s: the board has 1 %s\nhint: leave --seam-at %s out", s, of, s)
	case 2:
		return fmt.Errorf("there is no seam %s: the board has 2 %ss\nhint: give %s, which lies between them", s, of, first)
	}
	return fmt.Errorf("there is no seam %s: the board has %d %ss\nhint: give one from %s to %s", s, n, of, first, last)
}

// errNoRoom says within what bounds each of the fixed seams by itself may lie, of which together there is no layout.
func errNoRoom(fixed []FixedSeam, across, down line) error {
	var bounds []string
	for _, f := range fixed {
		l := across
		if f.Of == RowSeam {
			l = down
		}
		l.fixed = nil
		all := l.candidates()[f.No]
		bounds = append(bounds, fmt.Sprintf("%s from %.1f to %.1fmm", f, all[0], all[len(all)-1]))
	}
	return fmt.Errorf("seams where they were put leave cells that sheets of this paper can't show, or narrower than "+
		"%gmm\nhint: by itself each may lie: %s", minCellMM, strings.Join(bounds, ", "))
}

// NoSeamCosts are costs for a board on which all places for a seam are alike.
func NoSeamCosts(b Backdrop) SeamCosts {
	stepMM := max(b.WidthMM, b.HeightMM)
	return SeamCosts{stepMM, make([]float64, 2), make([]float64, 2)}
}
