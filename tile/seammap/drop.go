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

// dropView shows the board as the camera sees it in the drop, everything sharp: a square of the plane through
// the drop's centre.
type dropView struct {
	downward, sideways bend // for lines of constant x and of constant y
	square             image.Rectangle
	sight              flip.Sight
	outline            flip.Outline
	radiusPx, pxPerMM  float64 // of the drop's plane; of a drop out of round half the width
	halfHeightPx       float64 // the same for a ball
}

func newDropView(p layout.Plan, square image.Rectangle) *dropView {
	v := &dropView{square: square, sight: p.Sight()}
	radiusMM, longerPx := v.sight.ApparentRadiusMM(), float64(square.Dx())*dropShare/2
	v.outline = v.sight.Outline()
	longerMM := radiusMM
	if v.sight.Drop.Oblate() {
		longerMM = max(radiusMM, v.outline.HalfHeightMM)
	}
	v.pxPerMM = longerPx / longerMM
	v.radiusPx, v.halfHeightPx = longerPx*(radiusMM/longerMM), longerPx*(v.outline.HalfHeightMM/longerMM)
	halfMM, pixelMM := float64(square.Dx())/2/v.pxPerMM, 1/v.pxPerMM
	v.downward, v.sideways = newBend(p, "x", halfMM, pixelMM), newBend(p, "y", halfMM, pixelMM)
	return v
}

func (v *dropView) frame() image.Rectangle { return v.square }

// middle is where the axis shows.
func (v *dropView) middle() ink.Point {
	return ink.Point{X: float64(v.square.Min.X+v.square.Max.X) / 2, Y: float64(v.square.Min.Y+v.square.Max.Y) / 2}
}

// at is where a point of the drop's plane shows.
func (v *dropView) at(p layout.Point) ink.Point {
	m := v.middle()
	return ink.Point{X: m.X + p.XMM*v.pxPerMM, Y: m.Y + p.YMM*v.pxPerMM}
}

func (v *dropView) land(at ink.Point) (layout.Point, bool) {
	m := v.middle()
	xMM, yMM, ok := v.downward.lands((at.X-m.X)/v.pxPerMM, (at.Y-m.Y)/v.pxPerMM)
	return layout.Point{XMM: xMM, YMM: yMM}, ok
}

// mirrorsFrom is the share of the visible radius from which on mirroring is looked at: water throws back under 5 %
// within.
const mirrorsFrom = 0.8

func (v *dropView) mirrors(at ink.Point) (m mirrored) {
	middle := v.middle()
	x, y := (at.X-middle.X)/v.pxPerMM, (at.Y-middle.Y)/v.pxPerMM
	if v.outline.ShareAt(x, y) < mirrorsFrom {
		return m
	}
	front, _, ok := v.downward.tracer.Mirrored(v.sight.PinholeRay(x, y))
	if !ok {
		return m
	}
	board := v.downward.board
	m.XMM, m.YMM, m.ok = v.downward.tracer.OnBoard(front.Ray)
	m.XMM, m.YMM, m.share = m.XMM+board.WidthMM/2, m.YMM+board.HeightMM/2, front.Share
	return m
}

func (v *dropView) spot(p layout.Point) (ink.Point, bool) {
	acrossMM, alongMM, ok := v.downward.find(p.XMM, p.YMM)
	return v.at(v.downward.point(acrossMM, alongMM)), ok
}

func (v *dropView) around(points []layout.Point) []ink.Path {
	var paths []ink.Path
	var path ink.Path
	all := true
	for _, p := range points {
		x, y, ok := v.sight.SeenThrough(p.XMM-v.downward.board.WidthMM/2, p.YMM-v.downward.board.HeightMM/2)
		if ok {
			path = append(path, v.at(layout.Point{XMM: x, YMM: y}))
			continue
		}
		if all = false; len(path) > 1 {
			paths = append(paths, path)
		}
		path = nil
	}
	if all && len(path) > 0 {
		path = append(path, path[0])
	}
	if len(path) > 1 {
		paths = append(paths, path)
	}
	return paths
}

func (v *dropView) line(axis string, atMM, fromMM, toMM float64) ink.Path {
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

func (v *dropView) fill(fill float64) []ink.Path {
	if v.sight.Drop.Oblate() {
		oval := ink.Circle(v.middle(), fill*v.radiusPx, -math.Pi/4)
		for i, at := range oval {
			oval[i].Y = v.middle().Y + (at.Y-v.middle().Y)*v.halfHeightPx/v.radiusPx
		}
		return []ink.Path{oval}
	}
	return rings(v.sight.Drop.Body, v.middle(), fill*v.radiusPx, v.square)
}

func (v *dropView) judge(s seamsight.Sample) seamsight.Verdict {
	return s.Sightings[seamsight.Through].Verdict
}

func (v *dropView) inside(at ink.Point) float64 {
	m := v.middle()
	if v.sight.Drop.Oblate() {
		return insideOval(at.X-m.X, at.Y-m.Y, v.radiusPx, v.halfHeightPx)
	}
	switch v.sight.Drop.Body {
	case flip.UprightRod:
		return v.radiusPx - math.Abs(at.X-m.X)
	case flip.LevelRod:
		return v.radiusPx - math.Abs(at.Y-m.Y)
	default:
		return v.radiusPx - math.Hypot(at.X-m.X, at.Y-m.Y)
	}
}

// insideOval is how far inside an ellipse about the origin a place lies, near the ellipse to first order: by
// how much the share of the way to the ellipse misses 1, over that share's slope.
func insideOval(x, y, halfWidth, halfHeight float64) float64 {
	share := math.Hypot(x/halfWidth, y/halfHeight)
	slope := math.Hypot(x/(halfWidth*halfWidth), y/(halfHeight*halfHeight))
	if slope == 0 {
		return min(halfWidth, halfHeight)
	}
	return (1 - share) * share / slope
}
