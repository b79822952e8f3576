package proof

import "math"

// Variances along an axis of even distributions: a pixel of side 1, and a disc of radius 1.
const (
	pixelVariance = 1.0 / 12
	discVariance  = 1.0 / 4
)

// spread is how far apart on the board a pixel's rays land, as covariances in mm²: for a step of one pixel,
// and for the whole pupil.
type spread struct{ pixel, pupil covariance }

type covariance struct{ xx, xy, yy float64 }

// add counts a step (x, y) in.
func (c *covariance) add(x, y, weight float64) {
	c.xx, c.xy, c.yy = c.xx+weight*x*x, c.xy+weight*x*y, c.yy+weight*y*y
}

// narrow is the variance that a picture need be averaged over, alike in all directions, on a patch: the
// patch's least. Where it is long, the rays of the set cover its length, and a quarter of it is enough.
func (c covariance) narrow() float64 {
	middle, half := (c.xx+c.yy)/2, math.Sqrt((c.xx-c.yy)*(c.xx-c.yy)/4+c.xy*c.xy)
	return max(middle-half, (middle+half)/4)
}

// patch is the part of the board that one ray stands for, in mm².
type patch struct{ covariance }

// patch is the part that one ray has.
func (s *spread) patch(a *aim) patch {
	return patch{covariance{
		xx: a.pixelVariance*s.pixel.xx + a.pupilVariance*s.pupil.xx,
		xy: a.pixelVariance*s.pixel.xy + a.pupilVariance*s.pupil.xy,
		yy: a.pixelVariance*s.pixel.yy + a.pupilVariance*s.pupil.yy,
	}}
}

// directSpread is the spread of rays past the drop, the same everywhere.
func (v *view) directSpread() (s spread) {
	far := v.lens.cameraMM + v.sight.DistanceMM
	pixelMM := v.camera.PixelMM() * far / v.lens.cameraMM
	pupilMM := v.lens.pupilMM * (far/v.lens.camera.FocusMM - 1)
	s.pixel = covariance{pixelMM * pixelMM, 0, pixelMM * pixelMM}
	s.pupil = covariance{discVariance * pupilMM * pupilMM, 0, discVariance * pupilMM * pupilMM}
	return s
}
