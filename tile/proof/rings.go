package proof

import (
	"context"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// rings is how rays through a ball land, and how landings change, by how far out in it they pass and which way. Both
// change slowly along a ring, and evenly across rings that lie closer toward the rim; between the knots they lie on
// straight lines.
//
// Frame: a knot at the share u of the visible radius and the angle phi looks through the drop's centre plus
// (u W cos phi, u H sin phi) of the drops' plane, W and H half the outline. What it holds is turned back by phi,
// so that in a drop on the axis all knots of a ring hold the same.
type rings struct {
	drop    layout.Point
	outline layout.Size
	count   int     // steps from the middle to the outermost ring
	ways    int     // knots in a ring
	step    float64 // from ring to ring, radians
	first   int     // the innermost ring that is worked out
	knots   []knot
}

// knot is what a ray through one place does; ok is false where it does not get to the board.
type knot struct {
	slopes
	lands step    // on the board, from the drop's centre
	share float64 // of its light that gets there
	ok    bool
}

// Slopes grow as (1 - u²)^(-3/2) toward the rim, which is cos^-3 of the angle whose sine is u. Rings are evenly
// spaced by that angle, of which there is 1.19 up to outermostShare, and the second derivative of cos^-3 is under
// 90 times itself there: a straight line misses by 1/8 (1.19/128)² 90, a tenth of a per cent. Around a ring a drop
// out of round repeats itself twice: a straight line misses by 1/8 (2 · 2π/96)², a fifth of a per cent of how much
// a ring's knots differ. A test holds it against traced slopes.
const (
	ringCount      = 128
	wayCount       = 96
	outermostShare = 0.93
	// mostGrowth is how much larger slopes may be a ring further out: where a ray hardly gets to the board they grow
	// beyond any straight line.
	mostGrowth = 1.12
	// A draft has fewer knots: it may miss by so many times as much, squared.
	draftRings = 2
	draftWays  = 3
)

// newRings works them out for one drop, from such a share of its radius on, with the way that rays take to the board in
// the frame whose origin is the drop's centre. It is nil for a drop that has hardly as many pixels as knots.
func (v *view) newRings(ctx context.Context, drop layout.Point, fromShare float64,
	lands func(flip.Ray) (layout.Point, float64, bool)) *rings {
	r := &rings{drop: drop, outline: v.outline, count: ringCount, ways: wayCount}
	if v.draft {
		r.count, r.ways = ringCount/draftRings, wayCount/draftWays
	}
	pixelMM := v.camera.PixelMM()
	pixels := math.Pi * v.outline.WidthMM * v.outline.HeightMM / (pixelMM * pixelMM)
	if !(pixels > 2*float64(r.count*r.ways)) || fromShare >= outermostShare {
		return nil
	}
	r.step = math.Asin(outermostShare) / float64(r.count)
	r.knots = make([]knot, (r.count+1)*r.ways)
	r.first = max(0, int(math.Asin(max(0, fromShare))/r.step)-1)
	texture.Rows(r.count+1-r.first, func(n int) {
		n += r.first
		u := math.Sin(float64(n) * r.step)
		for w := range r.ways {
			if ctx.Err() != nil {
				return
			}
			sin, cos := math.Sincos(2 * math.Pi * float64(w) / float64(r.ways))
			at := layout.Point{XMM: drop.XMM + u*v.outline.WidthMM*cos, YMM: drop.YMM + u*v.outline.HeightMM*sin}
			k := &r.knots[n*r.ways+w]
			if k.slopes, k.ok = v.slopesOf(at, drop, func(ray flip.Ray) (layout.Point, bool) {
				p, _, ok := lands(ray)
				return p, ok
			}); !k.ok || v.lacks(&k.slopes) {
				k.ok = false
				continue
			}
			p, share, _ := lands(fromDrop(v.lens.pupilRay(at, 0, 0), drop))
			k.lands, k.share = step{p.XMM, p.YMM}, share
			k.turn(cos, -sin)
		}
	})
	r.keepEven()
	return r
}

// lacks tells whether one of the neighbours did not get through.
func (v *view) lacks(s *slopes) bool {
	return s.across == step{} || s.down == step{} ||
		v.lens.pupilMM > 0 && (s.pupilAcross == step{} || s.pupilDown == step{})
}

// keepEven gives up knots beyond which slopes grow too much for a straight line.
func (r *rings) keepEven() {
	most := math.Pow(mostGrowth, ringCount/float64(r.count))
	for n := r.count; n > r.first; n-- {
		for w := range r.ways {
			inner, outer := &r.knots[(n-1)*r.ways+w], &r.knots[n*r.ways+w]
			if inner.ok && outer.ok && outer.size() > most*inner.size()+leastSlopeMM {
				outer.ok = false
			}
		}
	}
}

// leastSlopeMM is a change of slope from ring to ring that is of no matter: slopes that pass through nothing have no
// growth to speak of.
const leastSlopeMM = 0.01

// size is how large a knot's slopes are.
func (k *knot) size() float64 {
	return math.Abs(k.across.xMM) + math.Abs(k.down.yMM) + math.Abs(k.across.yMM) + math.Abs(k.down.xMM)
}

// turn turns what a knot holds by an angle of that cosine and sine.
func (k *knot) turn(cos, sin float64) {
	k.across, k.down = turned(k.across, k.down, cos, sin)
	k.pupilAcross, k.pupilDown = turned(k.pupilAcross, k.pupilDown, cos, sin)
	k.lands = k.lands.turned(cos, sin)
}

// turned are the columns of a linear map M in a frame that is turned: R M R⁻¹.
func turned(across, down step, cos, sin float64) (a, d step) {
	a = step{across.xMM*cos - down.xMM*sin, across.yMM*cos - down.yMM*sin}
	d = step{across.xMM*sin + down.xMM*cos, across.yMM*sin + down.yMM*cos}
	return a.turned(cos, sin), d.turned(cos, sin)
}

func (s step) turned(cos, sin float64) step {
	return step{s.xMM*cos - s.yMM*sin, s.xMM*sin + s.yMM*cos}
}

// at is what a ray through a point of the drops' plane does; ok is false where that is not known: beyond the outermost
// ring, say.
func (r *rings) at(p layout.Point) (k knot, ok bool) { return r.read(p, false) }

// about is at, and beyond the outermost ring what the ray does that passes there in the same way.
func (r *rings) about(p layout.Point) (k knot, ok bool) { return r.read(p, true) }

func (r *rings) read(p layout.Point, beyond bool) (k knot, ok bool) {
	x, y := (p.XMM-r.drop.XMM)/r.outline.WidthMM, (p.YMM-r.drop.YMM)/r.outline.HeightMM
	u := math.Sqrt(x*x + y*y)
	if !(u <= outermostShare) && !beyond {
		return knot{}, false
	}
	cos, sin := 1.0, 0.0
	if u > 0 {
		cos, sin = x/u, y/u
	}
	out := arcs.asin(min(u, outermostShare)) / r.step
	way := arcs.turn(cos, sin) * float64(r.ways)
	n, w := min(int(out), r.count-1), int(way)%r.ways
	if n < r.first {
		return knot{}, false
	}
	next := (w + 1) % r.ways
	a, b := &r.knots[n*r.ways+w], &r.knots[n*r.ways+next]
	c, d := &r.knots[(n+1)*r.ways+w], &r.knots[(n+1)*r.ways+next]
	if !a.ok || !b.ok || !c.ok || !d.ok {
		return knot{}, false
	}
	fo, fw := min(out-float64(n), 1), way-math.Floor(way)
	k.ok = true
	k.add(a, (1-fo)*(1-fw))
	k.add(b, (1-fo)*fw)
	k.add(c, fo*(1-fw))
	k.add(d, fo*fw)
	k.turn(cos, sin)
	return k, true
}

// add adds what another knot holds, by a weight.
func (k *knot) add(l *knot, weight float64) {
	k.across.add(l.across, weight)
	k.down.add(l.down, weight)
	k.pupilAcross.add(l.pupilAcross, weight)
	k.pupilDown.add(l.pupilDown, weight)
	k.lands.add(l.lands, weight)
	k.share += weight * l.share
}

func (s *step) add(t step, weight float64) {
	s.xMM += weight * t.xMM
	s.yMM += weight * t.yMM
}

// ringsOf are a drop's among several; nil where it has none.
func ringsOf(all []*rings, drop layout.Point) *rings {
	for _, r := range all {
		if r != nil && r.drop == drop {
			return r
		}
	}
	return nil
}

// mostRings is for how many drops rings are worked out: of more, each is small in the frame.
const mostRings = 4

// newRingsOfAll works out the rings of every ball.
func (v *view) newRingsOfAll(ctx context.Context) (through, mirrors []*rings) {
	if v.sight.Drop.Body.Rod() || len(v.drops) > mostRings {
		return nil, nil
	}
	lands := func(r flip.Ray) (layout.Point, float64, bool) {
		l, ok := v.tracer.Trace(r)
		return layout.Point{XMM: l.XMM, YMM: l.YMM}, l.Transmittance, ok && l.Through
	}
	for _, drop := range v.drops {
		through = append(through, v.newRings(ctx, drop, 0, lands))
		mirrors = append(mirrors, v.newRings(ctx, drop, v.skin.fromShare, v.mirrored))
	}
	return through, mirrors
}

// draftPixel is the light that comes through a drop to a pixel of a draft: where the pixel's middle lands is known, and
// its few rays land off it by slopes. ok is false where that is not known.
func (v *view) draftPixel(i, j int, at, drop layout.Point) (sum texture.Light, ok bool) {
	r := ringsOf(v.rings, drop)
	if r == nil {
		return sum, false
	}
	k, ok := r.at(at)
	if !ok {
		return sum, false
	}
	through := v.spread(&k.slopes)
	x, y := k.lands.xMM+drop.XMM, k.lands.yMM+drop.YMM
	over := through.patch(&v.inside[0])
	near := v.expansion(layout.Point{XMM: x, YMM: y}, through, over)
	near.Average(over)
	for n := range v.inside {
		a := &v.inside[n]
		acrossMM := a.xPx*k.across.xMM + a.yPx*k.down.xMM + a.pupilXMM/v.lens.pupilMM*k.pupilAcross.xMM +
			a.pupilYMM/v.lens.pupilMM*k.pupilDown.xMM
		downMM := a.xPx*k.across.yMM + a.yPx*k.down.yMM + a.pupilXMM/v.lens.pupilMM*k.pupilAcross.yMM +
			a.pupilYMM/v.lens.pupilMM*k.pupilDown.yMM
		sum = sum.Add(v.landed(x+acrossMM, y+downMM, over, &near))
	}
	return sum.Scale(float32(k.share) / float32(len(v.inside))), true
}

// draftSkin is the light that a drop's front throws to a pixel of a draft, all from where its middle's comes from; what
// is thrown back inside shows the dark room and is left out. ok is false where that is not known.
func (v *view) draftSkin(at, drop layout.Point) (light texture.Light, ok bool) {
	r := ringsOf(v.mirrors, drop)
	if r == nil {
		return light, false
	}
	k, ok := r.at(at)
	if !ok {
		return light, false
	}
	spread := v.spread(&k.slopes)
	over := spread.patch(&v.skin.aims[0])
	return v.landed(k.lands.xMM+drop.XMM, k.lands.yMM+drop.YMM, over, nil).Scale(float32(k.share)), true
}
