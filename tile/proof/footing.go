package proof

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// footing is what of a bent picture the rays of a pixel fall on: picture coordinates near the place where the
// pixel's middle lands, told from there by how they change and how that changes. It stands in for asking what
// each ray's own place shows, where that is safe.
type footing struct {
	// whether it is: a bent picture, nowhere near its outline, and hardly anything left of it past the second order
	ok                 bool
	picture            *texture.Texture
	at                 layout.Point // the middle's place, optical mm
	reachXMM, reachYMM float64      // how far from there it was tried
	shown              layout.Shown // there
	u, v               curve
	spread             spread  // of the pixel's rays, in the artwork's pixels
	spanPx             float64 // that the picture need be averaged over for the ray at hand, in the artwork's pixels
}

// curve is how the change of a picture coordinate changes: half of its second derivatives across and down,
// and the mixed one, for a square millimetre.
type curve struct{ xx, xy, yy float64 }

// leftOverPx is how much of a picture coordinate may be left past the second order at the furthest rays of a
// lens, in frame pixels. It is odd: what a ray misses to one side its opposite misses to the other, and a
// pixel's middle does not move.
const leftOverPx = 0.05

// outlineReaches is how many times as far off as the furthest rays the outline must be: far from it the way
// there is known to first order only.
const outlineReaches = 2

// footing is that of a pixel whose middle lands at a place, optical mm, with rays that spread so and reach so
// far across and down.
//
// Through a pinhole rays reach half a pixel, where the first order will do: it misses them by 1/8 of the
// second derivative, which in a drop of radius 1 is under 7 slopes at a fill of 0.8 and 17 at 0.92, 0.01
// pixels and 0.02 with 100 pixels to the radius.
func (b *board) footing(at layout.Point, rays spread, over patch, reachXMM, reachYMM float64) (f footing) {
	if b.bent == nil {
		return f
	}
	reachMM := math.Sqrt((over.xx+over.yy)/pixelVariance) + outlineReaches*(reachXMM+reachYMM)
	f = footing{picture: b.picture, at: at, reachXMM: reachXMM, reachYMM: reachYMM,
		shown: b.bent.Near(at.XMM+b.halfWidthMM, at.YMM+b.halfHeightMM, reachMM)}
	w, h := b.picture.Size()
	f.spread = spread{pixel: patch{rays.pixel}.on(f.shown, float64(w), float64(h)),
		pupil: patch{rays.pupil}.on(f.shown, float64(w), float64(h))}
	f.ok = f.shown.InsideMM > reachMM && (rays.pupil == covariance{} ||
		f.bend(b.bent, float64(w), float64(h), layout.Point{XMM: at.XMM + b.halfWidthMM, YMM: at.YMM + b.halfHeightMM}))
	return f
}

// bend works the curves out about the middle's place, board mm, and tells whether they will do.
func (f *footing) bend(hung *layout.Hanging, widthPx, heightPx float64, at layout.Point) bool {
	x, y := f.reachXMM, f.reachYMM
	tries := [4]struct {
		x, y float64
		layout.Shown
	}{{x: -x}, {x: x}, {y: -y}, {y: y}}
	for k := range tries {
		t := &tries[k]
		if t.Shown = hung.Near(at.XMM+t.x, at.YMM+t.y, 0); t.InsideMM <= 0 {
			return false
		}
	}
	left, right, above, below := &tries[0], &tries[1], &tries[2], &tries[3]
	f.u = curve{(right.UX - left.UX) / (4 * x), (right.UY - left.UY) / (2 * x), (below.UY - above.UY) / (4 * y)}
	f.v = curve{(right.VX - left.VX) / (4 * x), (right.VY - left.VY) / (2 * x), (below.VY - above.VY) / (4 * y)}
	// The pixel's own extent in the artwork is that of its steps across and down.
	mostPx := leftOverPx * leftOverPx * (f.spread.pixel.xx + f.spread.pixel.yy) / 2
	for k := range tries {
		t := &tries[k]
		u, v := f.coordinates(t.x, t.y)
		u, v = (u-t.U)*widthPx, (v-t.V)*heightPx
		if !(u*u+v*v <= mostPx) {
			return false
		}
	}
	return true
}

// coordinates are those of the picture that many millimetres from the middle's place.
func (f *footing) coordinates(x, y float64) (u, v float64) {
	return f.shown.U + (f.shown.UX+f.u.xx*x+f.u.xy*y)*x + (f.shown.UY+f.u.yy*y)*y,
		f.shown.V + (f.shown.VX+f.v.xx*x+f.v.xy*y)*x + (f.shown.VY+f.v.yy*y)*y
}

// take makes ready for a ray.
func (f *footing) take(a *aim) {
	if f.ok {
		f.spanPx = math.Sqrt(f.spread.patch(a).narrow() / pixelVariance)
	}
}

// holds tells whether a place is near enough.
func (f *footing) holds(x, y float64) bool {
	return f.ok && math.Abs(x-f.at.XMM) <= f.reachXMM && math.Abs(y-f.at.YMM) <= f.reachYMM
}

// print is the picture's light at a place near by, for the ray that was taken.
func (f *footing) print(x, y float64) texture.Light {
	u, v := f.coordinates(x-f.at.XMM, y-f.at.YMM)
	return f.picture.At(u, v, f.spanPx)
}

// footing is that of a pixel through a drop, whose middle lands at a place, optical mm, and whose rays spread so.
func (v *view) footing(at layout.Point, rays spread) footing {
	// The pupil's radius is twice its standard deviation.
	reachMM := func(pixel, pupil float64) float64 { return v.thrownPx*math.Sqrt(pixel) + 2*math.Sqrt(pupil) }
	return v.board.footing(at, rays, rays.patch(&v.inside[0]), reachMM(rays.pixel.xx, rays.pupil.xx),
		reachMM(rays.pixel.yy, rays.pupil.yy))
}
