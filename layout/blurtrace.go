package layout

import (
	"math"

	"dropsheet/flip"
)

// outermostFill is the furthest out that the picture's blur is worked out: beyond, the drop squeezes what it
// shows into less than its edge's own blur.
const outermostFill = 0.99

// neighbourStep is how far, as a share of the drop's diameter, the rays lie apart that tell the local scale.
const neighbourStep = 1e-5

// BlurFill is the fill at which the picture's blur is worked out: its own, or where it reaches the rim the
// last one that shows the board, with its neighbourhood.
func (p Plan) BlurFill() float64 {
	fill, sight := math.Min(p.Picture.Fill, outermostFill), p.Sight()
	neighbour := neighbourStep * p.Drop.DiameterMM / sight.ApparentRadiusMM()
	for {
		if _, ok := sight.HeightMM(fill + neighbour); ok {
			return fill
		}
		fill *= outermostFill
	}
}

// FillSpread is the blur of the picture at BlurFill without diffraction.
func (p Plan) FillSpread(focusMM float64) Spread { return p.spread(p.BlurFill(), focusMM) }

// pupilRings are places on a pupil of radius 1 with their shares of its area: Gauss's three points in the
// square of the radius (Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29), on pupilSpokes
// spokes. They take the mean square of anything up to the fifth power of the radius exactly.
var pupilRings = [3]struct{ radius, share float64 }{
	{math.Sqrt(0.5 - math.Sqrt(0.15)), 5.0 / 18},
	{math.Sqrt(0.5), 8.0 / 18},
	{math.Sqrt(0.5 + math.Sqrt(0.15)), 5.0 / 18},
}

const pupilSpokes = 12

// spread is the blur of the picture at a fill, without diffraction. Rays from all over the pupil through the
// point in focus that a pixel looks at are traced through the drop, and their spread on the backdrop, turned
// into pixels by the local scale, is the blur: the drop's aberrations are in it. It is told as the diameter
// of the even disc that spreads as much, four standard deviations, so that without aberrations it is the blur
// disc of discPx. Where the drop shows no board at the fill it is more than any frame: nothing is sharp there.
func (p Plan) spread(fill, focusMM float64) Spread {
	const pastAnyFrame = maxSharpToPx
	b, ok := p.bundle(fill, focusMM)
	if !ok {
		return Spread{pastAnyFrame, pastAnyFrame}
	}
	// Where a wide pupil looks past the drop, a narrower one is traced and the spread scaled up.
	const narrowest = 1e-6
	for part := 1.0; part > narrowest; part /= 2 {
		if s, ok := b.trace(part * p.Camera.PupilMM() / 2); ok {
			return Spread{s.TangentialPx / part, s.SagittalPx / part}
		}
	}
	return Spread{pastAnyFrame, pastAnyFrame}
}

// bundle is the rays of one pixel.
type bundle struct {
	sight                    flip.Sight
	level                    bool // the plane that holds the axis and the pixel is upright, not level
	focus                    flip.Vec
	chief                    flip.Landing
	tangentialPx, sagittalPx float64 // pixels for a millimetre of the board
}

// bundle prepares the rays of the pixel at a fill. For a ball the direction is one for all; for a rod it is across.
// ok is false when the pixel or its neighbours do not see the board through the drop.
func (p Plan) bundle(fill, focusMM float64) (b bundle, ok bool) {
	b = bundle{sight: p.Sight(), level: p.Drop.Body == flip.LevelRod}
	at := fill * b.sight.ApparentRadiusMM()
	k := focusMM / p.Drop.CameraMM
	b.focus = b.lay(at*k, 0, focusMM-p.Drop.CameraMM)
	stepMM := p.Drop.DiameterMM * neighbourStep
	chief, okChief := b.pinhole(at, 0)
	outer, okOuter := b.pinhole(at+stepMM, 0)
	inner, okInner := b.pinhole(at-stepMM, 0)
	up, okUp := b.pinhole(at, stepMM)
	down, okDown := b.pinhole(at, -stepMM)
	pxPerMM := func(further, nearer float64) float64 {
		return 2 * stepMM / math.Abs(further-nearer) / p.Camera.PixelMM()
	}
	t1, _ := b.along(outer)
	t2, _ := b.along(inner)
	_, s1 := b.along(up)
	_, s2 := b.along(down)
	b.chief, b.tangentialPx, b.sagittalPx = chief, pxPerMM(t1, t2), pxPerMM(s1, s2)
	return b, okChief && okOuter && okInner && okUp && okDown
}

// lay makes a point from its tangential and sagittal places.
func (b bundle) lay(tangentialMM, sagittalMM, zMM float64) flip.Vec {
	if b.level {
		return flip.Vec{X: sagittalMM, Y: tangentialMM, Z: zMM}
	}
	return flip.Vec{X: tangentialMM, Y: sagittalMM, Z: zMM}
}

// along is lay undone, for a landing.
func (b bundle) along(l flip.Landing) (tangentialMM, sagittalMM float64) {
	if b.level {
		return l.YMM, l.XMM
	}
	return l.XMM, l.YMM
}

// pinhole is where the ray from the pupil's middle through a point of the drop's plane lands. ok is false when it
// passes the drop or never reaches the board.
func (b bundle) pinhole(tangentialMM, sagittalMM float64) (l flip.Landing, ok bool) {
	at := b.lay(tangentialMM, sagittalMM, 0)
	l, ok = b.sight.Trace(b.sight.PinholeRay(at.X, at.Y))
	return l, ok && l.Through
}

// trace is the spread of the rays from a pupil of that radius. ok is false when one of them misses the drop
// or the board.
func (b bundle) trace(pupilMM float64) (s Spread, ok bool) {
	var sum, squares [2]float64
	for _, ring := range pupilRings {
		for i := range pupilSpokes {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / pupilSpokes)
			from := flip.Vec{X: pupilMM * ring.radius * cos, Y: pupilMM * ring.radius * sin, Z: -b.sight.CameraMM}
			l, ok := b.sight.Trace(flip.Ray{From: from, Dir: b.focus.Sub(from).Unit()})
			if !ok || !l.Through {
				return Spread{}, false
			}
			t0, s0 := b.along(b.chief)
			t, s := b.along(l)
			share := ring.share / pupilSpokes
			for axis, off := range [2]float64{(t - t0) * b.tangentialPx, (s - s0) * b.sagittalPx} {
				sum[axis] += share * off
				squares[axis] += share * off * off
			}
		}
	}
	diameter := func(axis int) float64 { return 4 * math.Sqrt(max(0, squares[axis]-sum[axis]*sum[axis])) }
	return Spread{diameter(0), diameter(1)}, true
}
