package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// view is all that a pixel needs.
type view struct {
	sight   flip.Sight
	tracer  flip.Tracer
	camera  layout.Camera
	lens    lens
	drops   []layout.Point // their centres in their plane, in the exposure's middle, optical mm from the axis; one or more
	motion  Motion
	sweep   sweep // of each while the frame is exposed
	surface *board.Surface
	lamps   layout.Light
	white   float32 // the light of the print's white in full light, in the frame

	inside, past, atEdge []aim
	beside               beside
	lattice              lattice
	landings             *landings
	rings                []*rings // of each drop, by what comes through it
	mirrors              []*rings // and by what its front mirrors; nil where there are none
	// the half-width and half-height of a drop's visible edge in its plane; infinite along a rod
	outline       layout.Size
	thrownPx      float64       // how far from its pixel's middle a ray inside looks at most
	edgeBlurMM    float64       // how far from a drop's edge as it passes pixels may mix rays through the drop and past it
	direct        spread        // of rays past the drop
	edgePatches   []board.Patch // of the rays at the edge, see patchesAtEdge
	edgeReachesMM []float64     // and reachesAtEdge
	skin          skin
	draft         bool // rays are so few that slopes stand for them
}

// pixel is the mean of the pixel's rays.
func (v *view) pixel(i, j int) texture.Light {
	at := v.camera.At(float64(i)+0.5, float64(j)+0.5)
	drop := v.nearest(at)
	leastMM, mostMM := v.fromEdgesMM(at, drop)
	if leastMM > v.edgeBlurMM {
		return v.besidePixel(i, j)
	}
	if mostMM > -v.edgeBlurMM {
		return v.edgePixel(i, j, at, drop)
	}
	through := v.insidePixel(i, j, at, drop)
	return through.Add(v.skinPixel(i, j, at, drop, mostMM)).Add(v.ghostPixel(i, j, at, drop, through))
}

// insidePixel is the light that comes through a drop to a pixel whose rays all meet it.
func (v *view) insidePixel(i, j int, at, drop layout.Point) texture.Light {
	if v.lens.pinhole() {
		return v.sharpPixel(i, j, at, drop)
	}
	if v.draft && !v.moves() {
		if light, ok := v.draftPixel(i, j, at, drop); ok {
			return light
		}
	}
	through := v.throughSpread(i, j, at, drop)
	var near board.Expansion
	if at, _, ok := v.middle(i, j, drop); ok {
		near = v.expansion(at, through, through.patch(&v.inside[0]))
	}
	var sum texture.Light
	for k := range v.inside {
		a := &v.inside[k]
		over := through.patch(a)
		near.Average(over)
		sum = sum.Add(v.throughInside(i, j, k, at, drop, over, &near))
	}
	return sum.Scale(1 / float32(len(v.inside)))
}

// middle is where the ray from the pupil's middle through a pixel's lands, and how much of its light gets
// there; ok is false when it doesn't go through the drop.
func (v *view) middle(i, j int, drop layout.Point) (at layout.Point, transmittance float64, ok bool) {
	l, ok := v.tracer.Trace(fromDrop(v.lens.ray(i, j, &aim{}), drop))
	return layout.Point{XMM: l.XMM + drop.XMM, YMM: l.YMM + drop.YMM}, l.Transmittance, ok && l.Through
}

// nearest is the centre of the drop that a point of the drops' plane lies in, or nearest to. Drops do not
// overlap, and are all alike.
func (v *view) nearest(p layout.Point) layout.Point {
	nearest := v.drops[0]
	for _, drop := range v.drops[1:] {
		if v.share(p, drop) < v.share(p, nearest) {
			nearest = drop
		}
	}
	return nearest
}

// share is how far out in a drop a point of its plane lies: 1 on its visible edge.
func (v *view) share(p, drop layout.Point) float64 {
	x, y := (p.XMM-drop.XMM)/v.outline.WidthMM, (p.YMM-drop.YMM)/v.outline.HeightMM
	return math.Sqrt(x*x + y*y)
}

// fromEdgeMM is how far a point of a drop's plane lies outside the drop's visible edge, negative within: for
// one out of round at least so far, for from one ellipse to a similar one it is nearest along the shorter
// axis. Of a drop that hangs it is that of its own outline, with its holder's.
func (v *view) fromEdgeMM(p, drop layout.Point) float64 {
	if v.sight.Drop.Body == flip.Hanging {
		const least = 0.9 // clearance is exact at the edge alone
		return least * v.tracer.ClearanceMM(fromDrop(v.lens.pupilRay(p, 0, 0), drop))
	}
	return (v.share(p, drop) - 1) * min(v.outline.WidthMM, v.outline.HeightMM)
}

// within brings a point near a drop's edge a little inside, where rays go through.
func (v *view) within(p, drop layout.Point) layout.Point {
	const share = 0.97
	if v.sight.Drop.Body == flip.Hanging {
		return v.withinHanging(p, drop, share)
	}
	out := v.share(p, drop)
	if out <= share {
		return p
	}
	k := share / out
	x, y := p.XMM-drop.XMM, p.YMM-drop.YMM
	if v.sight.Drop.Body != flip.LevelRod {
		x *= k
	}
	if v.sight.Drop.Body != flip.UprightRod {
		y *= k
	}
	return layout.Point{XMM: drop.XMM + x, YMM: drop.YMM + y}
}

// withinHanging is within for a drop that hangs: toward its middle as far as is needed.
func (v *view) withinHanging(p, drop layout.Point, share float64) layout.Point {
	insideMM := (1 - share) * v.outline.WidthMM
	for range 50 {
		if v.fromEdgeMM(p, drop) <= -insideMM {
			break
		}
		p.XMM, p.YMM = drop.XMM+share*(p.XMM-drop.XMM), drop.YMM+share*(p.YMM-drop.YMM)
	}
	return p
}

// fromDrop moves a ray into the frame whose origin is a drop's centre.
func fromDrop(r flip.Ray, drop layout.Point) flip.Ray {
	r.From.X -= drop.XMM
	r.From.Y -= drop.YMM
	return r
}

// through is the light that comes through a drop along a ray, near such a place of the board if one is told: none
// where it never reaches the board. A ray that just misses the drop stands for those that graze it, all of whose light
// goes straight on.
func (v *view) through(r flip.Ray, drop layout.Point, over board.Patch, near *board.Expansion) texture.Light {
	l, ok := v.tracer.Trace(fromDrop(r, drop))
	switch {
	case !ok:
		return texture.Light{}
	case !l.Through:
		over, near = v.direct.patch(&v.atEdge[0]), nil
	}
	return v.landed(l.XMM+drop.XMM, l.YMM+drop.YMM, over, near).Scale(float32(l.Transmittance))
}
