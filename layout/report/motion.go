package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/flip/motion"
)

// comes tells what the drop comes from, where its size was told by that.
func (r *Report) comes() []Fact {
	s := r.shot.Shooting
	if s.NozzleMM > 0 {
		return []Fact{{Key: "drop.nozzle", Text: say("that falls off a nozzle %s wide, slowly, by Tate's law with the share "+
			"of Harkins and Brown (1919)", significant("shooting.nozzle_mm", s.NozzleMM, MM, 3))}}
	}
	m, _ := flip.MaterialByName(r.shot.Drop.Material)
	train, err := motion.JetTrain(s.JetMM, m.Liquid)
	if s.JetMM == 0 || err != nil {
		return nil
	}
	return []Fact{{Key: "drop.jet", Text: say("that is what a jet %s thick falls apart into by itself, a drop every %s "+
		"of it (Rayleigh 1878); falling, they draw apart", significant("shooting.jet_mm", s.JetMM, MM, 3),
		Figure{Value: train.SpacingMM, Unit: MM, Decimals: 2})}}
}

// moving tells how fast the drop passes, how long it is in view, and what its motion does to sharpness; nothing
// where its speed is not known.
func (r *Report) moving() []Fact {
	m := r.motion()
	if m == nil {
		return nil
	}
	facts := append([]Fact{{Key: "motion.speed", Name: "motion", Text: r.speed()}}, r.drag()...)
	view := say("its middle is in the frame for %s", significant("shot.in_view_ms", m.InViewMS, "ms", 3))
	if m.FramesInView > 0 {
		view = say("%s: %s, %s of playback at %s a second", view,
			strong(Figure{Path: "shot.frames_in_view", Value: m.FramesInView, Unit: Frames, rounds: down}),
			significant("shot.playback_s", m.PlaybackS, "s", 3), significant("", r.shot.Shooting.Playback(), Bare, 4))
	}
	facts = append(facts, Fact{Key: "motion.view", Text: view})
	if m.Smear == nil {
		return append(facts, Fact{Key: "motion.unexposed",
			Text: say("give --frame-rate or --shutter to see how far it moves while a frame is exposed")})
	}
	return append(facts, r.smeared()...)
}

// speed tells how fast the drop passes.
func (r *Report) speed() Text {
	m := r.motion()
	perSecond := strong(Figure{Value: math.Abs(m.SpeedMMPerS) / 1000, Unit: "m/s", Decimals: 2})
	height := length("motion.fall_mm", m.FallMM)
	switch {
	case r.shot.Shooting.FallMM > 0:
		return say("after a fall of %s the drop passes the frame's middle at %s", height, perSecond)
	case m.SpeedMMPerS < 0:
		return say("the drop passes the frame's middle at %s on its way up, and would rise %s more", perSecond, height)
	}
	return say("the drop passes the frame's middle at %s, as after a fall of %s", perSecond, height)
}

// drag tells up to which fall it counts to leave the air out; nothing where the speed itself was given.
func (r *Report) drag() []Fact {
	m := r.motion()
	if r.shot.Shooting.FallMM == 0 || m.DragFreeMM == 0 {
		return nil
	}
	upTo := rounded("motion.drag_free_mm", m.DragFreeMM, MM, 2)
	const source = "(drag of a ball: Schiller and Naumann 1933)"
	if m.FallMM > m.DragFreeMM {
		return []Fact{{Key: "motion.drag", Asks: true, Text: say("in truth it is slower: air slows a drop of this size by "+
			"more than %s from a fall of %s on %s; measure its speed in two frames and give that as --speed",
			share("", 0.02), upTo, source)}}
	}
	return []Fact{{Key: "motion.drag", Text: say("that leaves out the air, which slows a drop of this size by "+
		"less than %s "+
		"up to a fall of %s %s", share("", 0.02), upTo, source)}}
}

// smeared tells how far the drop moves in an exposure, what that does beside the blur, and what helps.
func (r *Report) smeared() []Fact {
	s, sharpTo := r.motion().Smear, r.shot.Camera.SharpToPx
	facts := []Fact{{Key: "motion.smear", Asks: s.SmearPx > max(s.BlurPx, sharpTo),
		Text: say("in %s it moves by %s, %s: with a blur of %s that makes %s",
			shutterTime("motion.smear.shutter_s", s.ShutterS),
			strong(Figure{Path: "shot.smear_mm", Value: s.SmearMM, Unit: MM, Decimals: 3}),
			strong(blur("shot.smear_px", s.SmearPx)), blur("motion.smear.blur_px", s.BlurPx),
			blur("motion.smear.together_px", s.TogetherPx))}}
	if s.SmearPx > s.BlurPx {
		facts = append(facts, Fact{Key: "motion.blur_shutter", Text: say("at %s it moves no further than it is blurred",
			shutterUnder("motion.smear.shutter_for_blur_s", s.ShutterForBlurS))})
	}
	if s.SmearPx > sharpTo {
		facts = append(facts, Fact{Key: "motion.sharp_shutter", Text: say("at %s it moves by no more than the %s that pass "+
			"for sharp", shutterUnder("motion.smear.shutter_for_sharp_s", s.ShutterForSharpS),
			significant("sharpness.sharp_to_px", sharpTo, Pixels, 3))})
	}
	best := say("smear counted, %s is best: %s", stop("motion.smear.best.f_number", s.Best.FNumber),
		blur("motion.smear.best.together_px", s.Best.TogetherPx))
	if s.Best.NeededLux > 0 {
		best = say("%s, with %s on the board", best, lux("motion.smear.best.illuminance_needed_lux", s.Best.NeededLux))
	}
	facts = append(facts, Fact{Key: "motion.best", Text: best})
	if s.AsGood.FNumber < s.Best.FNumber {
		good := say("%s is hardly worse: %s", stop("motion.smear.as_good.f_number", s.AsGood.FNumber),
			blur("motion.smear.as_good.together_px", s.AsGood.TogetherPx))
		if s.AsGood.NeededLux > 0 {
			good = say("%s, with %s", good, lux("motion.smear.as_good.illuminance_needed_lux", s.AsGood.NeededLux))
		}
		facts = append(facts, Fact{Key: "motion.as_good", Text: good})
	}
	return facts
}

// wobble tells how the drop swings while it passes, as far as that is known.
func (r *Report) wobble() []Fact {
	s := r.swing()
	if s == nil || s.PerSecond == 0 {
		return nil
	}
	text := say("a free drop of this size swings so %s times a second (Rayleigh 1879)",
		significant("shot.swing_hz", s.PerSecond, Bare, 2))
	if s.FramesPerSwing > 0 {
		text = say("%s: once in %s", text, significant("shot.frames_per_swing", s.FramesPerSwing, Frames, 3))
	}
	if s.FallsMM > 0 {
		between := ", in which it moves by %s"
		if s.FramesPerSwing == 0 {
			between = ", and moves by %s in one swing"
		}
		text = say("%s"+between, text, length("swing.falls_mm_per_swing", s.FallsMM))
	}
	return []Fact{{Key: "look.swings", Text: text},
		{Key: "look.rings", Text: say("it rings for about %s (Lamb), round twice in each swing: when is not known beforehand",
			significant("swing.rings_s", s.RingsS, "s", 2))}}
}
