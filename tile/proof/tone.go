package proof

import (
	"image"
	"math"

	"dropsheet/layout/shot"
	"dropsheet/tile/colour"
)

// AsRecorded is the scene as the plan's camera records it: as bright, and smeared by the drop's motion. What is not
// known of the shot stays as it is.
//
// The tone curve is sRGB's (IEC 61966-2-1), straight up to where it clips: shot.RecordedWhite says where that is. Many
// cameras bend theirs there, to clip later and softer.
func (s Scene) AsRecorded() Scene {
	if white, ok := shot.Of(s.Plan).RecordedWhite(); ok {
		s.White = white
	}
	speed, moves := s.Plan.Shooting.DropSpeedMMPerS()
	exposureS, exposed := s.Plan.ShutterS()
	if moves && exposed {
		s.Motion = Motion{speed, exposureS}
	}
	return s
}

// darkestStops is how far below what clips a camera shows nothing but black: about what those do that film fast
// (common practice, no source).
const darkestStops = 10

// Tones are the shares of a frame's pixels in which a colour is at its highest level, and in which all are as good as
// black.
type Tones struct{ ClippedShare, BlackShare float64 }

// TonesOf counts a frame's pixels.
func TonesOf(frame *image.RGBA) (t Tones) {
	black := uint8(math.Floor(255 * colour.LightToSRGB(math.Exp2(-darkestStops))))
	clipped, dark := 0, 0
	for i := 0; i < len(frame.Pix); i += 4 {
		switch most := max(frame.Pix[i], frame.Pix[i+1], frame.Pix[i+2]); {
		case most == 255:
			clipped++
		case most <= black:
			dark++
		}
	}
	all := float64(len(frame.Pix) / 4)
	return Tones{float64(clipped) / all, float64(dark) / all}
}
