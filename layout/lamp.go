package layout

import (
	"fmt"
	"math"
)

// Lamp is where a lamp stands, in mm from the backdrop's centre: x right and y down as one faces the printed
// side, z toward the camera.
type Lamp struct {
	XMM float64 `json:"x"`
	YMM float64 `json:"y"`
	ZMM float64 `json:"z"`
}

// mostLamps bounds the work that a broken job file can ask for; no studio holds as many.
const mostLamps = 32

// CheckLamps refuses lamps that can't light the printed side.
func CheckLamps(lamps []Lamp) error {
	if len(lamps) > mostLamps {
		return fmt.Errorf("%d lamps can't be: take at most %d", len(lamps), mostLamps)
	}
	for _, l := range lamps {
		if !(math.Abs(l.XMM) <= MaxLengthMM && math.Abs(l.YMM) <= MaxLengthMM && l.ZMM > 0 && l.ZMM <= MaxLengthMM) {
			return fmt.Errorf("a lamp at %g, %g, %gmm does not light the printed side: its third figure, the distance in "+
				"front of the board, must be above 0mm", l.XMM, l.YMM, l.ZMM)
		}
	}
	return nil
}
