package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// look is how one path shows a piece of seam, all in mm of the drop's plane.
type look struct {
	at     layout.Point // from the axis
	across float64      // for a millimetre of board across the seam
	along  float64      // and along it
	blur   float64      // of defocus, across the seam, as the diameter of a disc
	boxX   float64      // mm of board that show as a millimetre or less, in x and in y
	boxY   float64
	asides float64 // how far the place lies outside what the path shows: beyond the frame, or behind the drop
	light  float64 // share of the light that gets through
}

// frame is the part of the drop's plane that the camera records, and the drop's outline in it.
type frame struct {
	halfWidthMM, halfHeightMM float64
	body                      flip.Body
	radiusMM                  float64 // half the width of the drop's outline
	heightOverWidth           float64 // of the outline, 1 for a ball
}

// newFrame is the frame of a plan's camera.
func newFrame(p layout.Plan) frame {
	sight := p.Sight()
	return frame{
		p.Camera.FrameWidthMM / 2, p.Camera.FrameHeightMM / 2,
		p.Drop.Body, sight.ApparentRadiusMM(), sight.Drop.HalfHeightMM() / sight.Drop.RadiusMM(),
	}
}

// outside is how far a place lies beyond the frame's edge, 0 within.
func (f frame) outside(p layout.Point) float64 {
	x, y := max(0, math.Abs(p.XMM)-f.halfWidthMM), max(0, math.Abs(p.YMM)-f.halfHeightMM)
	if x == 0 || y == 0 {
		return x + y
	}
	return math.Hypot(x, y)
}

// besides is how far a place lies from where the frame shows it beside the drop: out to the drop's outline,
// and on into the frame. Blur brings light that far round the outline. Of an ellipse the way is taken to its
// tangent, where the line from the axis through the place leaves it.
func (f frame) besides(p layout.Point) float64 {
	x, y := p.XMM, p.YMM
	switch f.body {
	case flip.UprightRod:
		y = 0
	case flip.LevelRod:
		x = 0
	}
	k := f.heightOverWidth
	r := math.Hypot(x, y/k) // in a space in which the ellipse is a circle
	if r >= f.radiusMM {
		return f.outside(p)
	}
	if r == 0 {
		return f.radiusMM * min(1, k)
	}
	slope := math.Hypot(x, y/k/k) / r
	out := (f.radiusMM - r) / r
	return (f.radiusMM-r)/slope + f.outside(layout.Point{XMM: p.XMM + out*x, YMM: p.YMM + out*y})
}

// direct is the path beside the drop: everything in proportion.
type direct struct {
	frame
	scale, blur float64
}

// newDirect prepares the path. From the pupil's centre the board, D + L away, is seen D/(D+L) as large in the
// drop's plane. The blur disc is the thin lens's (Hecht, Optics, 5.2.3): the pupil times |d - focus|/d in the
// plane in focus, and D/focus times that in the drop's plane.
func newDirect(p layout.Plan, f frame) direct {
	d, board, focus := p.Drop.CameraMM, p.Drop.CameraMM+p.Drop.DistanceMM, p.Camera.FocusMM
	return direct{f, d / board, p.Camera.PupilMM() * math.Abs(board-focus) / board * d / focus}
}

// look is how the path shows a place, optical mm from the axis.
func (v direct) look(xMM, yMM float64) look {
	at := layout.Point{XMM: xMM * v.scale, YMM: yMM * v.scale}
	return look{at: at, across: v.scale, along: v.scale, blur: v.blur, boxX: 1 / v.scale, boxY: 1 / v.scale,
		asides: v.besides(at), light: 1}
}
