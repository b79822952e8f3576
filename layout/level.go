package layout

import (
	"errors"
	"fmt"
	"math"
)

// Level makes up for the lamps' fall-off in the print: every place prints as much darker as it gets more
// light than the picture's darkest place, so that the board comes out even. It is safe for use by many
// goroutines.
type Level struct {
	light   Light
	darkest float64 // of the picture, where the brightest place has 1
}

// Level is the print's own compensation, for the lamps that it was made for. Those of a what-if don't change it.
func (p Plan) Level() Level {
	l := Level{p.lightOf(p.LevelledFor), 1}
	if l.On() {
		l.darkest = l.light.darkestShare()
	}
	return l
}

// On tells whether the print is compensated at all.
func (l Level) On() bool { return len(l.light.lamps) > 0 }

// Gain is what a place in board mm prints of the artwork's light, above 0 and at most 1: the light at the
// picture's darkest place over that here. Beyond the picture, where it may be darker still, the gain is 1:
// paper can't be brighter than the artwork asks for.
func (l Level) Gain(xMM, yMM float64) float64 {
	if !l.On() {
		return 1
	}
	return math.Min(1, l.darkest/l.light.At(xMM, yMM))
}

// LossStops is the light that the compensation costs where it takes the most, in stops: the lamps' fall-off
// over the picture.
func (l Level) LossStops() float64 { return stopsBelow(l.darkest) }

// NearestLampMM is how far in front of the board the nearest lamp of the compensation stands; ok is false
// without compensation.
func (l Level) NearestLampMM() (mm float64, ok bool) {
	mm = math.Inf(1)
	for _, lamp := range l.light.lamps {
		mm = min(mm, lamp.s.Z)
	}
	return mm, l.On()
}

// MostLevelStops bounds the compensation: from a print's white to its black it is some six stops (common
// practice, no source), and none would be left.
const MostLevelStops = 6

// checkLevel refuses a compensation that leaves no picture.
func (p Plan) checkLevel() error {
	if err := CheckLamps(p.LevelledFor); err != nil {
		return err
	}
	switch loss := p.Level().LossStops(); {
	case loss >= NoLightStops:
		return errors.New("a print can't be levelled for lamps that leave a part of the picture without light\n" +
			"hint: move them " +
			"further from the board")
	case loss > MostLevelStops:
		return fmt.Errorf("a print can't be levelled for lamps that fall off by %.1f stops over the picture, more than "+
			"%d\nhint: move them further from the board", loss, MostLevelStops)
	}
	return nil
}

// errLevelNeedsLamps is for a setup that asks for compensation of an even light.
var errLevelNeedsLamps = errors.New("a print can't be levelled without knowing where the lamps stand\n" +
	"hint: say so with " +
	"--lamp, once for each")

// NoLightStops stands for no light at all, and bounds every figure in stops.
const NoLightStops = 20.0

// stopsBelow is how many stops a share of the light, 0 to 1, lies below all of it; at most NoLightStops. A
// stop halves the light.
func stopsBelow(share float64) float64 {
	return math.Min(NoLightStops, math.Max(0, -math.Log2(share)))
}
