package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Variances along an axis of even distributions: a pixel of side 1, and a disc of radius 1.
const (
	pixelVariance = 1.0 / 12
	discVariance  = 1.0 / 4
)

// spread is how far apart on the board a pixel's rays land, as covariances in mm²: for a step of one pixel, and for the whole pupil.
type spread struct{ pixel, pupil covariance }

type covariance struct{ xx, xy, yy float64 }

// add counts a step (x, y) in.
func (c *covariance) add(x, y, weight float64) {
	c.xx, c.xy, c.yy = c.xx+weight*x*x, c.xy+weight*x*y, c.yy+weight*y*y
}

// patch is the part of the board that one ray stands for: its variance across, down, and for a picture that is averaged alike both ways.
type patch struct{ acrossMM2, downMM2, pictureMM2 float64 }

// patch is the share of the pixel and the pupil that one of n rays has, and its own part of the diffraction. Where it is long, the rays
// of the set cover its length, and the picture need be averaged over a quarter of it only.
func (s spread) patch(ray *sample, n int, l lens) patch {
	airy := ray.airySpread * l.airyPx
	pixel, pupil := pixelVariance*(overlap/float64(n)+airy*airy), overlap/float64(n)
	xx := pixel*s.pixel.xx + pupil*s.pupil.xx
	xy := pixel*s.pixel.xy + pupil*s.pupil.xy
	yy := pixel*s.pixel.yy + pupil*s.pupil.yy
	middle, half := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return patch{xx, yy, max(middle-half, (middle+half)/4)}
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

// edgePupilMM is the radius of the pupil's blur in the plane of the drop's edge.
func (v *view) edgePupilMM() float64 {
	return v.lens.pupilMM * math.Abs(v.lens.cameraMM/v.lens.camera.FocusMM-1)
}

// spansAtEdge are the widths of the patches that the rays at the edge stand for in the plane of the drop's edge, the same for every pixel.
func (v *view) spansAtEdge() (spansMM []float64) {
	pixelMM, pupilMM := v.camera.PixelMM(), v.edgePupilMM()
	s := spread{covariance{xx: pixelMM * pixelMM, yy: pixelMM * pixelMM}, covariance{xx: discVariance * pupilMM * pupilMM, yy: discVariance * pupilMM * pupilMM}}
	for k := range v.atEdge {
		spansMM = append(spansMM, math.Sqrt(s.patch(&v.atEdge[k], len(v.atEdge), v.lens).acrossMM2/pixelVariance))
	}
	return spansMM
}

// edgeReachMM is how far from the drop's edge its blur reaches, in the plane of the edge.
func (v *view) edgeReachMM() (reachMM float64) {
	for k := range v.atEdge {
		s := &v.atEdge[k]
		thrown := (1 + math.Hypot(s.airyX, s.airyY)*v.lens.airyPx) * v.camera.PixelMM()
		reachMM = max(reachMM, thrown+v.edgePupilMM()+v.edgeSpansMM[k])
	}
	return reachMM
}

// throughSpread is the spread of rays through the drop at a point of its plane, by tracing neighbours in pixel and pupil.
func (v *view) throughSpread(p layout.Point) (s spread) {
	pixelMM := v.camera.PixelMM()
	trace := func(p layout.Point, pupilX, pupilY float64) (flip.Landing, bool) {
		l, ok := v.sight.Trace(v.fromDrop(v.lens.pupilRay(p, pupilX, pupilY)))
		return l, ok && l.Through
	}
	centre, ok := trace(p, 0, 0)
	if !ok {
		return s
	}
	step := func(c *covariance, p layout.Point, pupilX, pupilY, weight float64) {
		if l, ok := trace(p, pupilX, pupilY); ok {
			c.add(l.XMM-centre.XMM, l.YMM-centre.YMM, weight)
		}
	}
	// Steps go toward the drop's middle, so that a neighbour at the rim does not miss.
	stepX, stepY := math.Copysign(pixelMM, v.dropAt.XMM-p.XMM), math.Copysign(pixelMM, v.dropAt.YMM-p.YMM)
	step(&s.pixel, layout.Point{XMM: p.XMM + stepX, YMM: p.YMM}, 0, 0, 1)
	step(&s.pixel, layout.Point{XMM: p.XMM, YMM: p.YMM + stepY}, 0, 0, 1)
	if v.lens.pupilMM > 0 {
		const part = 0.25 // of the pupil's radius: near enough to be straight, and to stay in the drop
		step(&s.pupil, p, part*v.lens.pupilMM, 0, discVariance/(part*part))
		step(&s.pupil, p, 0, part*v.lens.pupilMM, discVariance/(part*part))
	}
	return s
}
