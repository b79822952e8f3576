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

// narrow is the variance that a picture need be averaged over, alike in all directions, on a patch: the patch's least. Where it is long, the rays of the set cover
// its length, and a quarter of it is enough.
func (c covariance) narrow() float64 {
	middle, half := (c.xx+c.yy)/2, math.Hypot((c.xx-c.yy)/2, c.xy)
	return max(middle-half, (middle+half)/4)
}

// patch is the part of the board that one ray stands for, in mm².
type patch struct{ covariance }

// patch is the share of the pixel and the pupil that one of n rays has, and its own part of the diffraction.
func (s spread) patch(ray *sample, n int, l lens) patch {
	airy := ray.airySpread * l.airyPx
	pixel, pupil := pixelVariance*(overlap/float64(n)+airy*airy), overlap/float64(n)
	return patch{covariance{
		xx: pixel*s.pixel.xx + pupil*s.pupil.xx,
		xy: pixel*s.pixel.xy + pupil*s.pupil.xy,
		yy: pixel*s.pixel.yy + pupil*s.pupil.yy,
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

// edgePupilMM is the radius of the pupil's blur in the plane of the drop's edge.
func (v *view) edgePupilMM() float64 {
	return v.lens.pupilMM * math.Abs(v.lens.cameraMM/v.lens.camera.FocusMM-1)
}

// spansAtEdge are the widths of the patches that the rays at the edge stand for in the plane of the drop's edge, the same for every pixel.
func (v *view) spansAtEdge() (spansMM []float64) {
	pixelMM, pupilMM := v.camera.PixelMM(), v.edgePupilMM()
	s := spread{covariance{xx: pixelMM * pixelMM, yy: pixelMM * pixelMM}, covariance{xx: discVariance * pupilMM * pupilMM, yy: discVariance * pupilMM * pupilMM}}
	for k := range v.atEdge {
		spansMM = append(spansMM, math.Sqrt(s.patch(&v.atEdge[k], len(v.atEdge), v.lens).xx/pixelVariance))
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

// throughSpread is the spread of rays through a drop at a point of its plane, by tracing neighbours in pixel and pupil.
func (v *view) throughSpread(p, drop layout.Point) (s spread) {
	pixelMM := v.camera.PixelMM()
	trace := func(p layout.Point, pupilX, pupilY float64) (flip.Landing, bool) {
		l, ok := v.tracer.Trace(fromDrop(v.lens.pupilRay(p, pupilX, pupilY), drop))
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
	stepX, stepY := math.Copysign(pixelMM, drop.XMM-p.XMM), math.Copysign(pixelMM, drop.YMM-p.YMM)
	step(&s.pixel, layout.Point{XMM: p.XMM + stepX, YMM: p.YMM}, 0, 0, 1)
	step(&s.pixel, layout.Point{XMM: p.XMM, YMM: p.YMM + stepY}, 0, 0, 1)
	if v.lens.pupilMM > 0 {
		const part = 0.25 // of the pupil's radius: near enough to be straight, and to stay in the drop
		step(&s.pupil, p, part*v.lens.pupilMM, 0, discVariance/(part*part))
		step(&s.pupil, p, 0, part*v.lens.pupilMM, discVariance/(part*part))
	}
	return s
}
