package layout

import (
	"errors"
	"fmt"

	"dropsheet/flip"
)

// BorderMM is the board around the print, to hold and clamp it by (common practice, no source). It lies outside of
// board coordinates.
const BorderMM = 20.0

// Bounds is what the print and its sheets must keep to. Each is 0 where it was not asked for. Where the print is still
// free, it becomes the largest that keeps to them all.
type Bounds struct {
	MaxSheets     int  // at most so many
	Columns, Rows int  // just so many
	Board         Size // the board that there is, at most so wide and so high, its border included
}

// any tells whether anything was asked for.
func (b Bounds) any() bool { return b != Bounds{} }

// sheetsAlone tells whether the number of sheets alone bounds the print.
func (b Bounds) sheetsAlone() bool { return b == Bounds{MaxSheets: b.MaxSheets} }

// check refuses what can't be asked for.
func (b Bounds) check() error {
	switch {
	case b.MaxSheets < 0 || b.MaxSheets > mostSheets:
		return fmt.Errorf("%d sheets can't be\nhint: allow 1 to %d", b.MaxSheets, mostSheets)
	case b.Columns < 0 || b.Rows < 0 || b.Columns > mostSheets || b.Rows > mostSheets || b.Columns*b.Rows > mostCells:
		return fmt.Errorf("%d columns and %d rows can't be\nhint: take up to %d sheets", b.Columns, b.Rows, mostSheets)
	case b.MaxSheets > 0 && max(b.Columns, 1)*max(b.Rows, 1) > b.MaxSheets:
		return fmt.Errorf("%d columns and %d rows are more than the %d sheets that are allowed\nhint: give one of them",
			max(b.Columns, 1), max(b.Rows, 1), b.MaxSheets)
	}
	for _, f := range []named{{"the board's width", b.Board.WidthMM}, {"the board's height", b.Board.HeightMM}} {
		if f.mm == 0 {
			continue
		}
		if err := allLengths(f); err != nil {
			return err
		}
		if least := 2*BorderMM + leastPrintMM; f.mm < least {
			return fmt.Errorf("%s of %gmm leaves nothing for a print, with a border of %gmm all round to hold it by\n"+
				"hint: take "+
				"at least %gmm", f.what, f.mm, BorderMM, least)
		}
	}
	return nil
}

// holds tells why a backdrop of that size is too large for the board that there is.
func (b Bounds) holds(backdrop Size) error {
	for _, side := range []struct {
		what          string
		boardMM, isMM float64
	}{{"wide", b.Board.WidthMM, backdrop.WidthMM}, {"high", b.Board.HeightMM, backdrop.HeightMM}} {
		if mostMM := side.boardMM - 2*BorderMM; side.boardMM > 0 && side.isMM > mostMM+tolerance {
			return fmt.Errorf("a backdrop %.1fmm %s does not go on a board of %gmm, which holds %.1fmm with its border of "+
				"%gmm all round\nhint: take a smaller print, or leave fill or distance out to get the largest that it holds",
				side.isMM, side.what, side.boardMM, mostMM, BorderMM)
		}
	}
	return nil
}

// errTooFewSheets is what no way to lay the paper keeps to.
var errTooFewSheets = errors.New("more sheets than asked for")

// laid is how many columns and rows a backdrop takes as the paper lies, and how many sheets.
func (s Setup) laid(l paperLie, backdrop Size, region carrying) (columns, rows int, sheets float64, err error) {
	if s.Columns <= 1 && s.Rows <= 1 && s.Copies <= 1 && l.holdsUncut(backdrop) {
		return 1, 1, 1, nil
	}
	columns, rows = l.sheetsFor(backdrop)
	if s.Columns > 0 && columns > s.Columns || s.Rows > 0 && rows > s.Rows {
		return columns, rows, float64(columns) * float64(rows), errTooFewSheets
	}
	columns, rows = max(columns, s.Columns), max(rows, s.Rows)
	sheets = float64(columns) * float64(rows)
	if narrowest := min(backdrop.WidthMM/float64(columns), backdrop.HeightMM/float64(rows)); narrowest < minCellMM &&
		(columns == s.Columns || rows == s.Rows) && columns*rows > 1 {
		return columns, rows, sheets, fmt.Errorf("%d columns and %d rows leave cells of %.1fmm, under the %gmm that can be "+
			"cut and pasted\nhint: ask for fewer", columns, rows, narrowest, minCellMM)
	}
	if region != nil && sheets <= mostCells {
		carries := region(edges(l.across.cells(backdrop.WidthMM, columns), backdrop.WidthMM, s.LightFrom.Left()),
			edges(l.down.cells(backdrop.HeightMM, rows), backdrop.HeightMM, s.LightFrom.Top()))
		sheets = 0
		for _, carried := range carries {
			if carried {
				sheets++
			}
		}
	}
	if across, down := l.holdsCopies(backdrop); s.Copies > 1 && across*down < s.Copies ||
		s.MaxSheets > 0 && sheets > float64(s.MaxSheets) {
		err = errTooFewSheets
	}
	return columns, rows, sheets, err
}

// keeps tells whether the backdrop of a print, for a sight and a fill, keeps to the bounds as the paper may lie.
func (s Setup) keeps(sight flip.Sight, fill float64, print Size, lies []paperLie) bool {
	plan, err := s.planned(sight, print, fill)
	if err != nil {
		return false
	}
	backdrop, err := s.board(plan)
	if err != nil || s.holds(backdrop) != nil {
		return false
	}
	var region carrying
	looked := false
	for _, l := range lies {
		if columns, rows := l.sheetsFor(backdrop); float64(columns)*float64(rows) > mostCells {
			continue // far more than any bound, and too many to look at one by one
		}
		if !looked {
			region, looked = plan.region(backdrop), true
		}
		// Where cells are too narrow, the print is too small and not too large.
		if _, _, _, err := s.laid(l, backdrop, region); !errors.Is(err, errTooFewSheets) {
			return true
		}
	}
	return false
}
