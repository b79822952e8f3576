package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// view is all that a pixel needs.
type view struct {
	sight  flip.Sight
	camera layout.Camera
	lens   lens
	dropAt layout.Point
	board  board

	inside, past, atEdge []sample
	beside               beside
	edgeMM               float64   // the drop's apparent radius in its plane
	edgeBlurMM           float64   // how far from it pixels may mix rays through the drop and past it
	direct               spread    // of rays past the drop
	edgeSpansMM          []float64 // of the rays at the edge, see spansAtEdge
}

// pixel is the mean of the pixel's rays.
func (v *view) pixel(i, j int) texture.Light {
	at := v.camera.At(float64(i)+0.5, float64(j)+0.5)
	fromEdge := v.fromEdgeMM(at)
	var sum texture.Light
	if fromEdge > v.edgeBlurMM {
		if light, ok := v.beside.at(i, j); ok {
			return light
		}
		return v.pastPixel(i, j, v.past)
	}
	through := v.throughSpread(v.within(at))
	if fromEdge < -v.edgeBlurMM {
		for k := range v.inside {
			s := &v.inside[k]
			sum = sum.Add(v.through(v.ray(i, j, s), through.patch(s, len(v.inside), v.lens)))
		}
		return sum.Scale(1 / float32(len(v.inside)))
	}
	for k := range v.atEdge {
		s := &v.atEdge[k]
		r := v.ray(i, j, s)
		// The share of the ray's patch that the drop covers.
		hidden := covered(-v.sight.Drop.ClearanceMM(v.fromDrop(r)), v.edgeSpansMM[k])
		if hidden > 0 {
			sum = sum.Add(v.through(r, through.patch(s, len(v.atEdge), v.lens)).Scale(float32(hidden)))
		}
		if hidden < 1 {
			sum = sum.Add(v.pastDrop(r, v.direct.patch(s, len(v.atEdge), v.lens)).Scale(float32(1 - hidden)))
		}
	}
	return sum.Scale(1 / float32(len(v.atEdge)))
}

// fromEdgeMM is how far a point of the drop's plane lies outside the drop's visible edge, negative within.
func (v *view) fromEdgeMM(p layout.Point) float64 {
	x, y := p.XMM-v.dropAt.XMM, p.YMM-v.dropAt.YMM
	switch v.sight.Drop.Body {
	case flip.UprightRod:
		y = 0
	case flip.LevelRod:
		x = 0
	}
	return math.Hypot(x, y) - v.edgeMM
}

// within brings a point near the drop's edge a little inside, where rays go through.
func (v *view) within(p layout.Point) layout.Point {
	const share = 0.97
	out := v.fromEdgeMM(p) + v.edgeMM
	if out <= share*v.edgeMM {
		return p
	}
	k := share * v.edgeMM / out
	x, y := p.XMM-v.dropAt.XMM, p.YMM-v.dropAt.YMM
	if v.sight.Drop.Body != flip.LevelRod {
		x *= k
	}
	if v.sight.Drop.Body != flip.UprightRod {
		y *= k
	}
	return layout.Point{XMM: v.dropAt.XMM + x, YMM: v.dropAt.YMM + y}
}

// ray is one of a pixel's rays.
func (v *view) ray(i, j int, s *sample) flip.Ray {
	p := v.camera.At(float64(i)+0.5+s.x+s.airyX*v.lens.airyPx, float64(j)+0.5+s.y+s.airyY*v.lens.airyPx)
	return v.lens.pupilRay(p, s.pupilX*v.lens.pupilMM, s.pupilY*v.lens.pupilMM)
}

// fromDrop moves a ray into the frame whose origin is the drop's centre.
func (v *view) fromDrop(r flip.Ray) flip.Ray {
	r.From.X -= v.dropAt.XMM
	r.From.Y -= v.dropAt.YMM
	return r
}

// through is the light along a ray that meets the drop. One that just misses it, or never reaches the board, shows the drop's rim or its inside, which are dark.
func (v *view) through(r flip.Ray, over patch) texture.Light {
	l, ok := v.sight.Trace(v.fromDrop(r))
	if !ok || !l.Through {
		return texture.Light{}
	}
	return v.board.at(l.XMM+v.dropAt.XMM, l.YMM+v.dropAt.YMM, over).Scale(float32(l.Transmittance))
}

// pastDrop is the light along a ray that passes beside the drop.
func (v *view) pastDrop(r flip.Ray, over patch) texture.Light {
	t := (v.sight.DistanceMM - r.From.Z) / r.Dir.Z
	return v.board.at(r.From.X+t*r.Dir.X, r.From.Y+t*r.Dir.Y, over)
}
