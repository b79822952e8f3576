package shot

import (
	"math"

	"dropsheet/layout"
)

// incidentC is the calibration constant of light meters that measure what falls on a flat subject, in lux seconds:
// E = C N² / (t S) (ISO 2720:1974, which allows 240 to 400 for a flat receptor; 250 is the usual figure. From memory,
// as public summaries of the standard have it.) So exposed, a middling grey comes out middling.
const incidentC = 250

// sunLux is direct sun on a surface that faces it (common practice, no source).
const sunLux = 100_000

// Exposure is how much light the board needs, and gets.
type Exposure struct {
	ShutterS  float64 `json:"shutter_s"`
	NeededLux float64 `json:"illuminance_needed_lux"` // in the board's middle
	Suns      float64 `json:"suns"`                   // the same in times of direct sun
	Given     *Given  `json:"given,omitempty"`        // nil when it is not known how much light the lamps give
}

// Given is what the lamps give.
type Given struct {
	Lux float64 `json:"illuminance_given_lux"` // in the board's middle
	// OverStops is given over needed: above 0 the frame gets too light. At least -NoLightStops.
	OverStops float64 `json:"exposure_over_stops"`
	Ways      Ways    `json:"ways"`
}

// Ways are what each alone makes the light given the light needed, be it too little or too much. What can't do it is
// 0.
type Ways struct {
	FNumber   float64 `json:"f_number,omitempty"`   // between the widest and the most closed of stops looked at
	FrameRate float64 `json:"frame_rate,omitempty"` // where the shutter is open for the whole frame
	ShutterS  float64 `json:"shutter_s,omitempty"`  // no longer than a frame, where the rate is known
	ISO       float64 `json:"iso,omitempty"`
	// LampsFactor is of each lamp's distance from the backdrop's centre, straight away from it.
	LampsFactor float64       `json:"lamps_factor,omitempty"`
	Lamps       []layout.Lamp `json:"lamps_mm,omitempty"` // so moved
	LampsSeen   bool          `json:"lamps_then_in_view,omitempty"`
	LampsTimes  float64       `json:"lamps_times,omitempty"` // so many times the lamps, or lamps so many times as strong
}

// NeededLux is the illuminance that the board's middle needs at a stop: E = C N² (1+m)² / (t S). N is the stop marked
// on the lens, taken at its word: f/11 stands for 11.31 on most, which needs a twelfth of a stop more. m is the
// magnification at the drop, by which a lens focused so close gets darker (Ray, Applied Photographic Optics; from
// memory; for a lens whose entrance and exit pupils are alike). ok is false where the ISO or how long a frame is
// exposed is not known.
func (s Shot) NeededLux(fNumber float64) (lux float64, ok bool) {
	shutterS, ok := s.ShutterS()
	if !ok || s.Shooting.ISO == 0 {
		return 0, false
	}
	n := fNumber * (1 + s.Camera.Sensor.WidthMM/s.Camera.FrameWidthMM)
	return incidentC * n * n / (shutterS * s.Shooting.ISO), true
}

// Exposure works it out; nil where the ISO or how long a frame is exposed is not known.
func (s Shot) Exposure() *Exposure {
	neededLux, ok := s.NeededLux(s.Camera.FNumber)
	if !ok {
		return nil
	}
	shutterS, _ := s.ShutterS()
	e := &Exposure{ShutterS: shutterS, NeededLux: neededLux, Suns: neededLux / sunLux}
	if lux, ok := s.middleLux(s.Lamps); ok {
		over := max(-layout.NoLightStops, math.Log2(lux/neededLux))
		e.Given = &Given{lux, over, s.ways(shutterS, neededLux, lux)}
	}
	return e
}

// middleLux is what lamps give in the board's middle.
func (s Shot) middleLux(lamps []layout.Lamp) (lux float64, ok bool) {
	s.Lamps = lamps
	return s.Light().Lux(s.Backdrop.WidthMM/2, s.Backdrop.HeightMM/2)
}

// ways works the ways out.
func (s Shot) ways(shutterS, neededLux, givenLux float64) (w Ways) {
	if givenLux == 0 {
		return w
	}
	short := neededLux / givenLux // above 1 too dark
	if n := s.Camera.FNumber / math.Sqrt(short); n >= widestFNumber && n <= narrowestFNumber {
		w.FNumber = n
	}
	rate := s.Camera.FrameRate
	if s.Shooting.ShutterS == 0 {
		w.FrameRate = rate / short
	}
	if t := shutterS * short; rate == 0 || t*rate <= 1 {
		w.ShutterS = t
	}
	w.ISO = s.Shooting.ISO * short
	w.LampsTimes = short
	w.LampsFactor, w.Lamps = s.lampsFor(neededLux)
	s.Lamps = w.Lamps
	w.LampsSeen = len(s.lampsInView()) > 0
	return w
}

// lampsFor moves the lamps until they give that in the middle: by the inverse square, again and again where what they
// are aimed at leaves less or more of their beams there. It is 0 where that leads nowhere.
func (s Shot) lampsFor(neededLux float64) (factor float64, lamps []layout.Lamp) {
	const tries, enough = 100, 1e-9
	factor = 1
	for range tries {
		lamps = moved(s.Lamps, factor)
		lux, _ := s.middleLux(lamps)
		if lux == 0 || layout.CheckLamps(lamps) != nil {
			return 0, nil
		}
		off := math.Sqrt(lux / neededLux)
		if math.Abs(off-1) < enough {
			return factor, lamps
		}
		factor *= off
	}
	return 0, nil
}
