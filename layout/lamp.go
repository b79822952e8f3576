package layout

import (
	"errors"
	"fmt"
	"math"
)

// Lamp is where a lamp stands, in mm from the backdrop's centre, x right and y down as one faces the printed side, z
// toward the camera; where it points, and what is known of its light.
type Lamp struct {
	XMM float64 `json:"x"`
	YMM float64 `json:"y"`
	ZMM float64 `json:"z"`
	// LuxAt1M is what it gives a metre off, straight before it, as makers' sheets state: its candelas. 0 when not
	// known; of several lamps that of all is known, or of none.
	LuxAt1M float64 `json:"lux_at_1m,omitempty"`
	SizeMM  float64 `json:"size_mm,omitempty"` // width of its shining face; 0 when not known
	// BeamDeg is the full angle of its beam: half of it to a side, it gives half as much light as straight before it.
	// 0 stands for LambertBeamDeg.
	BeamDeg float64 `json:"beam_deg,omitempty"`
	Aim     Aim     `json:"aim,omitzero"`
}

// Aim is what a lamp points at: the drop, or a place of the board, in mm from the backdrop's centre as Lamp has it.
// The zero Aim is that centre.
type Aim struct {
	AtDrop bool    `json:"drop,omitempty"`
	XMM    float64 `json:"x,omitempty"`
	YMM    float64 `json:"y,omitempty"`
}

// LambertBeamDeg is the beam of a bare panel: by Lambert's law it gives as the cosine does, half at 60 degrees.
const LambertBeamDeg = 120.0

// Bounds of a lamp, far beyond any that is made.
const (
	leastLux     = 1e-6
	mostLux      = 1e12
	narrowestDeg = 0.1
	widestDeg    = 179.0
)

// mostLamps bounds the work that a broken job file can ask for; no studio holds as many.
const mostLamps = 32

// CheckLamps refuses lamps that can't light the printed side.
func CheckLamps(lamps []Lamp) error {
	if len(lamps) > mostLamps {
		return fmt.Errorf("%d lamps can't be\nhint: take at most %d", len(lamps), mostLamps)
	}
	for i, l := range lamps {
		if !(math.Abs(l.XMM) <= MaxLengthMM && math.Abs(l.YMM) <= MaxLengthMM && l.ZMM > 0 && l.ZMM <= MaxLengthMM) {
			return fmt.Errorf("a lamp at %g, %g, %gmm does not light the printed side\n"+
				"hint: give it a third figure above 0mm, which is how far in front of the board it stands", l.XMM, l.YMM, l.ZMM)
		}
		if err := l.checkLight(); err != nil {
			return fmt.Errorf("lamp %d: %w", i+1, err)
		}
		if (l.LuxAt1M > 0) != (lamps[0].LuxAt1M > 0) {
			return errors.New("of some lamps it is known how much light they give, and of others not\n" +
				"hint: say it of all, or of none")
		}
	}
	return nil
}

// checkLight refuses a light that no lamp gives.
func (s Lamp) checkLight() error {
	switch {
	case s.LuxAt1M != 0 && !(s.LuxAt1M >= leastLux && s.LuxAt1M <= mostLux):
		return fmt.Errorf("%g lux at 1m can't be\nhint: take a figure from %g to %g", s.LuxAt1M, leastLux, mostLux)
	case !(s.SizeMM >= 0 && s.SizeMM <= MaxLengthMM):
		return fmt.Errorf("a shining face %gmm wide can't be\nhint: take a width above 0mm", s.SizeMM)
	case s.BeamDeg != 0 && !(s.BeamDeg >= narrowestDeg && s.BeamDeg <= widestDeg):
		return fmt.Errorf("a beam of %g degrees can't be\nhint: take a full angle from %g to %g", s.BeamDeg, narrowestDeg,
			widestDeg)
	case !(math.Abs(s.Aim.XMM) <= MaxLengthMM && math.Abs(s.Aim.YMM) <= MaxLengthMM):
		return fmt.Errorf("a lamp can't be aimed at %g, %gmm\nhint: take a place of the board", s.Aim.XMM, s.Aim.YMM)
	}
	return nil
}
