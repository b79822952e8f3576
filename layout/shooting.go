package layout

import (
	"errors"
	"fmt"

	"dropsheet/flip"
	"dropsheet/flip/motion"
)

// DefaultPlaybackFPS is how many frames a second a film is shown at unless another rate is asked for: television's
// in most of the world (common practice, no source).
const DefaultPlaybackFPS = 25.0

// Shooting is how the camera is exposed and how the drop comes by. Whatever was not asked for is 0.
type Shooting struct {
	ISO float64 `json:"iso,omitempty"`
	// how long a frame is exposed, or a flash lasts; 0: the whole frame
	ShutterS    float64 `json:"shutter_s,omitempty"`
	FallMM      float64 `json:"fall_mm,omitempty"`        // from where the drop is let go to the frame's middle
	SpeedMMPerS float64 `json:"speed_mm_per_s,omitempty"` // in the frame's middle, down; below 0 rising
	PlaybackFPS float64 `json:"playback_fps,omitempty"`   // 0: DefaultPlaybackFPS
	// What the drop comes from, where its size was told by that: a nozzle of that outer diameter, or a jet that thick.
	NozzleMM float64 `json:"nozzle_mm,omitempty"`
	JetMM    float64 `json:"jet_mm,omitempty"`
}

// Bounds far beyond any camera and any drop.
const (
	minISO, maxISO                 = 1e-3, 1e9
	minShutterS, maxShutterS       = 1e-12, 3600.0
	minSpeedMMPerS, maxSpeedMMPerS = 1e-3, 1e6
	minLengthMM                    = 1e-3 // of a fall, a nozzle, a jet
	minPlaybackFPS, maxPlaybackFPS = 1e-3, 1e6
)

// check refuses what no camera does and no drop. A frame rate of 0 is not known.
func (s Shooting) check(body flip.Body, frameRate float64) error {
	within := func(v, least, most float64) bool { return v == 0 || v >= least && v <= most }
	switch {
	case !within(s.ISO, minISO, maxISO):
		return fmt.Errorf("ISO %g can't be\nhint: take one from %g to %g", s.ISO, minISO, maxISO)
	case !within(s.ShutterS, minShutterS, maxShutterS):
		return fmt.Errorf("a shutter open for %g seconds can't be\nhint: take a time from %g to %g seconds", s.ShutterS,
			minShutterS, maxShutterS)
	case s.ShutterS > 0 && frameRate > 0 && s.ShutterS*frameRate > 1+tolerance:
		return fmt.Errorf("at %g frames a second a shutter can't be open for %.4gs, longer than a frame lasts\n"+
			"hint: take at most 1/%gs, or a lower rate", frameRate, s.ShutterS, frameRate)
	case !within(s.FallMM, minLengthMM, MaxLengthMM):
		return fmt.Errorf("a fall of %gmm can't be\n"+
			"hint: take a height from %gmm to %gm", s.FallMM, minLengthMM, MaxLengthMM/1000)
	case !within(max(s.SpeedMMPerS, -s.SpeedMMPerS), minSpeedMMPerS, maxSpeedMMPerS):
		return fmt.Errorf("a drop can't move at %gmm/s\nhint: take %g to %gmm/s, below 0 for one that rises", s.SpeedMMPerS,
			minSpeedMMPerS, maxSpeedMMPerS)
	case s.FallMM != 0 && s.SpeedMMPerS != 0:
		return errors.New("the height fallen gives the drop's speed\nhint: leave out one of the two")
	case body == flip.Hanging && (s.FallMM != 0 || s.SpeedMMPerS != 0):
		return errors.New("a hanging drop stands still\nhint: leave out the height fallen and the speed, which are for " +
			"drops that fall")
	case body == flip.Hanging && (s.NozzleMM != 0 || s.JetMM != 0):
		return errors.New("what falls off a nozzle or a jet does not hang\nhint: give the hanging drop's own width, and " +
			"where it is held")
	case body != flip.Ball && (s.FallMM != 0 || s.SpeedMMPerS != 0):
		return errors.New("a rod stands still\nhint: leave out the height fallen and the speed, which are for drops")
	case !within(s.NozzleMM, minLengthMM, MaxLengthMM), !within(s.JetMM, minLengthMM, MaxLengthMM), s.NozzleMM != 0 &&
		s.JetMM != 0:
		return fmt.Errorf("a drop from a nozzle of %gmm and a jet of %gmm can't be\nhint: it comes from one of them",
			s.NozzleMM, s.JetMM)
	case body != flip.Ball && (s.NozzleMM != 0 || s.JetMM != 0):
		return errors.New("a rod comes from no nozzle and no jet\nhint: give its diameter")
	case !within(s.PlaybackFPS, minPlaybackFPS, maxPlaybackFPS):
		return fmt.Errorf("playback of %g frames a second can't be\nhint: take a rate from %g to %g", s.PlaybackFPS,
			minPlaybackFPS, maxPlaybackFPS)
	}
	return nil
}

// DropSpeedMMPerS is how fast the drop passes the frame's middle, downward; below 0 it rises. ok is false where that
// is not known.
func (s Shooting) DropSpeedMMPerS() (speedMMPerS float64, ok bool) {
	if s.FallMM > 0 {
		return motion.SpeedMMPerS(s.FallMM), true
	}
	return s.SpeedMMPerS, s.SpeedMMPerS != 0
}

// Playback is how many frames a second the film is shown at.
func (s Shooting) Playback() float64 {
	if s.PlaybackFPS == 0 {
		return DefaultPlaybackFPS
	}
	return s.PlaybackFPS
}

// ShutterS is how long a frame is exposed: as asked for, or as long as a frame lasts. ok is false where neither is
// known.
func (p Plan) ShutterS() (s float64, ok bool) {
	if p.Shooting.ShutterS > 0 {
		return p.Shooting.ShutterS, true
	}
	if p.Camera.FrameRate > 0 {
		return 1 / p.Camera.FrameRate, true
	}
	return 0, false
}
