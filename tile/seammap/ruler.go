package seammap

import (
	"math"
	"strconv"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/ink"
)

// Measures of the rulers, in pixels.
const (
	tickPx      = 14
	smallTickPx = 8
	leastStepPx = 90 // between ticks with a figure
	numberGapPx = 18 // from the board to the middle of a column number
)

// rulerStep is a round number of mm, 1, 2 or 5 times a power of ten, at least leastStepPx apart, and into how
// many parts it is divided.
func rulerStep(pxPerMM float64) (stepMM float64, parts int) {
	power := math.Pow(10, math.Floor(math.Log10(leastStepPx/pxPerMM)))
	for _, by := range []struct {
		times float64
		parts int
	}{{1, 5}, {2, 4}, {5, 5}} {
		if stepMM = by.times * power; stepMM*pxPerMM >= leastStepPx {
			return stepMM, by.parts
		}
	}
	return 10 * power, 5
}

// drawRulers draws board millimetres along the board's left and lower sides.
func (m seamMap) drawRulers(v boardView) {
	area := v.area().Grow(surroundPx)
	stepMM, parts := rulerStep(v.pxPerMM)
	face := m.faces.small
	tick := func(i int) (length float64, figure string) {
		if i%parts != 0 {
			return smallTickPx, ""
		}
		return tickPx, report.Number(stepMM*float64(i/parts), 6).Number()
	}
	each := func(lengthMM, originPx float64, draw func(px, tickPx float64, figure string)) {
		for i := 0; ; i++ {
			mm := stepMM * float64(i) / float64(parts)
			if mm > lengthMM+1e-6 {
				return
			}
			length, figure := tick(i)
			draw(originPx+mm*v.pxPerMM, length, figure)
		}
	}
	board := v.area()
	below, beside := area.Bottom, area.Left
	line := func(from, to ink.Point) { m.canvas.Draw(ink.Stroke{Path: ink.Path{from, to}, Line: rulerLine}) }
	line(ink.Point{X: board.Left, Y: below}, ink.Point{X: board.Right, Y: below})
	line(ink.Point{X: beside, Y: board.Top}, ink.Point{X: beside, Y: board.Bottom})
	each(v.board.WidthMM, board.Left, func(x, length float64, figure string) {
		line(ink.Point{X: x, Y: below}, ink.Point{X: x, Y: below + length})
		box := face.Box(ink.Point{X: x, Y: below + tickPx + 8 + face.CapPx()/2}, figure)
		m.canvas.Text(face, ink.Point{X: box.Left, Y: box.Bottom}, grey, figure)
	})
	each(v.board.HeightMM, board.Top, func(y, length float64, figure string) {
		line(ink.Point{X: beside, Y: y}, ink.Point{X: beside - length, Y: y})
		m.canvas.Text(face, ink.Point{X: beside - tickPx - 8 - face.WidthPx(figure), Y: y + face.CapPx()/2}, grey, figure)
	})
}

// drawNumbers writes column and row numbers along the board's upper and right sides: the first, and then as
// many round ones as find room.
func (m seamMap) drawNumbers(v boardView) {
	face, area := m.faces.small, v.area()
	b := m.plan.Backdrop
	widest := face.WidthPx("C"+strconv.Itoa(b.Columns)) + 2*labelPad
	everyColumn := numberStep(narrowestMM(b.XEdgesMM)*v.pxPerMM, widest)
	everyRow := numberStep(narrowestMM(b.YEdgesMM)*v.pxPerMM, face.CapPx()+2*labelPad)
	for column := 1; column <= b.Columns; column++ {
		if isNumbered(column, everyColumn) {
			text := "C" + strconv.Itoa(column)
			at := v.at(layout.Point{XMM: b.XEdgesMM[column-1] + (b.XEdgesMM[column]-b.XEdgesMM[column-1])/2})
			box := face.Box(ink.Point{X: at.X, Y: area.Top - numberGapPx}, text)
			m.canvas.Text(face, ink.Point{X: box.Left, Y: box.Bottom}, grey, text)
		}
	}
	for row := 1; row <= b.Rows; row++ {
		if isNumbered(row, everyRow) {
			at := v.at(layout.Point{YMM: b.YEdgesMM[row-1] + (b.YEdgesMM[row]-b.YEdgesMM[row-1])/2})
			m.canvas.Text(face, ink.Point{X: area.Right + 2*labelPad, Y: at.Y + face.CapPx()/2}, grey, "R"+strconv.Itoa(row))
		}
	}
}

// narrowestMM is the least distance between neighbouring edges; cells need not be even.
func narrowestMM(edges []float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(edges); i++ {
		least = min(least, edges[i]-edges[i-1])
	}
	return least
}

// numberStep is the least of 1, 2, 5, 10, 20, 50 … cells that takes up that many pixels.
func numberStep(cellPx, leastPx float64) int {
	for power := 1; ; power *= 10 {
		for _, times := range []int{1, 2, 5} {
			if step := times * power; float64(step)*cellPx >= leastPx || step > 1e6 {
				return step
			}
		}
	}
}

// isNumbered tells whether a row or column gets its number when every so many do; the first does, if the next
// leaves it room.
func isNumbered(n, every int) bool { return n%every == 0 || n == 1 && every > 2 }
