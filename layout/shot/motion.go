package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/flip/motion"
)

// Motion is what a moving drop does to the film.
type Motion struct {
	SpeedMMPerS float64 `json:"speed_mm_per_s"` // in the frame's middle, down; below 0 rising
	FallMM      float64 `json:"fall_mm"`        // the height whose fall gives that speed, or that it would rise yet
	// DragFreeMM is the height fallen up to which air slows the drop by less than a fiftieth, so that what is said here
	// holds; 0 of a liquid that is not known.
	DragFreeMM float64 `json:"drag_free_mm,omitempty"`
	// The drop's centre is in the frame for so long, for so many frames at the camera's rate, and shown for so long.
	InViewMS     float64 `json:"in_view_ms"`
	FramesInView float64 `json:"frames_in_view,omitempty"` // 0 when the frame rate is not known, the next likewise
	PlaybackS    float64 `json:"playback_s,omitempty"`
	Smear        *Smear  `json:"smear,omitempty"` // nil when it is not known how long a frame is exposed
}

// Smear is how far the drop moves while a frame is exposed, and what it does to sharpness.
type Smear struct {
	ShutterS   float64 `json:"shutter_s"`
	SmearMM    float64 `json:"smear_mm"` // at the drop
	SmearPx    float64 `json:"smear_px"` // in frame pixels
	BlurPx     float64 `json:"blur_px"`  // the largest of edge and picture, at the plan's stop and focus, the drop at rest
	TogetherPx float64 `json:"together_px"`
	// The shutter at which the smear is as large as that blur, and as large as passes for sharp.
	ShutterForBlurS  float64 `json:"shutter_for_blur_s"`
	ShutterForSharpS float64 `json:"shutter_for_sharp_s"`
	// The stop with the least blur, smear counted, and the widest stop that is hardly worse.
	Best   SmearedStop `json:"best"`
	AsGood SmearedStop `json:"as_good"`
}

// SmearedStop is a stop, focused as is best for it, while the drop moves.
type SmearedStop struct {
	FNumber    float64 `json:"f_number"`
	TogetherPx float64 `json:"together_px"`
	// NeededLux is what the board's middle needs at that stop; 0 when the camera's ISO is not known.
	NeededLux float64 `json:"illuminance_needed_lux,omitempty"`
}

// hardlyWorse is how much more blur is not seen as such (common practice, no source).
const hardlyWorse = 1.1

// Motion works it out; nil where the drop's speed is not known.
func (s Shot) Motion() *Motion {
	speed, ok := s.Shooting.DropSpeedMMPerS()
	if !ok {
		return nil
	}
	m := &Motion{SpeedMMPerS: speed, FallMM: motion.FallMM(speed)}
	m.DragFreeMM, _ = s.falling().DragFreeMM()
	inViewS := motion.InViewS(speed, s.Camera.FrameHeightMM)
	m.InViewMS = 1000 * inViewS
	if rate := s.Camera.FrameRate; rate > 0 {
		m.FramesInView = inViewS * rate
		m.PlaybackS = m.FramesInView / s.Shooting.Playback()
	}
	if shutterS, ok := s.ShutterS(); ok {
		m.Smear = s.smear(speed, shutterS)
	}
	return m
}

// falling is the drop as what falls and wobbles. Its liquid may not be known.
func (s Shot) falling() motion.Drop {
	m, _ := flip.MaterialByName(s.Drop.Material)
	return motion.Drop{DiameterMM: s.Drop.DiameterMM, Liquid: m.Liquid}
}

// smear works the smear out. It is put together with the blur in quadrature, as defocus and diffraction are (common
// practice: the true sum of a disc and a stroke has no closed form).
func (s Shot) smear(speedMMPerS, shutterS float64) *Smear {
	pixelMM := s.Camera.PixelMM()
	smearMM := motion.CoversMM(speedMMPerS, shutterS)
	out := &Smear{
		ShutterS: shutterS, SmearMM: smearMM, SmearPx: smearMM / pixelMM,
		BlurPx:           s.WorstPx(s.BlurAt(s.Camera.FNumber, s.Camera.FocusMM)),
		ShutterForSharpS: motion.TimeS(speedMMPerS, s.Camera.SharpToPx*pixelMM),
	}
	out.TogetherPx = math.Hypot(out.SmearPx, out.BlurPx)
	out.ShutterForBlurS = motion.TimeS(speedMMPerS, out.BlurPx*pixelMM)
	var thirds []SmearedStop
	for k := range 37 { // f/1 to f/64
		n := math.Exp2(float64(k) / 6)
		neededLux, _ := s.NeededLux(n)
		thirds = append(thirds, SmearedStop{n, math.Hypot(s.worstAt(n), out.SmearPx), neededLux})
	}
	out.Best = thirds[0]
	for _, stop := range thirds {
		if stop.TogetherPx < out.Best.TogetherPx {
			out.Best = stop
		}
	}
	for _, stop := range thirds {
		if stop.TogetherPx <= hardlyWorse*out.Best.TogetherPx {
			out.AsGood = stop
			break
		}
	}
	return out
}
