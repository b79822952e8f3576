package layout

import (
	"cmp"
	"fmt"
	"slices"
)

// paperLie is one way to lay the paper on the board: the runs across and down.
type paperLie struct {
	orientation  Orientation
	across, down run
	uncut        Size // what a sheet holds that is not cut
}

// lies returns the ways that the setup allows, the one to prefer first.
func (s Setup) lies() ([]paperLie, error) {
	lie := func(o Orientation) paperLie {
		return Backdrop{Paper: s.Paper, Orientation: o, MarginMM: s.MarginMM, Margins: s.Margins, LapMM: s.LapMM,
			Printer: s.Printer}.lie()
	}
	var all []paperLie
	if s.Orientation != Landscape {
		all = append(all, lie(Portrait))
	}
	if s.Orientation != Portrait {
		all = append(all, lie(Landscape))
	}
	for _, l := range all {
		for _, r := range []run{l.across, l.down} {
			if least := min(r.innerMM(), r.lastMM()); least < minCellMM {
				margin := fmt.Sprintf("a margin of %gmm", s.MarginMM)
				switch {
				case s.Printer != nil:
					margin = fmt.Sprintf("the margins of printer %q", s.Printer.Name)
				case s.Margins != nil:
					margin = "margins of " + s.Margins.String()
				}
				return nil, fmt.Errorf("paper %s with %s and a lap of %gmm leaves %.1fmm for the picture, under the %gmm that "+
					"can be cut and pasted\nhint: make the margin or lap smaller, or the paper larger",
					s.Paper.Name, margin, s.LapMM, max(least, 0), minCellMM)
			}
		}
	}
	return all, nil
}

// lie is the way that the paper lies.
func (b Backdrop) lie() paperLie {
	live, whole := b, b
	live.Uncut, whole.Uncut = false, true
	cut := live.live()
	return paperLie{b.Orientation, run{cut.WidthMM, b.LapMM}, run{cut.HeightMM, b.LapMM}, whole.live()}
}

// Holds is the largest print that as many sheets hold, side by side and one above the other.
func (b Backdrop) Holds() Size {
	l := b.lie()
	return Size{l.across.holdsMM(b.Columns), l.down.holdsMM(b.Rows)}
}

// largest returns the largest scale k for which a print of k x proportions by k fits on n sheets, in mm of height.
func (l paperLie) largest(proportions float64, n int) (heightMM float64) {
	heightMM = min(l.uncut.WidthMM/proportions, l.uncut.HeightMM) // on one
	for columns := 1; columns <= n; columns++ {
		rows := n / columns
		heightMM = max(heightMM, min(l.across.holdsMM(columns)/proportions, l.down.holdsMM(rows)))
	}
	return heightMM
}

// holdsUncut tells whether one sheet holds a print that reaches to the printer's margins, with nothing round it to cut.
func (l paperLie) holdsUncut(print Size) bool {
	return print.WidthMM <= l.uncut.WidthMM+slack && print.HeightMM <= l.uncut.HeightMM+slack
}

// sheetsFor counts the sheets that a print takes where they are cut.
func (l paperLie) sheetsFor(print Size) (columns, rows int) {
	return l.across.sheets(print.WidthMM), l.down.sheets(print.HeightMM)
}

// mostCells is how many cells are looked at one by one, with or without picture.
const mostCells = 4 * mostSheets

// cutEven lays the print out in even cells.
func (b Backdrop) cutEven(region carrying) (Backdrop, []Sheet) {
	l := b.lie()
	return b.cut(
		edges(l.across.cells(b.WidthMM, b.Columns), b.WidthMM, b.LightFrom.Left()),
		edges(l.down.cells(b.HeightMM, b.Rows), b.HeightMM, b.LightFrom.Top()),
		region,
	)
}

// cut lays the print out in cells with these edges, in rising order, and numbers the sheets in pasting order:
// from the lamp's corner row by row, so that each sheet is pasted over laps that are already down. Where
// region, if not nil, says that a cell carries no picture, there is no sheet.
func (b Backdrop) cut(xs, ys []float64, region carrying) (Backdrop, []Sheet) {
	b.XEdgesMM, b.YEdgesMM = xs, ys
	var carries []bool
	if region != nil {
		carries = region(xs, ys)
	}
	left, top := b.LightFrom.Left(), b.LightFrom.Top()
	sheets := make([]Sheet, 0, b.Columns*b.Rows)
	for i := range b.Rows {
		row := fromLamp(i, b.Rows, top)
		for j := range b.Columns {
			column := fromLamp(j, b.Columns, left)
			s := Sheet{
				Name: sheetName(row, column), Page: len(sheets) + 1, Row: row, Column: column,
				Cell: Rect{xs[column-1], ys[row-1], xs[column] - xs[column-1], ys[row] - ys[row-1]},
			}
			if carries != nil && !carries[(row-1)*b.Columns+column-1] {
				continue
			}
			s.OnPage = b.onPage(s)
			sheets = append(sheets, s)
		}
	}
	return b, sheets
}

// fromLamp returns the number, from 1 at the top or left, of the i-th of n from the lamp's side.
func fromLamp(i, n int, lampFirst bool) int {
	if lampFirst {
		return i + 1
	}
	return n - i
}

// seams lists the lines between cells that both have a sheet: those that run down, then those that run across.
func (b Backdrop) seams(sheets []Sheet) []Seam {
	at := map[[2]int]Sheet{}
	for _, s := range sheets {
		at[[2]int{s.Row, s.Column}] = s
	}
	sheets = slices.SortedFunc(slices.Values(sheets), func(s, t Sheet) int {
		return cmp.Or(cmp.Compare(s.Row, t.Row), cmp.Compare(s.Column, t.Column))
	})
	var down, across []Seam
	for _, s := range sheets {
		if n, ok := at[[2]int{s.Row, s.Column + 1}]; ok {
			down = append(down, Seam{"x", n.Cell.XMM, s.Cell.YMM, s.Cell.BottomMM(), [2]string{s.Name, n.Name}})
		}
		if n, ok := at[[2]int{s.Row + 1, s.Column}]; ok {
			across = append(across, Seam{"y", n.Cell.YMM, s.Cell.XMM, s.Cell.RightMM(), [2]string{s.Name, n.Name}})
		}
	}
	return append(append([]Seam{}, down...), across...) // none is an empty list in JSON, not null
}
