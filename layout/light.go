package layout

import "dropsheet/flip"

// WhiteReflects is how much of the light that falls on it bare white paper throws back, which is the print's white:
// L* 93 (uncoated paper has 92 to 95; common practice, no source), ((93 + 16) / 116)³ of the light (CIE 1976). It is
// dull, and looks alike from everywhere.
const WhiteReflects = 0.83

// HalfLevel is the light that makes half a level of 255 on black, of the print's white (IEC 61966-2-1, where its curve
// is still straight): less than that counts as none.
const HalfLevel = 0.5 / 255 / 12.92

// Light is the light on the printed side, prepared once by Plan.Light and safe for use by many goroutines.
//
// Each lamp is small against its distance, and shines into the cosine, to some power, of the angle to where it
// points: to the first, Lambert's law, unless its beam is known. Where no lux is known all give the same light. A
// lamp d away gives E ~ that cos(at the board) / d², so that one on the axis without a beam falls off by the fourth
// power of the cosine (Smith, Modern Optical Engineering, 8.6; recalled from memory). Light thrown about by the room
// is not counted. From nearer than five of its widths a lamp gives less, by more than a hundredth: 1/(1 + (w/2d)²) of
// it for a round one (by the solid angle; common practice calls it the rule of five).
type Light struct {
	centre    Point     // of the backdrop, in board mm: lamps are placed from it
	lamps     []emitter // none: even
	picture   Rect      // on the board
	brightest lit       // its brightest place
	// strongest is the most that a lamp gives at 1 m, in lux; 0 when not known.
	strongest float64
}

// Light prepares the light of the plan's lamps.
func (p Plan) Light() Light { return p.lightOf(p.Lamps) }

// lightOf prepares the light of other lamps on the same board.
func (p Plan) lightOf(lamps []Lamp) Light {
	l := Light{centre: Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}, picture: p.PictureOnBoard()}
	for _, lamp := range lamps {
		l.strongest = max(l.strongest, lamp.LuxAt1M)
	}
	for _, lamp := range lamps {
		l.lamps = append(l.lamps, lamp.emitter(l.strongest, p.Drop.DistanceMM))
	}
	if len(lamps) > 0 {
		l.brightest = l.extreme(1)
	}
	return l
}

// Brightest is the picture's brightest place, in board mm. There must be lamps.
func (l Light) Brightest() Point { return l.brightest.at }

// Darkest is the picture's darkest place, likewise.
func (l Light) Darkest() Point { return l.extreme(-1).at }

// darkestShare is the light at the darkest place, of that at the brightest.
func (l Light) darkestShare() float64 { return l.share(l.extreme(-1).sum) }

// share is a sum of the brightest place's; where no lamp reaches the picture, no place has any.
func (l Light) share(sum float64) float64 {
	if l.brightest.sum == 0 {
		return 0
	}
	return sum / l.brightest.sum
}

// FalloffStops is how far the picture's darkest place lies below its brightest, in stops: 0 to NoLightStops.
func (l Light) FalloffStops() float64 { return stopsBelow(l.darkestShare()) }

// At is the light that falls on a place of the board's plane, in board mm: 0 for none, 1 for that at the
// picture's brightest place. It passes 1 only beyond the picture. Without lamps it is 1 everywhere.
func (l Light) At(xMM, yMM float64) float64 {
	if len(l.lamps) == 0 {
		return 1
	}
	return l.share(l.Amount(xMM, yMM))
}

// Lux is the illuminance of a place of the board's plane, in board mm. ok is false where there are no lamps, or it
// is not known how much light they give.
func (l Light) Lux(xMM, yMM float64) (lux float64, ok bool) {
	const mm2PerM2 = 1e6
	return l.Amount(xMM, yMM) * l.strongest * mm2PerM2, l.strongest > 0
}

// Amount is the light at a place in board mm, in units of the strongest lamp's own strength over mm²: to be compared
// with that of the same lamps elsewhere.
func (l Light) Amount(xMM, yMM float64) float64 {
	sum := 0.0
	for i := range l.lamps {
		sum += l.Of(i, xMM, yMM)
	}
	return sum
}

// Of is what one lamp adds to Amount; lamps are counted from 0.
func (l Light) Of(lamp int, xMM, yMM float64) float64 {
	return l.lamps[lamp].on(xMM-l.centre.XMM, yMM-l.centre.YMM)
}

// Facing is what one lamp, counted from 0, gives a small surface that faces it, at a place in mm from the backdrop's
// centre, x right, y down, z toward the camera: 1 for as much as falls on the picture's brightest place. cosOff is the
// cosine of the angle, at the lamp, between the way to that place and to where the lamp points. It is infinite where no
// lamp lights the picture.
func (l Light) Facing(lamp int, at flip.Vec) (share, cosOff float64) {
	light, cosOff := l.lamps[lamp].facing(at)
	if light == 0 {
		return 0, cosOff
	}
	return light / l.brightest.sum, cosOff
}

// StopsAt is how far below the picture's brightest place the light at a place of the board's plane lies, in
// stops: 0 to NoLightStops.
func (l Light) StopsAt(xMM, yMM float64) float64 { return stopsBelow(l.At(xMM, yMM)) }
