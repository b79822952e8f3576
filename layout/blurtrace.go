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

// spread is the blur of the picture at a fill, without diffraction. Rays from all over the pupil through the
// point in focus that a pixel looks at are traced through the drop, and their spread on the backdrop, turned
// into pixels by the local scale, is the blur: the drop's aberrations are in it. It is told as the diameter
// of the even disc that spreads as much, four standard deviations, so that without aberrations it is the blur
// disc of discPx. Where a wide pupil looks past the drop, the rays that meet it count. Where the drop shows no board
// at the fill it is more than any frame: nothing is sharp there.
func (p Plan) spread(fill, focusMM float64) Spread {
	const pastAnyFrame = maxSharpToPx
	b, ok := p.bundle(fill, focusMM)
	if !ok {
		return Spread{pastAnyFrame, pastAnyFrame}
	}
	// Where some rays turn so far that they never reach the board, a narrower pupil is traced and the spread scaled up.
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
	tracer                   flip.Tracer // of the sight
	level                    bool        // the plane that holds the axis and the pixel is upright, not level
	focus                    flip.Vec
	chief                    flip.Landing
	tangentialPx, sagittalPx float64 // pixels for a millimetre of the board
}

// bundle prepares the rays of the pixel at a fill. For a ball the direction is one for all; for a rod it is across.
// ok is false when the pixel or its neighbours do not see the board through the drop.
func (p Plan) bundle(fill, focusMM float64) (b bundle, ok bool) {
	b = bundle{sight: p.Sight(), level: p.Drop.Body == flip.LevelRod}
	b.tracer = b.sight.Tracer()
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
	l, ok = b.tracer.Trace(b.sight.PinholeRay(at.X, at.Y))
	return l, ok && l.Through
}

// trace is the spread of the rays from a pupil of that radius that meet the drop. ok is false when none does, or one of
// them does not reach the board. Half of the pupil stands for the whole: the other is its mirror image, in which
// sagittal places change sign and no more, so that their mean is none.
func (b bundle) trace(pupilMM float64) (s Spread, ok bool) {
	chiefT, chiefS := b.along(b.chief)
	var area, mean, tangential, sagittal float64
	for _, row := range pupilRows {
		outer, inner, meets := b.stretch(pupilMM*row.aside, pupilMM*row.halfLength)
		if !meets {
			continue
		}
		for _, place := range alongRow {
			from := b.lay(outer+(inner-outer)*place.share, pupilMM*row.aside, -b.sight.CameraMM)
			l, ok := b.tracer.Trace(flip.Ray{From: from, Dir: b.focus.Sub(from).Unit()})
			if !ok || !l.Through {
				return Spread{}, false
			}
			t, s := b.along(l)
			t, s = (t-chiefT)*b.tangentialPx, (s-chiefS)*b.sagittalPx
			weight := math.Abs(inner-outer) * row.halfLength * place.weight
			area += weight
			mean += weight * t
			tangential += weight * t * t
			sagittal += weight * s * s
		}
	}
	if area == 0 {
		return Spread{}, false
	}
	mean /= area
	return Spread{4 * math.Sqrt(max(0, tangential/area-mean*mean)), 4 * math.Sqrt(sagittal/area)}, true
}

// stretch is the part of a row across the pupil, tangentially, from which rays meet the drop: from where they pass
// nearest to its edge to where they pass furthest inside. Half the row's length is given, and how far aside it lies.
func (b bundle) stretch(asideMM, halfMM float64) (outerMM, innerMM float64, ok bool) {
	low, high, ok := b.sight.Drop.Meeting(b.lay(0, asideMM, -b.sight.CameraMM), b.lay(1, 0, 0), b.focus)
	low, high = max(low, -halfMM), min(high, halfMM)
	if ok = ok && low < high; b.focus.Z > 0 { // the rays cross behind the drop's middle, not before it
		return high, low, ok
	}
	return low, high, ok
}
