package report

import (
	"dropsheet/layout/shot"
)

// smallInFrame is the share of the frame's height under which a drop is a speck that a closer frame would serve
// (common practice, no source).
const smallInFrame = 0.25

// frame tells how large the drop is in the frame, and what the frame can show of the picture in it.
func (r *Report) frame() []Fact {
	c := r.shot.Camera
	acrossMM := 2 * r.shot.Sight().ApparentRadiusMM()
	facts := []Fact{
		{Key: "frame.size", Name: "frame", Text: say("the frame is %s at the %s, and %s", strong(size(
			length("camera.frame_width_mm", c.FrameWidthMM), length("camera.frame_height_mm", c.FrameHeightMM))), r.body,
			size(whole("camera.width_px", float64(c.WidthPx), Pixels), whole("camera.height_px", float64(c.HeightPx), Pixels)))},
		{Key: "frame.drop", Text: say("in it the %s is %s across", r.body, whole("", acrossMM/c.PixelMM(), Pixels))},
	}
	if c.Eye {
		facts = append(facts, Fact{Key: "frame.eye", Text: say("an eye looks in place of a camera: Emsley's reduced eye, " +
			"of 60 dioptres; the frame is what it takes in by turning alone, a pixel as far as its cones stand apart, " +
			"half a minute of arc")})
	}
	if c.SensorAssumed {
		facts = append(facts, Fact{Key: "frame.sensor", Asks: true, Text: say("no sensor was given, and one of %s is taken: "+
			"blur and light rest on that, and the frame's width where a lens gives it; give --sensor or --pixel-size",
			size(length("camera.sensor_mm.width", c.Sensor.WidthMM), length("camera.sensor_mm.height", c.Sensor.HeightMM)))})
	}
	turn := r.shot.Drop.Reverses.Turn()
	switch {
	case turn.ReverseX && acrossMM > c.FrameWidthMM, turn.ReverseY && acrossMM > c.FrameHeightMM:
		facts = append(facts, Fact{Key: "frame.cut", Asks: true, Text: say("the frame cuts the %s off: take in at least %s "+
			"each way, with a shorter --lens or a wider --frame-width", r.body, enough("", acrossMM))})
	case acrossMM < smallInFrame*c.FrameHeightMM && c.Eye:
	case acrossMM < smallInFrame*c.FrameHeightMM:
		facts = append(facts, Fact{Key: "frame.small", Text: say("for a larger %s: a longer --lens, a shorter "+
			"--camera-distance or a narrower --frame-width", r.body)})
	}
	return facts
}

// detail tells what the frame can show of the picture, and what print and artwork that takes.
func (r *Report) detail() []Fact {
	f := r.resolution()
	facts := []Fact{
		{Key: "detail.spans", Name: "detail", Text: say("the picture spans %s in the %s", size(whole("resolution.across_px",
			f.AcrossPx, Pixels), whole("resolution.down_px", f.DownPx, "frame pixels")), r.body)},
		{Key: "detail.sees", Text: say("a frame pixel sees %s of the print in the middle, %s at the fill",
			onPixel("centre", f.CentreMM, f.CentreAlongMM), onPixel("rim", f.RimMM, f.RimAlongMM))},
		{Key: "detail.enough", Text: say("%s to the inch of print, or a picture of %s, are enough: finer is not seen in "+
			"the frame", whole("resolution.needed_ppi", f.NeededPPI, Pixels),
			size(whole("resolution.needed_artwork_width_px", float64(f.NeededWidthPx), Pixels),
				whole("resolution.needed_artwork_height_px", float64(f.NeededHeightPx), Pixels)))},
	}
	if f.NeededPPI < shot.DefaultPPI {
		facts = append(facts, Fact{Key: "detail.auto", Text: say("--ppi auto prints just that: smaller files, sooner " +
			"printed")})
	}
	return facts
}

// hardlyDiffers is the ratio of two lengths up to which one stands for both.
const hardlyDiffers = 1.5

// onPixel says how much print a frame pixel sees: of a rod across it and along it, which is 0 for a ball.
func onPixel(where string, acrossMM, alongMM float64) Text {
	path := "resolution.board_mm_on_a_frame_pixel_" + where
	across := Figure{Path: path, Value: acrossMM, Unit: MM, Decimals: 2}
	if alongMM == 0 || max(acrossMM/alongMM, alongMM/acrossMM) <= hardlyDiffers {
		return say("%s", across)
	}
	return say("%s across and %s along", across, Figure{Path: path + "_along", Value: alongMM, Unit: MM, Decimals: 2})
}

// Artwork tells how many pixels of artwork and print fall on a frame pixel, of a picture of so many pixels
// printed with so many to the millimetre.
func (r *Report) Artwork(widthPx, heightPx int, printPerMM float64) Fact {
	f := r.resolution()
	centre, rim := f.ArtworkPx(float64(widthPx), float64(heightPx))
	pixels := func(v float64) Figure { return Figure{Value: v, Decimals: 1} }
	return Fact{Key: "detail.artwork", Name: "pixels", Text: say("of the artwork a frame pixel sees %s pixels in the "+
		"middle, %s at the fill; of the print %s and %s",
		pixels(centre), pixels(rim), pixels(f.CentreMM*printPerMM), pixels(f.RimMM*printPerMM))}
}

// TooCoarse warns of an artwork with fewer pixels than the frame has for it.
func (r *Report) TooCoarse(widthPx, heightPx int) (warnings []Text) {
	f := r.resolution()
	if centre, rim := f.ArtworkPx(float64(widthPx), float64(heightPx)); min(centre, rim) >= 1 {
		return nil
	}
	return []Text{say("the picture has %s and the frame could show %s: it will look soft or blocky there",
		size(whole("", float64(widthPx), Pixels), whole("", float64(heightPx), Pixels)),
		size(whole("resolution.needed_artwork_width_px", float64(f.NeededWidthPx), Bare),
			whole("resolution.needed_artwork_height_px", float64(f.NeededHeightPx), Bare)))}
}
