package board

import (
	"math"

	"dropsheet/layout"
)

// sheets tells which part of a board has sheets: a cell without picture has none.
type sheets struct {
	xsMM, ysMM []float64 // edges of columns and rows, the outermost ones without end
	has        []bool    // for each cell, row by row
	all        bool      // every cell has one
}

// newSheets is that of a plan's.
func newSheets(p layout.Plan) sheets {
	b := p.Backdrop
	if len(p.Sheets) >= b.Columns*b.Rows {
		return sheets{all: true}
	}
	endless := func(edges []float64) []float64 {
		out := append([]float64(nil), edges...)
		out[0], out[len(out)-1] = math.Inf(-1), math.Inf(1)
		return out
	}
	s := sheets{xsMM: endless(b.XEdgesMM), ysMM: endless(b.YEdgesMM), has: make([]bool, b.Columns*b.Rows)}
	for _, sheet := range p.Sheets {
		s.has[(sheet.Row-1)*b.Columns+sheet.Column-1] = true
	}
	return s
}

// share is how much of an upright box about a place lies on sheets. Beyond the board the outermost cells go on.
// It is not for boards on which all cells have one.
func (s *sheets) share(xMM, yMM, wideMM, highMM float64) (share float64) {
	for j := range len(s.ysMM) - 1 {
		high := between(s.ysMM[j], s.ysMM[j+1], yMM, highMM)
		if high == 0 {
			continue
		}
		for i := range len(s.xsMM) - 1 {
			if s.has[j*(len(s.xsMM)-1)+i] {
				share += high * between(s.xsMM[i], s.xsMM[i+1], xMM, wideMM)
			}
		}
	}
	return share
}
