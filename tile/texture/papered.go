package texture

import (
	"math"

	"dropsheet/layout"
)

// Room is the light that comes from where there is neither print nor paper: a dark room, just above black so
// that the board's edge can be told.
var Room = Light{0.0030, 0.0030, 0.0037}

// Papered tells which part of a board paper covers: a cell without picture has no sheet. Places are board millimetres.
type Papered struct {
	xs, ys []float64 // edges of columns and rows, the outermost ones without end
	sheet  []bool    // for each cell, row by row
	whole  bool      // every cell has one
}

// Paper is that of a plan's sheets.
func Paper(p layout.Plan) Papered {
	b := p.Backdrop
	if len(p.Sheets) >= b.Columns*b.Rows {
		return Papered{whole: true}
	}
	endless := func(edges []float64) []float64 {
		out := append([]float64(nil), edges...)
		out[0], out[len(out)-1] = math.Inf(-1), math.Inf(1)
		return out
	}
	papered := Papered{xs: endless(b.XEdgesMM), ys: endless(b.YEdgesMM), sheet: make([]bool, b.Columns*b.Rows)}
	for _, s := range p.Sheets {
		papered.sheet[(s.Row-1)*b.Columns+s.Column-1] = true
	}
	return papered
}

// Share is how much of a box about a place, that wide and high, lies on paper, 0 to 1. Beyond the board the
// outermost cells go on.
func (p Papered) Share(xMM, yMM, widthMM, heightMM float64) float64 {
	if p.whole {
		return 1
	}
	share := 0.0
	for j := range len(p.ys) - 1 {
		high := between(p.ys[j:], yMM, heightMM)
		if high == 0 {
			continue
		}
		for i := range len(p.xs) - 1 {
			if p.sheet[j*(len(p.xs)-1)+i] {
				share += high * between(p.xs[i:], xMM, widthMM)
			}
		}
	}
	return share
}

// between is the share of a span about a place that lies between the first two edges.
func between(edges []float64, atMM, spanMM float64) float64 {
	return float64(covered(edges[1]-atMM, spanMM)) - float64(covered(edges[0]-atMM, spanMM))
}
