package report

import "dropsheet/layout/shot"

// Shot is what decides a shot, in a few figures. What is not known is left out.
type Shot struct {
	NeededLux      float64  `json:"illuminance_needed_lux,omitempty"` // that the board's middle needs
	GivenLux       *float64 `json:"illuminance_given_lux,omitempty"`  // that the lamps give it
	OverStops      *float64 `json:"exposure_over_stops,omitempty"`    // given over needed: above 0 too light
	SpeedMMPerS    float64  `json:"speed_mm_per_s,omitempty"`         // of the drop in the frame's middle, down
	SmearMM        float64  `json:"smear_mm,omitempty"`               // at the drop, while a frame is exposed
	SmearPx        float64  `json:"smear_px,omitempty"`
	InViewMS       float64  `json:"in_view_ms,omitempty"`
	FramesInView   float64  `json:"frames_in_view,omitempty"`
	PlaybackS      float64  `json:"playback_s,omitempty"`
	SwingHz        float64  `json:"swing_hz,omitempty"`
	FramesPerSwing float64  `json:"frames_per_swing,omitempty"`

	Highlights []shot.Highlight `json:"highlights,omitzero"` // of the lamps in the drop; left out without lamps
}

// Shot works the figures out.
func (r *Report) Shot() (s Shot) {
	if e := r.exposure(); e != nil {
		s.NeededLux = e.NeededLux
		if g := e.Given; g != nil {
			s.GivenLux, s.OverStops = &g.Lux, &g.OverStops
		}
	}
	if m := r.motion(); m != nil {
		s.SpeedMMPerS, s.InViewMS, s.FramesInView, s.PlaybackS = m.SpeedMMPerS, m.InViewMS, m.FramesInView, m.PlaybackS
		if m.Smear != nil {
			s.SmearMM, s.SmearPx = m.Smear.SmearMM, m.Smear.SmearPx
		}
	}
	if swing := r.swing(); swing != nil {
		s.SwingHz, s.FramesPerSwing = swing.PerSecond, swing.FramesPerSwing
	}
	s.Highlights = r.highlights()
	return s
}
