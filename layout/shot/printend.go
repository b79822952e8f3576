package shot

import (
	"math"

	"dropsheet/layout"
)

// PrintEnds is where, of a board that is not printed to its edges, the print ends inside the frame.
type PrintEnds struct {
	// Edges is how far the print goes at the furthest toward each side of the frame that it does not reach;
	// none when it ends in the corners alone.
	Edges []BoardEdge `json:"edges"`
	// Share is how much of what the frame sees past the drop is not printed, 0 to 1, to a hundredth. 0 when
	// only the blur of the print's edge comes in.
	Share float64 `json:"unprinted_share"`
}

// printSteps is how finely the frame is looked at each way for what is not printed: a hundredth of it is what
// a share is told to.
const printSteps = 100

// printEnds looks at the part of the board that the frame takes in, blur and all.
func (s Shot) printEnds(c Coverage) *PrintEnds {
	if s.Filled() {
		return nil
	}
	has, from, to := s.printed()
	b, far := s.Backdrop, s.BoardPerDrop()
	all := true
	eachPlace(layout.Size{WidthMM: min(c.Needs.WidthMM, b.WidthMM), HeightMM: min(c.Needs.HeightMM, b.HeightMM)},
		func(at layout.Point) { all = all && has(at) })
	if all {
		return nil
	}
	sight, past, without := s.Sight(), 0.0, 0.0
	eachPlace(c.Sees, func(at layout.Point) {
		if sight.ShareAt(at.XMM/far, at.YMM/far) > 1 {
			past++
			if !has(at) {
				without++
			}
		}
	})
	ends := &PrintEnds{Edges: []BoardEdge{}}
	if past > 0 {
		ends.Share = math.Round(100*without/past) / 100
	}
	for _, side := range []struct {
		name           string
		at, board, see float64 // away from the axis, mm of the board's plane
		px             func(awayMM float64) float64
	}{
		{"left", -from.XMM, b.WidthMM / 2, c.Needs.WidthMM / 2,
			func(mm float64) float64 { return s.Camera.Pixel(layout.Point{XMM: -mm / far}).XPx }},
		{"right", to.XMM, b.WidthMM / 2, c.Needs.WidthMM / 2,
			func(mm float64) float64 { return s.Camera.Pixel(layout.Point{XMM: mm / far}).XPx }},
		{"top", -from.YMM, b.HeightMM / 2, c.Needs.HeightMM / 2,
			func(mm float64) float64 { return s.Camera.Pixel(layout.Point{YMM: -mm / far}).YPx }},
		{"bottom", to.YMM, b.HeightMM / 2, c.Needs.HeightMM / 2,
			func(mm float64) float64 { return s.Camera.Pixel(layout.Point{YMM: mm / far}).YPx }},
	} {
		// The board's own edge is told as such.
		if side.at < side.see && side.at < side.board-layout.LeastPictureMM {
			ends.Edges = append(ends.Edges, BoardEdge{side.name, side.px(side.at)})
		}
	}
	return ends
}

// printed tells which places of the board, from its middle, are printed, and how far these go. A background
// is printed all over the sheets that there are.
func (s Shot) printed() (has func(at layout.Point) bool, from, to layout.Point) {
	grow := func(at layout.Point) {
		from.XMM, to.XMM = min(from.XMM, at.XMM), max(to.XMM, at.XMM)
		from.YMM, to.YMM = min(from.YMM, at.YMM), max(to.YMM, at.YMM)
	}
	if !s.Backdrop.FillOnly {
		k := s.ink()
		for _, at := range k.at {
			grow(at)
		}
		return k.has, from, to
	}
	halfWidthMM, halfHeightMM := s.Backdrop.WidthMM/2, s.Backdrop.HeightMM/2
	for _, sheet := range s.Sheets {
		grow(layout.Point{XMM: sheet.Cell.XMM - halfWidthMM, YMM: sheet.Cell.YMM - halfHeightMM})
		grow(layout.Point{XMM: sheet.Cell.RightMM() - halfWidthMM, YMM: sheet.Cell.BottomMM() - halfHeightMM})
	}
	return func(at layout.Point) bool {
		x, y := at.XMM+halfWidthMM, at.YMM+halfHeightMM
		for _, sheet := range s.Sheets {
			if c := sheet.Cell; x >= c.XMM-tolerance && x <= c.RightMM()+tolerance && y >= c.YMM-tolerance &&
				y <= c.BottomMM()+tolerance {
				return true
			}
		}
		return false
	}, from, to
}

// eachPlace goes over a rectangle about the axis in steps, its edges included.
func eachPlace(size layout.Size, do func(at layout.Point)) {
	for j := range printSteps + 1 {
		for i := range printSteps + 1 {
			do(layout.Point{XMM: (float64(i)/printSteps - 0.5) * size.WidthMM,
				YMM: (float64(j)/printSteps - 0.5) * size.HeightMM})
		}
	}
}
