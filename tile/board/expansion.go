package board

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// Expansion is a Taylor expansion of what the picture shows about a place: picture coordinates with their first
// derivatives, and of a bent picture the second ones where asked for. It stands in for asking what each ray of
// a pixel falls on, where that is safe. The zero Expansion holds nowhere.
type Expansion struct {
	// OK tells whether it is: picture alone, nowhere near its outline, and hardly anything left of it past the
	// order of the expansion.
	OK bool

	surface            *Surface
	about              layout.Point
	reachXMM, reachYMM float64 // how far from there it was tried
	seams              bool    // whether a seam may be met there
	shown              layout.Shown
	u, v               curve
	depth              texture.Depth // at which the picture is read for the ray at hand
}

// curve is how the change of a picture coordinate changes: half of its second derivatives across and down,
// and the mixed one, for a square millimetre.
type curve struct{ xx, xy, yy float64 }

// Reach is what an expansion must hold for.
type Reach struct {
	XMM, YMM float64 // how far the furthest rays land from its place, across and down
	Pixel    Patch   // of a whole pixel
	Ray      Patch   // the largest patch of a ray
	// FirstOrder leaves the second derivatives out. Through a pinhole rays reach half a pixel, where the first
	// order will do: it misses them by 1/8 of the second derivative, which in a drop of radius 1 is under 7
	// slopes at a fill of 0.8 and 17 at 0.92, 0.01 pixels and 0.02 with 100 pixels to the radius.
	FirstOrder bool
}

// leftOverPx is how much of a picture coordinate may be left past the second order at the furthest rays, in
// frame pixels. It is odd: what a ray misses to one side its opposite misses to the other, and a pixel's middle
// does not move.
const leftOverPx = 0.05

// outlineReaches is how many times as far off as the furthest rays the outline must be: far from it the way
// there is known to first order only.
const outlineReaches = 2

// Expand is the expansion about a place.
func (s *Surface) Expand(xMM, yMM float64, reach Reach) (e Expansion) {
	widestMM := reach.Ray.widestMM()
	reachMM := widestMM + outlineReaches*(reach.XMM+reach.YMM)
	e = Expansion{surface: s, about: layout.Point{XMM: xMM, YMM: yMM}, reachXMM: reach.XMM, reachYMM: reach.YMM,
		shown: s.hanging.Near(xMM, yMM, reachMM)}
	e.seams = s.seams.within(xMM, yMM, reach.XMM+widestMM, reach.YMM+widestMM)
	if e.OK = e.shown.InsideMM > reachMM; !e.OK {
		return e
	}
	if s.hanging.Plain() {
		e.OK = s.sheets.all // of a bent picture, all lies on sheets
	} else if !reach.FirstOrder {
		e.OK = e.bend(reach.Pixel)
	}
	return e
}

// bend works the curves out and tells whether they will do.
func (e *Expansion) bend(pixel Patch) bool {
	x, y := e.reachXMM, e.reachYMM
	tries := [4]struct {
		x, y float64
		layout.Shown
	}{{x: -x}, {x: x}, {y: -y}, {y: y}}
	for k := range tries {
		t := &tries[k]
		t.Shown = e.surface.hanging.Near(e.about.XMM+t.x, e.about.YMM+t.y, 0)
		if t.InsideMM <= 0 {
			return false
		}
	}
	left, right, above, below := &tries[0], &tries[1], &tries[2], &tries[3]
	e.u = curve{(right.UX - left.UX) / (4 * x), (right.UY - left.UY) / (2 * x), (below.UY - above.UY) / (4 * y)}
	e.v = curve{(right.VX - left.VX) / (4 * x), (right.VY - left.VY) / (2 * x), (below.VY - above.VY) / (4 * y)}
	// The pixel's own extent in the artwork is that of its steps across and down.
	w, h := e.surface.widthPx, e.surface.heightPx
	own := pixel.onPicture(e.shown, w, h)
	mostPx := leftOverPx * leftOverPx * (own.XX + own.YY) / 2 * sideSquared
	for k := range tries {
		t := &tries[k]
		u, v := e.Coordinates(t.x, t.y)
		u, v = (u-t.U)*w, (v-t.V)*h
		if !(u*u+v*v <= mostPx) {
			return false
		}
	}
	return true
}

// Coordinates are those of the picture that many millimetres from the expansion's place.
func (e *Expansion) Coordinates(x, y float64) (u, v float64) {
	return e.shown.U + (e.shown.UX+e.u.xx*x+e.u.xy*y)*x + (e.shown.UY+e.u.yy*y)*y,
		e.shown.V + (e.shown.VX+e.v.xx*x+e.v.xy*y)*x + (e.shown.VY+e.v.yy*y)*y
}

// Average makes ready for rays that have such a patch.
func (e *Expansion) Average(over Patch) {
	if e.OK {
		e.depth = texture.DepthFor(e.surface.narrowPx(over, &e.shown))
	}
}

// Holds tells whether a place is near enough.
func (e *Expansion) Holds(xMM, yMM float64) bool {
	return e.OK && math.Abs(xMM-e.about.XMM) <= e.reachXMM && math.Abs(yMM-e.about.YMM) <= e.reachYMM
}

// light is the picture's light at a place near by, for the patch made ready for.
func (e *Expansion) light(xMM, yMM float64) texture.Light {
	u, v := e.Coordinates(xMM-e.about.XMM, yMM-e.about.YMM)
	return e.surface.picture.AtDepth(u, v, e.depth)
}
