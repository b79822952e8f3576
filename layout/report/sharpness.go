package report

import (
	"fmt"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// sharpness tells whether any stop holds the drop's edge and the picture in it sharp together, and where to
// focus for it.
func (r *Report) sharpness() []Fact {
	s := r.sharp
	within := significant("sharpness.sharp_to_px", s.SharpToPx, Pixels, 3)
	verdict := Fact{Key: "sharp.verdict", Name: "sharp", Asks: s.Holds == nil}
	if s.Holds != nil {
		from, to := s.Holds.Marks()
		held := from + " holds"
		if from != to {
			held = from + " to " + to + " hold"
		}
		verdict.Text = say("%s", strong(say(held+" edge and picture within %s", within)))
	} else {
		verdict.Text = say("%s", strong(say("no stop holds edge and picture within %s", within)))
	}
	facts := []Fact{verdict, {Key: "sharp.least", Text: say("the least blur of both is %s, at %s: %s at the %s",
		blur("sharpness.least.blur_px", s.Least.BlurPx), stop("sharpness.least.f_number", s.Least.FNumber),
		Figure{Path: "sharpness.least.at_drop_mm", Value: s.Least.AtDropMM, Unit: MM, Decimals: 3}, r.body)}}
	if w := s.Wider; w != nil {
		facts = append(facts, Fact{Key: "sharp.wider", Asks: true, Text: say("a frame %s wide would hold them, at %s, "+
			"the %s %s wide in it; so would this one, scaled down to a width of %s",
			enough("sharpness.wider_frame.frame_width_mm", w.FrameWidthMM),
			stop("sharpness.wider_frame.f_number", w.FNumber), r.body,
			whole("sharpness.wider_frame.drop_px", w.DropPx, Pixels),
			Figure{Value: float64(r.shot.Camera.WidthPx) * s.SharpToPx / s.Least.BlurPx, Unit: Pixels, rounds: down})},
			Fact{Key: "sharp.longer", Text: say("a longer lens from further off does %s help: in a frame of the same "+
				"width the blur is the same", strong("not"))})
	}
	if along, ok := r.alongRod(); ok {
		facts = append(facts, along)
	}
	half := say("half the frame rate")
	if rate := r.shot.Camera.FrameRate; rate > 0 {
		half = say("half the frame rate, %s in place of %s frames a second", frameRate("", rate/2),
			frameRate("camera.frame_rate", rate))
	}
	facts = append(facts, Fact{Key: "sharp.light", Text: say("each stop further closed needs twice the light, or %s",
		half)})
	return append(facts, r.focus()...)
}

// alongRod tells what no stop can do for a rod.
func (r *Report) alongRod() (f Fact, ok bool) {
	if r.shot.Drop.Body == flip.Ball {
		return Fact{}, false
	}
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	return Fact{Key: "sharp.along", Text: say("edge, centre and fill count across the rod; %s it nothing is "+
		"bent, and the "+
		"picture is seen at nearly its true place, far behind: there its blur is %s at %s; a "+
		"picture in a rod is hardly ever sharp both ways; lines along the rod come out best", strong("along"),
		blur(path+in+".blur_px.centre.sagittal_px", at.Blur.Centre.SagittalPx), stop(path+"f_number", own.FNumber))}, true
}

// focus tells where to focus at the plan's stop, and what blur that and the other two focuses give.
func (r *Report) focus() []Fact {
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	facts := []Fact{{Key: "focus.where", Name: "focus", Text: say("focus on something thin held where the %s will be, "+
		"then move the camera back by %s", r.body, strong(r.beforeMiddle(at)))}}
	for _, f := range []struct {
		key, words, path string
		at               shot.Focused
	}{
		{"focus.edge", "with the edge in focus", "focus_edge", own.Edge},
		{"focus.best", "between the two", "focus_best", own.Best},
		{"focus.picture", "with the picture in focus", "focus_picture", own.Picture},
	} {
		centrePx, fillPx := r.shot.PictureBlurs(f.at.Blur)
		centre, fill := r.blurPaths(path+f.path, f.at.Blur)
		plan := Text(nil)
		if f.path == in {
			plan = say(" (the plan)")
		}
		facts = append(facts, Fact{Key: f.key, Text: say("at %s, %s%s, %s back, the edge's blur is %s, the picture's %s in "+
			"the middle and %s at the fill",
			stop(path+"f_number", own.FNumber), f.words, plan, r.beforeMiddle(f.at),
			blur(path+f.path+".blur_px.edge_px", f.at.Blur.EdgePx).bare(), blur(centre, centrePx).bare(),
			blur(fill, fillPx))})
	}
	return facts
}

// beforeMiddle is how far before the drop's middle a focus lies, to a hundredth: it is some millimetres.
func (r *Report) beforeMiddle(at shot.Focused) Figure {
	return Figure{Value: r.shot.Drop.CameraMM - at.FocusMM, Unit: MM, Decimals: 2}
}

// blurPaths are where JSON has the two figures that shot.PictureBlurs picks from a blur.
func (r *Report) blurPaths(focus string, b layout.Blur) (centre, fill string) {
	way := func(s layout.Spread) string {
		if r.shot.Drop.Body == flip.Ball && s.SagittalPx > s.TangentialPx {
			return "sagittal_px"
		}
		return "tangential_px"
	}
	return focus + ".blur_px.centre." + way(b.Centre), focus + ".blur_px.at_fill." + way(b.Fill)
}

// ownStop is the line of the plan's own stop, which the table always holds, and where JSON has it.
func (r *Report) ownStop() (own shot.StopLine, path string) {
	for i, line := range r.sharp.Stops {
		if line.Current {
			return line, stopPath(i)
		}
	}
	return shot.StopLine{}, ""
}

// stopPath is where JSON has a line of the stops.
func stopPath(i int) string { return fmt.Sprintf("sharpness.stops.%d.", i) }

// atFocus is a stop at the focus that is asked for, and what JSON calls that.
func atFocus(line shot.StopLine, f layout.Focus) (at shot.Focused, name string) {
	switch f {
	case layout.FocusEdge:
		return line.Edge, "focus_edge"
	case layout.FocusPicture:
		return line.Picture, "focus_picture"
	}
	return line.Best, "focus_best"
}

// focusWords says which focus that is.
func focusWords(f layout.Focus) string {
	switch f {
	case layout.FocusEdge:
		return "with the edge in focus"
	case layout.FocusPicture:
		return "with the picture in focus"
	}
	return "at the best focus"
}
