package seammap

import (
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
)

// dropShare is the share of its square that the drop takes up; the rest leaves room for its outline.
const dropShare = 0.98

// dropView shows the board as the camera sees it in the drop, everything sharp: a square of the plane through the drop's centre.
type dropView struct {
	downward, sideways bend // for lines of constant x and of constant y
	square             image.Rectangle
	body               flip.Body
	radiusPx, pxPerMM  float64 // of the drop's plane
}

func newDropView(p layout.Plan, square image.Rectangle) dropView {
	v := dropView{square: square, body: p.Drop.Body, radiusPx: float64(square.Dx()) * dropShare / 2}
	v.pxPerMM = v.radiusPx / p.Sight().ApparentRadiusMM()
	halfMM, pixelMM := float64(square.Dx())/2/v.pxPerMM, 1/v.pxPerMM
	v.downward, v.sideways = newBend(p, "x", halfMM, pixelMM), newBend(p, "y", halfMM, pixelMM)
	return v
}

func (v dropView) frame() image.Rectangle { return v.square }

// middle is where the axis shows.
func (v dropView) middle() ink.Point {
	return ink.Point{X: float64(v.square.Min.X+v.square.Max.X) / 2, Y: float64(v.square.Min.Y+v.square.Max.Y) / 2}
}

// at is where a point of the drop's plane shows.
func (v dropView) at(p layout.Point) ink.Point {
	m := v.middle()
	return ink.Point{X: m.X + p.XMM*v.pxPerMM, Y: m.Y + p.YMM*v.pxPerMM}
}

func (v dropView) land(at ink.Point) (layout.Point, bool) {
	m := v.middle()
	xMM, yMM, ok := v.downward.lands((at.X-m.X)/v.pxPerMM, (at.Y-m.Y)/v.pxPerMM)
	return layout.Point{XMM: xMM, YMM: yMM}, ok
}

func (v dropView) spot(p layout.Point) (ink.Point, bool) {
	acrossMM, alongMM, ok := v.downward.find(p.XMM, p.YMM)
	return v.at(v.downward.point(acrossMM, alongMM)), ok
}

func (v dropView) line(axis string, atMM, fromMM, toMM float64) ink.Path {
	b := v.downward
	if axis == "y" {
		b = v.sideways
	}
	var path ink.Path
	for _, p := range b.line(atMM, fromMM, toMM) {
		path = append(path, v.at(p))
	}
	return path
}

func (v dropView) fill(fill float64) []ink.Path {
	return rings(v.body, v.middle(), fill*v.radiusPx, v.square)
}

func (v dropView) judge(s seamsight.Sample) seamsight.Verdict {
	return s.Sightings[seamsight.Through].Verdict
}

func (v dropView) inside(at ink.Point) float64 {
	m := v.middle()
	switch v.body {
	case flip.UprightRod:
		return v.radiusPx - math.Abs(at.X-m.X)
	case flip.LevelRod:
		return v.radiusPx - math.Abs(at.Y-m.Y)
	default:
		return v.radiusPx - math.Hypot(at.X-m.X, at.Y-m.Y)
	}
}
