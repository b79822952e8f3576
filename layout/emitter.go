package layout

import (
	"math"

	"dropsheet/flip"
)

// emitter is a lamp as it shines: S its place, in mm from the backdrop's centre, A the point that it is aimed at.
type emitter struct {
	s, a     flip.Vec
	aimed    float64 // from S to A, in mm
	strength float64 // of the strongest lamp's
	power    float64 // of the cosine: 1 is Lambert's
}

// emitter prepares a lamp. strongest is the most lux at 1 m of any of its company; 0 makes all alike.
func (s Lamp) emitter(strongest, dropMM float64) emitter {
	e := emitter{s: flip.Vec{X: s.XMM, Y: s.YMM, Z: s.ZMM}, a: flip.Vec{X: s.Aim.XMM, Y: s.Aim.YMM}, strength: 1, power: 1}
	if s.Aim.AtDrop {
		e.a = flip.Vec{Z: dropMM}
	}
	// |A - S|² as |S|² - 2 A.S + |A|², so that a lamp aimed at the centre keeps every bit of |S|.
	e.aimed = math.Sqrt(e.far2() - 2*float64(dot(e.a, e.s)) + dot(e.a, e.a))
	if strongest > 0 {
		e.strength = s.LuxAt1M / strongest
	}
	if s.BeamDeg != 0 && s.BeamDeg != LambertBeamDeg {
		halfRad := s.BeamDeg / 2 * math.Pi / 180
		e.power = math.Ln2 / -math.Log(math.Cos(halfRad))
	}
	return e
}

// dot is a scalar product that no processor fuses.
func dot(a, b flip.Vec) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z) }

// far2 is |S|².
func (e emitter) far2() float64 { return dot(e.s, e.s) }

// on is its light at a place P of the board's plane, in mm from the backdrop's centre: in units of the strongest
// lamp's own strength over mm². With d = |P - S|, cos(at the lamp) = (A - S).(P - S) / (|A - S| d) and cos(at the
// board) = z / d. A place behind the lamp gets none.
//
// Products are wrapped so that no processor fuses them with a sum: sheets levelled for lamps without a beam come out
// the same everywhere.
func (e emitter) on(xMM, yMM float64) float64 {
	dx, dy, z := xMM-e.s.X, yMM-e.s.Y, e.s.Z
	away := float64(dx*dx) + float64(dy*dy) + float64(z*z)
	toward := e.far2() - float64(xMM*e.s.X) - float64(yMM*e.s.Y) + // -S.(P - S)
		(float64(e.a.X*dx) + float64(e.a.Y*dy) - float64(e.a.Z*z)) // A.(P - S)
	if toward <= 0 {
		return 0
	}
	light := toward / e.aimed * z / (away * away)
	if e.power != 1 {
		light *= math.Pow(min(1, toward/e.aimed/math.Sqrt(away)), e.power-1)
	}
	return light * e.strength
}

// facing is its light on a small surface that faces it, at a place in mm from the backdrop's centre, in those units;
// and the cosine of the angle, at the lamp, to where it points. A place behind the lamp gets none.
func (e emitter) facing(at flip.Vec) (light, cosOff float64) {
	d := at.Sub(e.s)
	away2 := d.Dot(d)
	cosOff = e.a.Sub(e.s).Dot(d) / e.aimed / math.Sqrt(away2)
	if !(cosOff > 0) {
		return 0, cosOff
	}
	return math.Pow(min(1, cosOff), e.power) / away2 * e.strength, cosOff
}

// meets is where the middle of its beam meets the board's plane. ok is false where that runs beside the board.
func (e emitter) meets() (at Point, ok bool) {
	t := e.s.Z / (e.s.Z - e.a.Z)
	if !(t > 0) || math.IsInf(t, 1) {
		return Point{}, false
	}
	return Point{e.s.X + t*(e.a.X-e.s.X), e.s.Y + t*(e.a.Y-e.s.Y)}, true
}
