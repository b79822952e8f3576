package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
)

// slopes are how far a ray through a drop moves on the board, mm: for a step of one pixel across and down,
// and for one as wide as the pupil's radius.
type slopes struct{ across, down, pupilAcross, pupilDown step }

type step struct{ xMM, yMM float64 }

// slopes traces neighbours of the ray through a point of the drops' plane, in pixel and pupil. One that does
// not get through counts as none. ok is false when the ray itself does not.
func (v *view) slopes(p, drop layout.Point) (s slopes, ok bool) {
	return v.slopesOf(p, drop, func(r flip.Ray) (layout.Point, bool) {
		l, ok := v.tracer.Trace(r)
		return layout.Point{XMM: l.XMM, YMM: l.YMM}, ok && l.Through
	})
}

// slopesOf are those of any way to the board, for rays in the frame whose origin is the drop's centre.
func (v *view) slopesOf(p, drop layout.Point, lands func(flip.Ray) (layout.Point, bool)) (s slopes, ok bool) {
	trace := func(p layout.Point, pupilXMM, pupilYMM float64) (layout.Point, bool) {
		return lands(fromDrop(v.lens.pupilRay(p, pupilXMM, pupilYMM), drop))
	}
	middle, ok := trace(p, 0, 0)
	if !ok {
		return s, false
	}
	to := func(p layout.Point, pupilXMM, pupilYMM, steps float64) (s step) {
		if l, ok := trace(p, pupilXMM, pupilYMM); ok {
			s = step{(l.XMM - middle.XMM) / steps, (l.YMM - middle.YMM) / steps}
		}
		return s
	}
	// Steps go toward the drop's middle, so that a neighbour at the rim does not miss.
	pixelMM := v.camera.PixelMM()
	x, y := math.Copysign(1, drop.XMM-p.XMM), math.Copysign(1, drop.YMM-p.YMM)
	s.across = to(layout.Point{XMM: p.XMM + x*pixelMM, YMM: p.YMM}, 0, 0, x)
	s.down = to(layout.Point{XMM: p.XMM, YMM: p.YMM + y*pixelMM}, 0, 0, y)
	if v.lens.pupilMM > 0 {
		const part = 0.25 // of the pupil's radius: near enough to be straight, and to stay in the drop
		s.pupilAcross = to(p, part*v.lens.pupilMM, 0, part)
		s.pupilDown = to(p, 0, part*v.lens.pupilMM, part)
	}
	return s, true
}

// spread is what they come to. A drop that falls past a ray moves its landing as far as a step up in the drop does,
// and by its own fall: but for the ray's own slant, which leaves out a few hundredths.
func (v *view) spread(s *slopes) spread {
	out := spread{pixel: spanned(s.across, s.down, pixelVariance),
		pupil: spanned(s.pupilAcross, s.pupilDown, discVariance)}
	if smearMM := v.sweep.mm(); smearMM > 0 {
		steps := smearMM / v.camera.PixelMM()
		out.fall = spanned(step{-steps * s.down.xMM, smearMM - steps*s.down.yMM}, step{}, timeVariance)
	}
	return out
}

// spanned is the covariance of two steps.
func spanned(a, b step, weight float64) board.Patch {
	return board.Patch{
		XX: weight * (a.xMM*a.xMM + b.xMM*b.xMM),
		XY: weight * (a.xMM*a.yMM + b.xMM*b.yMM),
		YY: weight * (a.yMM*a.yMM + b.yMM*b.yMM),
	}
}

// to is the way from s to t, part 0 to 1.
func (s step) to(t step, part float64) step {
	return step{s.xMM + part*(t.xMM-s.xMM), s.yMM + part*(t.yMM-s.yMM)}
}

func (s *slopes) to(t *slopes, part float64) slopes {
	return slopes{s.across.to(t.across, part), s.down.to(t.down, part), s.pupilAcross.to(t.pupilAcross, part),
		s.pupilDown.to(t.pupilDown, part)}
}
