package seammap

import (
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
)

// view is one of the two ways in which the map shows the board: as it hangs, or as the drop bends it.
type view interface {
	// line is where a part of a board line shows: the line at board x = atMM (axis "x") or y = atMM (axis "y"), between
	// two places along its other axis. What is out of sight is left out, and the path is empty when nothing is left.
	line(axis string, atMM, fromMM, toMM float64) ink.Path
	// around is where a closed line through points of the board shows, in pieces where it does not show whole.
	around(points []layout.Point) []ink.Path
	// spot is where a point of the board shows; ok is false when it is out of sight.
	spot(p layout.Point) (at ink.Point, ok bool)
	// land is what a place of the map shows; ok is false when that is nothing of the board's plane.
	land(at ink.Point) (p layout.Point, ok bool)
	// mirrors is what the drop's front mirrors at a place of the map.
	mirrors(at ink.Point) mirrored
	// fill is where the drop looks at a fill, empty when that is off the board.
	fill(fill float64) []ink.Path
	// judge is the verdict on a piece of seam that counts in this view.
	judge(s seamsight.Sample) seamsight.Verdict
	// inside is how many pixels a place lies inside the edge of what the view shows: of the board or of the
	// drop. Outside it is below 0.
	inside(at ink.Point) float64
	// frame is the part of the map that the view may draw on.
	frame() image.Rectangle
}

// rings are the paths at that distance from the middle that a fill makes: a circle, or for a rod two lines
// along its axis.
func rings(body flip.Body, middle ink.Point, radius float64, within image.Rectangle) []ink.Path {
	left, right := float64(within.Min.X), float64(within.Max.X)
	top, bottom := float64(within.Min.Y), float64(within.Max.Y)
	switch body {
	case flip.UprightRod:
		l, r := middle.X-radius, middle.X+radius
		return []ink.Path{{{X: r, Y: top}, {X: r, Y: bottom}}, {{X: l, Y: top}, {X: l, Y: bottom}}}
	case flip.LevelRod:
		t, b := middle.Y-radius, middle.Y+radius
		return []ink.Path{{{X: left, Y: t}, {X: right, Y: t}}, {{X: left, Y: b}, {X: right, Y: b}}}
	default:
		return []ink.Path{ink.Circle(middle, radius, -math.Pi/4)}
	}
}
