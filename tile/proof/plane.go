package proof

import (
	"context"
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// plane is what rays past the drop see of the board's plane, at knots. Far out of focus such rays land close
// together, many times over, and each stands for much the same patch: light is worked out once for a knot,
// over such a patch, and between knots lies on slopes.
type plane struct {
	stepMM float64     // from knot to knot; one lies on the axis, so that they are the same however much is worked out
	first  image.Point // number of the first knot, counted from that
	across int         // knots in a row
	knots  []texture.Light
	rays   []layout.Point // where each of a pixel's rays lands, in steps from where its middle does
}

// knotsADeviation is how many steps go into the standard deviation of a ray's patch. Light read on slopes
// between knots is averaged with a variance of 1/6 of the step's square more: so much less a knot's patch
// has, knotVariance in shares of a ray's.
const (
	knotsADeviation = 2
	knotVariance    = 1 - 1.0/(6*knotsADeviation*knotsADeviation)
)

// newPlane works the plane out as far as pixels see it with a set of rays, those from a rectangle's corner to
// the opposite one, both included. It is nil where that would take more knots than the frame has pixels.
func (v *view) newPlane(ctx context.Context, pixels image.Rectangle, set []aim) *plane {
	var variance float64
	least, most := layout.Point{}, layout.Point{}
	p := plane{rays: make([]layout.Point, len(set))}
	for k := range set {
		at := v.pastOffset(&set[k])
		p.rays[k] = at
		least, most = layout.Point{XMM: min(least.XMM, at.XMM), YMM: min(least.YMM, at.YMM)},
			layout.Point{XMM: max(most.XMM, at.XMM), YMM: max(most.YMM, at.YMM)}
		variance += v.direct.patch(&set[k]).XX / float64(len(set))
	}
	p.stepMM = math.Sqrt(variance) / knotsADeviation
	from, to := v.pastMiddle(pixels.Min.X, pixels.Min.Y), v.pastMiddle(pixels.Max.X, pixels.Max.Y)
	// a knot more for rounding
	left, top := math.Floor((from.XMM+least.XMM)/p.stepMM)-1, math.Floor((from.YMM+least.YMM)/p.stepMM)-1
	across, down := math.Floor((to.XMM+most.XMM)/p.stepMM)+3-left, math.Floor((to.YMM+most.YMM)/p.stepMM)+3-top
	if !(across*down <= float64(v.camera.WidthPx)*float64(v.camera.HeightPx)) {
		return nil
	}
	for k, at := range p.rays {
		p.rays[k] = layout.Point{XMM: at.XMM / p.stepMM, YMM: at.YMM / p.stepMM}
	}
	over := board.Patch{XX: knotVariance * variance, YY: knotVariance * variance}
	p.first, p.across = image.Pt(int(left), int(top)), int(across)
	p.knots = make([]texture.Light, p.across*int(down))
	texture.Rows(int(down), func(j int) {
		if ctx.Err() != nil {
			return
		}
		for i := range p.across {
			p.knots[j*p.across+i] = v.landed(float64(p.first.X+i)*p.stepMM, float64(p.first.Y+j)*p.stepMM, over, nil)
		}
	})
	return &p
}

// pastMiddle is where the ray from the pupil's middle through a pixel's lands on the board's plane.
func (v *view) pastMiddle(i, j int) layout.Point {
	t := (v.lens.cameraMM + v.sight.DistanceMM) / v.lens.camera.FocusMM
	return layout.Point{
		XMM: (float64(i) + 0.5 - v.lens.middleXPx) * v.lens.pixelXMM * t,
		YMM: (float64(j) + 0.5 - v.lens.middleYPx) * v.lens.pixelYMM * t,
	}
}

// pastOffset is how far from there one of the pixel's rays lands.
func (v *view) pastOffset(a *aim) layout.Point {
	t := (v.lens.cameraMM + v.sight.DistanceMM) / v.lens.camera.FocusMM
	return layout.Point{
		XMM: a.pupilXMM*(1-t) + a.xPx*v.lens.pixelXMM*t,
		YMM: a.pupilYMM*(1-t) + a.yPx*v.lens.pixelYMM*t,
	}
}

// mean is the mean light of the rays of a pixel whose middle lands there.
func (p *plane) mean(middle layout.Point) (sum texture.Light) {
	for k := range p.rays {
		sum = sum.Add(p.ray(k, middle))
	}
	return sum.Scale(1 / float32(len(p.rays)))
}

// ray is the light of one of them.
func (p *plane) ray(k int, middle layout.Point) texture.Light {
	x, y := middle.XMM/p.stepMM+p.rays[k].XMM, middle.YMM/p.stepMM+p.rays[k].YMM
	left, top := math.Floor(x), math.Floor(y)
	i, j := int(left)-p.first.X, int(top)-p.first.Y
	fx, fy := float32(x-left), float32(y-top)
	upper, lower := p.knots[j*p.across+i:][:2], p.knots[(j+1)*p.across+i:][:2]
	return upper[0].Mix(upper[1], fx).Mix(lower[0].Mix(lower[1], fx), fy)
}
