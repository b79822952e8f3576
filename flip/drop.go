package flip

import (
	"fmt"
	"math"
)

// Body is the shape that refracts.
type Body int

// The bodies: a falling drop, or a glass or tube of liquid that stands or lies.
const (
	Ball       Body = iota
	UprightRod      // a cylinder whose axis is the frame's y
	LevelRod        // a cylinder whose axis is the frame's x
)

var bodyNames = [...]string{Ball: "ball", UprightRod: "upright-rod", LevelRod: "level-rod"}

// String returns the body's name as flags and job files write it.
func (b Body) String() string {
	if b < 0 || int(b) >= len(bodyNames) {
		return fmt.Sprintf("body %d", int(b))
	}
	return bodyNames[b]
}

// ParseBody reads a body's name.
func ParseBody(s string) (Body, error) {
	for b, name := range bodyNames {
		if s == name {
			return Body(b), nil
		}
	}
	return 0, fmt.Errorf("%q is not a body: take ball, upright-rod or level-rod", s)
}

// Drop is the refracting body in air.
type Drop struct {
	Body       Body
	DiameterMM float64 // above 0
	Index      float64 // refractive index, above 1
}

// RadiusMM is half the diameter.
func (d Drop) RadiusMM() float64 { return d.DiameterMM / 2 }

// FocalLengthMM is the near-axis focal length from the centre, nR / (2(n-1)):
// the ball lens of Hecht, Optics, there written nD / (4(n-1)). It holds for a rod too, across its axis.
func (d Drop) FocalLengthMM() float64 {
	return d.Index * d.RadiusMM() / (2 * (d.Index - 1))
}

// bends reports which of the frame's axes the body bends light along.
func (d Drop) bends() (x, y bool) {
	return d.Body != LevelRod, d.Body != UprightRod
}

// DiameterFromDropsPerMLMM returns the diameter in mm of a ball when that many make a millilitre: V = pi d^3 / 6.
func DiameterFromDropsPerMLMM(drops float64) float64 {
	const mm3PerML = 1000
	return math.Cbrt(6 * mm3PerML / drops / math.Pi)
}

// MarshalText writes the body's name.
func (b Body) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads the body's name.
func (b *Body) UnmarshalText(text []byte) (err error) {
	*b, err = ParseBody(string(text))
	return err
}
