package layout

import "math"

// wavelengthMM is the light that diffraction is worked out for: green, where cameras and eyes see best.
const wavelengthMM = 550e-6

// Blur is how large a point is drawn in the frame, as a disc's diameter in frame pixels, for four things that
// lie at four distances. Defocus and diffraction are added in quadrature, as is common practice: the true sum
// of a disc and an Airy pattern has no closed form.
type Blur struct {
	EdgePx     float64 `json:"edge_px"`     // the drop's visible edge
	Centre     Spread  `json:"centre"`      // the picture in the middle of the drop
	Fill       Spread  `json:"at_fill"`     // the picture at its fill
	BackdropPx float64 `json:"backdrop_px"` // the backdrop seen directly, beside the drop
}

// Spread is a blur that may differ in two directions, as diameters in frame pixels. The tangential one is
// toward the drop's middle, for a rod across it; the sagittal one is at right angles to that, for a rod along
// it.
type Spread struct {
	TangentialPx float64 `json:"tangential_px"`
	SagittalPx   float64 `json:"sagittal_px"`
}

// LargerPx is the larger of the two.
func (s Spread) LargerPx() float64 { return max(s.TangentialPx, s.SagittalPx) }

// PictureBlurs are the picture's blurs, in the middle and at the fill, that the camera can do something
// about: a ball's the larger of both directions, a rod's across it. Along a rod the picture is seen through
// it at nearly its true place, far behind: no stop and no focus makes it sharp there and the rod's edge too.
func (p Plan) PictureBlurs(b Blur) (centrePx, fillPx float64) {
	return p.pictureBlur(b.Centre), p.pictureBlur(b.Fill)
}

// pictureBlur is that of one place of the picture.
func (p Plan) pictureBlur(s Spread) float64 {
	if !p.Drop.Body.Rod() {
		return s.LargerPx()
	}
	return s.TangentialPx
}

// WorstPx is the largest blur of what must be sharp together: the drop's edge and the picture in it.
func (p Plan) WorstPx(b Blur) float64 {
	centrePx, fillPx := p.PictureBlurs(b)
	return max(b.EdgePx, centrePx, fillPx)
}

// BlurAt is the blur at a stop, focused that far from the entrance pupil.
func (p Plan) BlurAt(fNumber, focusMM float64) Blur {
	p.Camera.FNumber = fNumber
	airyPx := p.Camera.AiryPx()
	with := func(s Spread) Spread {
		return Spread{math.Hypot(s.TangentialPx, airyPx), math.Hypot(s.SagittalPx, airyPx)}
	}
	return Blur{
		EdgePx:     math.Hypot(p.discPx(p.EdgeMM(), focusMM), airyPx),
		Centre:     with(p.spread(0, focusMM)),
		Fill:       with(p.spread(p.BlurFill(), focusMM)),
		BackdropPx: math.Hypot(p.discPx(p.Drop.CameraMM+p.Drop.DistanceMM, focusMM), airyPx),
	}
}

// discPx is the blur disc of a point at dMM from the entrance pupil, the camera focused at focusMM: pupil *
// |d - focus| / d in the plane in focus, by similar triangles (thin lens, Hecht, Optics, 5.2.3). That plane
// is seen from the pupil in the proportion of the two distances to the drop's plane, where pixels are
// counted. On the sensor it is (F/N) m |d - focus| / d, m the magnification of the plane in focus.
func (p Plan) discPx(dMM, focusMM float64) float64 {
	return p.Camera.PupilMM() * math.Abs(dMM-focusMM) / dMM * p.Drop.CameraMM / focusMM / p.Camera.PixelMM()
}

// AiryPx is the diameter of the Airy disc, to its first dark ring, in frame pixels: 2.44 lambda N (1 + m) on
// the sensor (Hecht, Optics, 10.2.5), N (1 + m) the working stop of a lens focused close, m the magnification
// at the drop.
func (c Camera) AiryPx() float64 {
	m := c.Sensor.WidthMM / c.FrameWidthMM
	pitchMM := c.Sensor.WidthMM / float64(c.WidthPx)
	return 2.44 * wavelengthMM * c.FNumber * (1 + m) / pitchMM
}
