package flip

import "math"

// OutlineMM are the half-width and half-height at which the drop's visible edge crosses the plane through its
// centre, an ellipse for a spheroid. A line of slope m through the pupil, D before the centre, touches x²/a²
// + z²/a² = 1 where m²(D² - a²) = a², and with b for the upright semi-axis where m²(D² - a²) = b²; it crosses
// the plane at mD. A rod has the one size across it; along it the other is infinite. Of a drop that hangs it is the
// outline of its round (see HalfHeightMM), in proportion.
func (s Sight) OutlineMM() (halfWidthMM, halfHeightMM float64) {
	x, y := s.Drop.bends()
	halfWidthMM = s.ApparentRadiusMM()
	halfHeightMM = halfWidthMM * s.Drop.outlineRatio()
	if !x {
		halfWidthMM = math.Inf(1)
	}
	if !y {
		halfHeightMM = math.Inf(1)
	}
	return halfWidthMM, halfHeightMM
}

// ShareAt is how far out a point of the plane through the drop's centre lies, as a share of the visible
// radius in its direction: 1 on the drop's visible edge, 0 on the axis. For a rod it counts across.
func (s Sight) ShareAt(xMM, yMM float64) float64 { return s.Outline().ShareAt(xMM, yMM) }

// Outline is half the width and half the height of the drop's visible edge, in mm, as OutlineMM works them out.
type Outline struct{ HalfWidthMM, HalfHeightMM float64 }

// Outline prepares the sight for the shares of many points.
func (s Sight) Outline() (o Outline) {
	o.HalfWidthMM, o.HalfHeightMM = s.OutlineMM()
	return o
}

// ShareAt is the same as the ShareAt of the sight whose outline it is.
func (o Outline) ShareAt(xMM, yMM float64) float64 {
	return math.Hypot(xMM/o.HalfWidthMM, yMM/o.HalfHeightMM)
}

// outlineRatio is the height of the drop's outline, or of its round, over its width.
func (d Drop) outlineRatio() float64 {
	if d.Body == Hanging {
		return d.HalfHeightMM() / d.RadiusMM()
	}
	return d.heightOverWidth()
}

// BoundsMM are how far all that is seen of a drop goes from its centre, in the plane through that: to either side, up
// and down. For a rod, as OutlineMM has it, there is no end along it; the holder of a drop that hangs has none above.
func (s Sight) BoundsMM() (asideMM, upMM, downMM float64) {
	halfWidthMM, halfHeightMM := s.OutlineMM()
	if s.Drop.Body != Hanging {
		return halfWidthMM, halfHeightMM, halfHeightMM
	}
	const halvings = 60
	low, high := 0.0, 2*s.Drop.BelowMM()
	for range halvings {
		if middle := (low + high) / 2; s.Drop.ClearanceMM(s.PinholeRay(0, middle)) < 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return halfWidthMM, math.Inf(1), high
}
