package seammap

import (
	"image/color"
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/ink"
)

// labels writes words on a view and keeps account of the places that are taken.
type labels struct {
	canvas ink.Canvas
	view   view
	lines  []ink.Path
	boxes  []ink.Rect
}

// labelPad is the clear space round a word, in pixels.
const labelPad = 6

// put writes a word centred on a point.
func (l *labels) put(face ink.Face, at ink.Point, colour color.RGBA, text string) {
	box := face.Box(at, text)
	l.boxes = append(l.boxes, box.Grow(labelPad))
	l.canvas.TextWithKeyline(face, ink.Point{X: box.Left, Y: box.Bottom}, colour, paper, 3, text)
}

// asGoodPx is how much more of the lines a place may hide and be as good as another. A circle has places to either side
// that differ in their last digits only, and in those so do processors.
const asGoodPx = 1e-3

// best is where on the paths a word hides least of the lines, and no other word. Of places as good as each
// other the first wins. ok is false when there is no such place in the view.
func (l *labels) best(face ink.Face, text string, paths []ink.Path) (at ink.Point, ok bool) {
	least := math.Inf(1)
	frame := l.view.frame()
	in := ink.Rect{Left: float64(frame.Min.X), Top: float64(frame.Min.Y), Right: float64(frame.Max.X),
		Bottom: float64(frame.Max.Y)}
	for _, path := range paths {
		for _, p := range places(path) {
			box := face.Box(p, text).Grow(labelPad)
			if !in.Holds(ink.Point{X: box.Left, Y: box.Top}) || !in.Holds(ink.Point{X: box.Right, Y: box.Bottom}) {
				continue
			}
			if hidden := l.hiddenPx(box); !l.overlaps(box) && hidden < least-asGoodPx {
				at, least, ok = p, hidden, true
			}
		}
	}
	return at, ok
}

// overlaps tells whether a box meets a word.
func (l *labels) overlaps(box ink.Rect) bool {
	return slices.ContainsFunc(l.boxes, box.Overlaps)
}

// hiddenPx is how many pixels of line a box hides.
func (l *labels) hiddenPx(box ink.Rect) float64 {
	sum := 0.0
	for _, path := range l.lines {
		for i := 1; i < len(path); i++ {
			sum += box.LengthInside(path[i-1], path[i])
		}
	}
	return sum
}

// places are points spread over a path, the start of a circle first.
func places(path ink.Path) []ink.Point {
	const pieces = 24
	if len(path) == 2 {
		out := make([]ink.Point, 0, pieces-1)
		for i := 1; i < pieces; i++ { // never at the very ends
			out = append(out, path.At(float64(i)/pieces))
		}
		return out
	}
	out := make([]ink.Point, pieces)
	for i := range out {
		out[i] = path.At(float64(i) / pieces)
	}
	return out
}

// fits tells whether all round a word the view shows one cell.
func fits(v view, word ink.Rect, cell layout.Rect) bool {
	r := word.Grow(2 * labelPad)
	middle := ink.Point{X: (r.Left + r.Right) / 2, Y: (r.Top + r.Bottom) / 2}
	for _, p := range []ink.Point{
		{X: r.Left, Y: r.Top}, {X: middle.X, Y: r.Top}, {X: r.Right, Y: r.Top}, {X: r.Right, Y: middle.Y},
		{X: r.Right, Y: r.Bottom}, {X: middle.X, Y: r.Bottom}, {X: r.Left, Y: r.Bottom}, {X: r.Left, Y: middle.Y},
	} {
		at, ok := v.land(p)
		if !ok || at.XMM < cell.XMM || at.XMM > cell.RightMM() || at.YMM < cell.YMM || at.YMM > cell.BottomMM() {
			return false
		}
	}
	return true
}
