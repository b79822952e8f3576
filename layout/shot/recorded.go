package shot

import (
	"math"

	"dropsheet/layout"
)

// RecordedWhite is the light of the print's white, in its brightest place, in the frame as the camera records it: 1 is
// what just clips. ok is false where the ISO, how long a frame is exposed or how much light the lamps give is not
// known. It is above 0: at most NoLightStops below what clips.
//
// A grey card that throws back 0.18 of the light, exposed as a meter of what falls on it says (NeededLux), comes out at
// level 118 of 255, which stands for 0.18 of the light of level 255 by sRGB's curve (ISO 12232, standard output
// sensitivity: 0.461 of the highest level; from memory, as public summaries of the standard have it). What throws back
// all the light then just clips.
func (s Shot) RecordedWhite() (light float64, ok bool) {
	neededLux, ok := s.NeededLux(s.Camera.FNumber)
	if !ok || len(s.Lamps) == 0 {
		return 0, false
	}
	at := s.Light().Brightest()
	lux, ok := s.Light().Lux(at.XMM, at.YMM)
	return max(math.Exp2(-layout.NoLightStops), layout.WhiteReflects*lux/neededLux), ok
}
