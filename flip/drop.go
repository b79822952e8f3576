package flip

import (
	"fmt"
	"math"
)

// Body is the shape that refracts.
type Body int

// The bodies: a falling drop, a glass or tube of liquid that stands or lies, or a drop that hangs.
const (
	Ball       Body = iota
	UprightRod      // a cylinder whose axis is the frame's y
	LevelRod        // a cylinder whose axis is the frame's x
	Hanging         // a drop at a needle, a tap or a blade of grass
)

var bodyNames = [...]string{Ball: "ball", UprightRod: "upright-rod", LevelRod: "level-rod", Hanging: "hanging"}

// String returns the body's name as flags and job files write it.
func (b Body) String() string {
	if b < 0 || int(b) >= len(bodyNames) {
		return fmt.Sprintf("body %d", int(b))
	}
	return bodyNames[b]
}

// Rod tells whether the body is one.
func (b Body) Rod() bool { return b == UprightRod || b == LevelRod }

// ParseBody reads a body's name.
func ParseBody(s string) (Body, error) {
	for b, name := range bodyNames {
		if s == name {
			return Body(b), nil
		}
	}
	return 0, fmt.Errorf("%q is not a body\nhint: take ball, hanging, upright-rod or level-rod", s)
}

// Drop is the refracting body in air.
type Drop struct {
	Body Body
	// above 0; of a ball that is pressed flat or drawn long, that of the round ball of the same volume; of a drop that
	// hangs its greatest width
	DiameterMM float64
	Index      float64 // refractive index, above 1
	// HeightOverWidth makes a ball a spheroid about the upright axis: below 1 it is oblate, a falling drop
	// pressed flat by the air, above 1 prolate. 0 stands for 1. A rod has none.
	HeightOverWidth float64
	// HeldMM is the width of the circle that a hanging drop is held by, and CapillaryMM the capillary length of its
	// liquid; see CheckHanging. Its centre is on its axis at the height of its equator. 0 for any other.
	HeldMM, CapillaryMM float64
	// WallMM makes a rod a tube, DiameterMM wide outside: how thick its wall is, of index WallIndex; see CheckWall. 0 for
	// none.
	WallMM, WallIndex float64
}

// heightOverWidth is HeightOverWidth with its 0 read as 1.
func (d Drop) heightOverWidth() float64 {
	if d.HeightOverWidth == 0 {
		return 1
	}
	return d.HeightOverWidth
}

// Oblate tells whether the drop is out of round: a spheroid, or one that hangs.
func (d Drop) Oblate() bool { return d.Body == Hanging || d.heightOverWidth() != 1 }

// RadiusMM is half the width: the semi-axis across and along the optical axis. A spheroid of semi-axes a, a
// and ka has the volume of a ball of radius a times the cube root of k.
func (d Drop) RadiusMM() float64 {
	if d.Body == Hanging || !d.Oblate() {
		return d.DiameterMM / 2
	}
	return d.DiameterMM / 2 / math.Cbrt(d.HeightOverWidth)
}

// HalfHeightMM is the upright semi-axis. Of a drop that hangs it is that of its round, the ellipse about its centre
// that is as wide as the drop, goes no lower than its tip, and no higher than its holder and than where its side
// bends toward the neck: past that it no longer turns a picture over.
func (d Drop) HalfHeightMM() float64 {
	if p := d.hanging(); p != nil {
		return min(p.equatorMM, p.inwardMM-p.equatorMM)
	}
	return d.RadiusMM() * d.heightOverWidth()
}

// BelowMM and AboveMM are how far a drop's tip lies below its centre and its top above it, the held circle of one that
// hangs.
func (d Drop) BelowMM() float64 {
	if p := d.hanging(); p != nil {
		return p.equatorMM
	}
	return d.HalfHeightMM()
}

// AboveMM is the other.
func (d Drop) AboveMM() float64 {
	if p := d.hanging(); p != nil {
		return p.topMM - p.equatorMM
	}
	return d.HalfHeightMM()
}

// VolumeMM3 is the volume of a ball, or of a drop that hangs.
func (d Drop) VolumeMM3() float64 {
	if p := d.hanging(); p != nil {
		return p.volumeMM3
	}
	return math.Pi / 6 * d.DiameterMM * d.DiameterMM * d.DiameterMM
}

// CurvedUpMM is the radius of curvature along the upright where the optical axis meets the drop. Of an ellipse with
// semi-axes a along the axis and b it is b²/a.
func (d Drop) CurvedUpMM() float64 {
	if p := d.hanging(); p != nil {
		return p.curvedUpMM
	}
	return d.HalfHeightMM() * d.HalfHeightMM() / d.RadiusMM()
}

// HalfWidthAtMM is half the drop's width so far below its centre, above it where that is negative; 0 past its ends.
func (d Drop) HalfWidthAtMM(belowMM float64) float64 {
	if p := d.hanging(); p != nil {
		if belowMM <= -d.AboveMM() {
			return p.heldMM
		}
		q, _, _ := p.at(p.equatorMM - belowMM)
		return math.Sqrt(max(0, q))
	}
	share := belowMM / d.HalfHeightMM()
	return d.RadiusMM() * math.Sqrt(max(0, 1-share*share))
}

// hanging is the shape of a drop that hangs; nil for any other.
func (d Drop) hanging() *pendant {
	if d.Body != Hanging {
		return nil
	}
	return d.pendant()
}

// FocalLengthMM is the near-axis focal length from the centre, nR / (2(n-1)): the ball lens of Hecht, Optics,
// there written nD / (4(n-1)). It holds for a rod too, across its axis, and for a spheroid in the level
// plane, which cuts it in a circle. Of a tube, each face of radius r between indices n and m adds (1/n - 1/m)/r, on
// both sides, to its inverse: what each turns a near-axis ray by, over the ray's distance from the axis.
func (d Drop) FocalLengthMM() float64 {
	if d.WallMM > 0 {
		power := 0.0
		for _, f := range d.faces() {
			power += 2 * (1/f.before - 1/f.behind) / f.radiusMM
		}
		return 1 / power
	}
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
