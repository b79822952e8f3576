package shot

import (
	"math"

	"dropsheet/flip"
)

// Swing is what the picture does as the drop swings between flat and long, its volume kept: the second mode
// of oscillation, which a drop falls into as it comes off its tip.
type Swing struct {
	Flat SwungPicture `json:"flat"`
	Long SwungPicture `json:"long"`
	// PerSecond is how often a drop of water swings so; 0 of other liquids, whose surface tension isn't known here.
	PerSecond float64 `json:"per_second,omitempty"`
}

// SwungPicture is the picture in a drop out of round, beside that in the drop as planned.
type SwungPicture struct {
	HeightOverWidth float64 `json:"height_over_width"`
	WidthShare      float64 `json:"picture_width_share"` // of the picture's width in the drop as planned
	HeightShare     float64 `json:"picture_height_share"`
}

// usualSwing is how far a drop is taken to swing where nothing is known: a tenth of its height over width
// (common practice, no source).
const usualSwing = 0.1

// Swing works it out: from the drop as far out of round as planned to as far the other way, or a tenth either
// way of a round one. ok is false for a rod.
func (s Shot) Swing() (swing Swing, ok bool) {
	if s.Drop.Body != flip.Ball {
		return Swing{}, false
	}
	flat := 1 - usualSwing
	if k := s.Drop.HeightOverWidth; k != 0 && k != 1 {
		flat = min(k, 1/k)
	}
	swing = Swing{Flat: s.swung(flat), Long: s.swung(1 / flat)}
	if s.Drop.Material == "water" {
		swing.PerSecond = swingsPerSecond(s.Drop.DiameterMM)
	}
	return swing, true
}

// swung is the picture at a height over width. Its width is told by the places at the fill to either side,
// its height by those above and below.
func (s Shot) swung(heightOverWidth float64) SwungPicture {
	planned := s.Sight()
	swung := planned
	swung.Drop.HeightOverWidth = heightOverWidth
	seen := func(sight flip.Sight, xMM, yMM float64) float64 {
		if x, y, ok := sight.SeenThrough(xMM, yMM); ok {
			return math.Hypot(x, y)
		}
		halfWidthMM, halfHeightMM := sight.OutlineMM() // the picture outgrows the drop
		if xMM != 0 {
			return halfWidthMM
		}
		return halfHeightMM
	}
	acrossMM, _ := planned.ReachMM(s.Picture.Fill)
	downMM, _ := planned.ReachDownMM(s.Picture.Fill)
	return SwungPicture{
		heightOverWidth,
		seen(swung, acrossMM, 0) / seen(planned, acrossMM, 0),
		seen(swung, 0, downMM) / seen(planned, 0, downMM),
	}
}

// swingsPerSecond is the frequency of the second mode of a free drop of water: (1/2 pi) sqrt(8 sigma / (rho
// R³)) (Rayleigh, On the capillary phenomena of jets, Proceedings of the Royal Society 29, 1879; Lamb,
// Hydrodynamics, 275), with water at 20 °C: sigma 72.7 mN/m, rho 998 kg/m³ (both recalled from memory).
func swingsPerSecond(diameterMM float64) float64 {
	const (
		tensionNPerM   = 0.0727
		densityKgPerM3 = 998
		mPerMM         = 1e-3
	)
	radiusM := diameterMM / 2 * mPerMM
	return math.Sqrt(8*tensionNPerM/(densityKgPerM3*radiusM*radiusM*radiusM)) / (2 * math.Pi)
}
