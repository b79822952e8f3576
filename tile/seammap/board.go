package seammap

import (
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
)

// Round the board lies a strip of white; in part of it lines still show where the drop looks past the board.
const (
	surroundPx = 30
	overhangPx = 22
)

// boardView shows the board as one faces it.
type boardView struct {
	board   layout.Rect
	sight   flip.Sight
	pxPerMM float64
	origin  ink.Point // of the board
}

// boardPx is how large the board shows in a space of that many pixels.
func boardPx(board layout.Rect, widthPx, heightPx float64) (pxPerMM, w, h float64) {
	pxPerMM = min(widthPx/board.WidthMM, heightPx/board.HeightMM)
	return pxPerMM, board.WidthMM * pxPerMM, board.HeightMM * pxPerMM
}

// area is where the board itself lies on the map.
func (v boardView) area() ink.Rect {
	return ink.Rect{
		Left: ink.Snapped(v.origin.X), Top: ink.Snapped(v.origin.Y),
		Right:  ink.Snapped(v.origin.X + v.board.WidthMM*v.pxPerMM), // often a whole number, as the room it is given
		Bottom: ink.Snapped(v.origin.Y + v.board.HeightMM*v.pxPerMM),
	}
}

func (v boardView) frame() image.Rectangle {
	a := v.area().Grow(overhangPx)
	return image.Rect(int(math.Floor(a.Left)), int(math.Floor(a.Top)), int(math.Ceil(a.Right)), int(math.Ceil(a.Bottom)))
}

func (v boardView) at(p layout.Point) ink.Point {
	return ink.Point{X: v.origin.X + p.XMM*v.pxPerMM, Y: v.origin.Y + p.YMM*v.pxPerMM}
}

func (v boardView) spot(p layout.Point) (ink.Point, bool) { return v.at(p), true }

func (v boardView) land(at ink.Point) (layout.Point, bool) {
	return layout.Point{XMM: (at.X - v.origin.X) / v.pxPerMM, YMM: (at.Y - v.origin.Y) / v.pxPerMM}, true
}

func (v boardView) mirrors(ink.Point) mirrored { return mirrored{} }

// judge takes the worse of both paths: either may call for care with that seam.
func (v boardView) judge(s seamsight.Sample) seamsight.Verdict { return s.Verdict() }

func (v boardView) inside(at ink.Point) float64 {
	a := v.area()
	return min(at.X-a.Left, a.Right-at.X, at.Y-a.Top, a.Bottom-at.Y)
}

func (v boardView) line(axis string, atMM, fromMM, toMM float64) ink.Path {
	if axis == "x" {
		return ink.Path{v.at(layout.Point{XMM: atMM, YMM: fromMM}), v.at(layout.Point{XMM: atMM, YMM: toMM})}
	}
	return ink.Path{v.at(layout.Point{XMM: fromMM, YMM: atMM}), v.at(layout.Point{XMM: toMM, YMM: atMM})}
}

func (v boardView) around(points []layout.Point) []ink.Path {
	path := make(ink.Path, 0, len(points)+1)
	for _, p := range points {
		path = append(path, v.at(p))
	}
	return []ink.Path{append(path, path[0])}
}

func (v boardView) fill(fill float64) []ink.Path {
	reachMM, ok := v.reachMM(fill)
	if !ok {
		return nil
	}
	if v.sight.Drop.Oblate() {
		return v.oval(fill)
	}
	return rings(v.sight.Drop.Body, v.at(middleOf(v.board)), reachMM*v.pxPerMM, v.frame())
}

// ovalPoints is how many points of the line that a fill makes on the board are traced.
const ovalPoints = 180

// oval is where a drop out of round looks at a fill, ray by ray.
func (v boardView) oval(fill float64) []ink.Path {
	halfWidthMM, halfHeightMM := v.sight.OutlineMM()
	var points []layout.Point
	for i := range ovalPoints {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/ovalPoints - math.Pi/4)
		l, ok := v.sight.Trace(v.sight.PinholeRay(fill*halfWidthMM*cos, fill*halfHeightMM*sin))
		if !ok || !l.Through {
			return nil
		}
		points = append(points, layout.Point{XMM: v.board.WidthMM/2 + l.XMM, YMM: v.board.HeightMM/2 + l.YMM})
	}
	return v.around(points)
}

// reachMM is how far from the board's middle the drop looks at a fill. ok is false when that is off the board
// everywhere.
func (v boardView) reachMM(fill float64) (reachMM float64, ok bool) {
	furthestMM := math.Hypot(v.board.WidthMM, v.board.HeightMM) / 2
	switch v.sight.Drop.Body {
	case flip.UprightRod:
		furthestMM = v.board.WidthMM / 2
	case flip.LevelRod:
		furthestMM = v.board.HeightMM / 2
	}
	const slackMM = 1e-6 // the picture's own fill may reach just as far, but for rounding
	reachMM, ok = v.sight.ReachMM(fill)
	return reachMM, ok && reachMM <= furthestMM+slackMM
}

// frameOnBoard is the part of the board that the frame sees past the drop, nothing when that is all of it or more.
func (m seamMap) frameOnBoard() []ink.Path {
	b, sees := m.plan.Backdrop, m.plan.Sees()
	if sees.WidthMM >= b.WidthMM && sees.HeightMM >= b.HeightMM {
		return nil
	}
	corner := layout.Point{XMM: max(0, (b.WidthMM-sees.WidthMM)/2), YMM: max(0, (b.HeightMM-sees.HeightMM)/2)}
	opposite := layout.Point{XMM: b.WidthMM - corner.XMM, YMM: b.HeightMM - corner.YMM}
	from, to := m.board.at(corner), m.board.at(opposite)
	return []ink.Path{ink.Rect{Left: from.X, Top: from.Y, Right: to.X, Bottom: to.Y}.Outline()}
}
