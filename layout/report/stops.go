package report

import (
	"fmt"
	"strconv"

	"dropsheet/layout/shot"
)

// StopsIntro says what the table of stops holds.
func (r *Report) StopsIntro() Text {
	own, path := r.ownStop()
	intro := say("blur in frame pixels %s, with diffraction; light in stops against the plan's %s",
		focusWords(r.shot.Camera.Focus), strong(stop(path+"f_number", own.FNumber)))
	if r.exposure() != nil {
		intro = say("%s; lux that the board needs at %s", intro, shutterTime("exposure.shutter_s", r.exposure().ShutterS))
	}
	return intro
}

// Stops is what each stop does to light and blur, at the plan's focus.
func (r *Report) Stops() Table {
	rod, rate := r.shot.Drop.Body.Rod(), r.shot.Camera.FrameRate > 0
	t := Table{Heads: []string{"stop", "light"}}
	if rate {
		t.Heads = append(t.Heads, "frames/s")
	}
	if r.exposure() != nil {
		t.Heads = append(t.Heads, "lux")
	}
	t.Heads = append(t.Heads, "edge", "centre", "at fill")
	if rod {
		t.Heads = append(t.Heads, "along rod")
	}
	t.Heads = append(t.Heads, "backdrop")
	for i, line := range r.sharp().Stops {
		at, name := atFocus(line, r.shot.Camera.Focus)
		path := stopPath(i)
		in := path + name + ".blur_px."
		cells := []Figure{stop(path+"f_number", line.FNumber), light(path+"exposure_stops", line.ExposureStops)}
		if rate {
			cells = append(cells, frameRate(path+"frame_rate", line.FrameRate))
		}
		if r.exposure() != nil {
			cells = append(cells, lux(path+"illuminance_needed_lux", line.NeededLux).bare())
		}
		centrePx, fillPx := r.shot.PictureBlurs(at.Blur)
		centre, fill := r.blurPaths(path+name, at.Blur)
		cells = append(cells, blur(in+"edge_px", at.Blur.EdgePx), blur(centre, centrePx), blur(fill, fillPx))
		if rod {
			cells = append(cells, blur(in+"centre.sagittal_px", at.Blur.Centre.SagittalPx))
		}
		cells = append(cells, blur(in+"backdrop_px", at.Blur.BackdropPx))
		row := Row{Own: line.Current}
		for _, c := range cells {
			if c.Unit == Pixels {
				c = c.Column()
			}
			row.Cells = append(row.Cells, say("%s", c))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// mains tells how lamps on the mains pulse at the plan's frame rate, and what to do about it (common practice,
// no source).
func (r *Report) mains() []Fact {
	const remedy = "take lamps on direct current or high frequency"
	if len(r.sharp().Mains) == 0 {
		return nil // no frame rate was given
	}
	var lasts []Text
	for i, m := range r.sharp().Mains {
		path := fmt.Sprintf("sharpness.mains.%d.", i)
		hz := Figure{Path: path + "hz", Value: m.Hz, Unit: "Hz"}
		n := significant(path+"frames_per_pulse", m.FramesPerPulse, Frames, 3)
		if r.sharp().Mains[0].FramesPerPulse <= 1 {
			n = significant("", 1/m.FramesPerPulse, pulses, 3)
		}
		lasts = append(lasts, say("%s on %s", n, hz))
	}
	if r.sharp().Mains[0].FramesPerPulse > 1 {
		return []Fact{{Key: "mains.swing", Name: "mains", Asks: true, Text: say("at your frame rate the brightness of "+
			"lamps on the mains swings over %s", join(lasts, ", "))},
			{Key: "mains.remedy", Text: say(remedy)}}
	}
	return []Fact{{Key: "mains.steady", Name: "mains", Text: say("at your frame rate a frame lasts %s: brightness is "+
		"steady where the shutter stays open for whole pulses", join(lasts, ", "))}}
}

// stop is an f-number as a lens is marked.
func stop(path string, fNumber float64) Figure {
	return Figure{Path: path, Value: fNumber, number: shot.StopMark(fNumber)}
}

// light is a difference in light in stops, with its sign.
func light(path string, stops float64) Figure {
	f := Figure{Path: path, Value: stops, Decimals: 1}
	if text := short(stops, 1); text != "0" && stops > 0 {
		f.prefix = "+"
	}
	return f
}

// frameRate is frames a second: whole ones between a hundred and ten million, else three figures.
func frameRate(path string, perSecond float64) Figure {
	switch {
	case perSecond >= 1e7:
		return Figure{Path: path, Value: perSecond, number: strconv.FormatFloat(perSecond, 'g', 3, 64)}
	case perSecond < 100:
		return significant(path, perSecond, Bare, 3)
	}
	return whole(path, perSecond, Bare)
}
