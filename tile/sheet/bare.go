package sheet

import (
	"slices"

	"dropsheet/layout"
)

// Bare tells which sides of a sheet carry a lap that nothing is pasted over: the cell beyond has no sheet.
func Bare(p layout.Plan, s layout.Sheet) (left, top, right, bottom bool) {
	if len(p.Sheets) == p.Backdrop.Columns*p.Backdrop.Rows {
		return false, false, false, false
	}
	bare := func(cut bool, row, column int) bool {
		return !cut && !slices.ContainsFunc(p.Sheets, func(n layout.Sheet) bool { return n.Row == row && n.Column == column })
	}
	left, top, right, bottom = p.Backdrop.Cut(s)
	return bare(left, s.Row, s.Column-1), bare(top, s.Row-1, s.Column), bare(right, s.Row, s.Column+1),
		bare(bottom, s.Row+1, s.Column)
}

// BareBoard is what of the board has no sheet, in board mm: each row's neighbouring cells without one in one
// piece, from the top left on.
func BareBoard(p layout.Plan) (pieces []layout.Rect) {
	b := p.Backdrop
	if len(p.Sheets) == b.Columns*b.Rows {
		return nil
	}
	columns := make([][]int, b.Rows)
	for _, s := range p.Sheets {
		columns[s.Row-1] = append(columns[s.Row-1], s.Column)
	}
	for row, taken := range columns {
		slices.Sort(taken)
		edge := 0 // of the columns that are done
		for _, column := range append(taken, b.Columns+1) {
			if column-1 > edge {
				x, y := b.XEdgesMM[edge], b.YEdgesMM[row]
				pieces = append(pieces, layout.Rect{XMM: x, YMM: y, WidthMM: b.XEdgesMM[column-1] - x,
					HeightMM: b.YEdgesMM[row+1] - y})
			}
			edge = column
		}
	}
	return pieces
}
