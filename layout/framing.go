package layout

import (
	"fmt"
	"math"
)

// Framing says which part of the picture comes where in the drop. The zero Framing has the picture's middle
// on the axis, upright.
type Framing struct {
	// Off is how far from the picture's middle the point lies that sits on the axis, as shares of its width
	// and height, each from -0.5 to 0.5.
	OffX float64 `json:"off_x"`
	OffY float64 `json:"off_y"`
	// TurnDeg turns the picture clockwise as it appears in the drop, in degrees.
	TurnDeg float64 `json:"turn_deg"`
	// Round is for a subject that is round and touches the picture's shorter sides: only the circle is printed.
	Round bool `json:"round,omitempty"`
}

// edgeNearest is how near to the picture's edge, as a share of its side, a point may lie that is to sit on
// the axis of a picture which covers the drop: nearer, the picture would have to be fifty times as large as
// the drop sees.
const edgeNearest = 0.01

// check refuses what can't be framed.
func (f Framing) check(fit Fit) error {
	if !(math.Abs(f.TurnDeg) <= 360) {
		return fmt.Errorf("a turn of %g degrees can't be\nhint: take one from -360 to 360", f.TurnDeg)
	}
	if !(math.Abs(f.OffX) <= 0.5 && math.Abs(f.OffY) <= 0.5) {
		return fmt.Errorf("a point at %g,%g of the picture can't sit on the axis\nhint: take shares from 0 to 1",
			f.OffX+0.5, f.OffY+0.5)
	}
	if most := 0.5 - edgeNearest; fit == Cover && (math.Abs(f.OffX) > most || math.Abs(f.OffY) > most) {
		return fmt.Errorf("a picture can't cover the drop about %g,%g, at its very edge\nhint: take a point further in, or "+
			"--fit inside", f.OffX+0.5, f.OffY+0.5)
	}
	return nil
}

// frame is a picture of height 1 as it lies about the axis in the drop: x right, y down.
type frame struct {
	corners [4]Point
	normals [4]Point   // of its sides, outward, of length 1
	away    [4]float64 // how far from the axis each side lies
}

// frame lays out a picture that is that many times as wide as high.
func (f Framing) frame(proportions float64) frame {
	sin, cos := math.Sincos(f.TurnDeg * math.Pi / 180)
	turned := func(x, y float64) Point { return Point{x*cos - y*sin, x*sin + y*cos} }
	left, right := (-0.5-f.OffX)*proportions, (0.5-f.OffX)*proportions
	top, bottom := -0.5-f.OffY, 0.5-f.OffY
	return frame{
		corners: [4]Point{turned(left, top), turned(right, top), turned(right, bottom), turned(left, bottom)},
		normals: [4]Point{turned(0, -1), turned(1, 0), turned(0, 1), turned(-1, 0)},
		away:    [4]float64{-top, right, bottom, -left},
	}
}

// nearest is how far the nearest side lies from the axis.
func (f frame) nearest() float64 { return min(f.away[0], f.away[1], f.away[2], f.away[3]) }

// scale is how large the picture must be, its height, to meet an ellipse about the axis of these semi-axes:
// to cover it, each side must lie outside of the ellipse's tangent in its direction; to lie inside, no corner
// may. A rod's ellipse has no extent along it, where any size serves.
func (f frame) scale(fit Fit, semi Size) (heightMM float64) {
	if fit == Cover {
		for i, n := range f.normals {
			heightMM = max(heightMM, math.Hypot(semi.WidthMM*n.XMM, semi.HeightMM*n.YMM)/f.away[i])
		}
		return heightMM
	}
	outermost := 0.0
	for _, c := range f.corners {
		var x, y float64
		if semi.WidthMM > 0 {
			x = c.XMM / semi.WidthMM
		}
		if semi.HeightMM > 0 {
			y = c.YMM / semi.HeightMM
		}
		outermost = max(outermost, math.Hypot(x, y))
	}
	return 1 / outermost
}
