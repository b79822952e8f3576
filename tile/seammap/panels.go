package seammap

import (
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/ink"
)

// Panels are the parts of a plan's map, for those who show them by themselves.
type Panels struct {
	Map   image.Rectangle // all of it
	Board image.Rectangle // the board with its rulers
	Drop  image.Rectangle // a square about the drop, or a square part of the rod
	Key   []KeyLine
}

// KeyLine says what a line of the map is.
type KeyLine struct {
	Line ink.Line // widths and dashes in pixels of the map
	Text string
}

// Find finds the panels of the map that Draw draws of a plan.
func Find(p layout.Plan) Panels {
	m := newMap(p)
	a := m.place()
	area := m.board.area().Grow(surroundPx)
	out := Panels{
		Map: image.Rect(0, 0, widthPx, a.height),
		Board: image.Rect(int(math.Floor(area.Left))-rulerLeftPx, int(math.Floor(area.Top)), int(math.Ceil(area.Right))+
			numbersPx, int(math.Ceil(area.Bottom))+rulerLowPx),
		Drop: a.drop,
	}
	for _, n := range m.key() {
		out.Key = append(out.Key, KeyLine{*n.sample, n.text})
	}
	return out
}
