package report

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// sharpness tells whether any stop holds the drop's edge and the picture in it sharp together, and where to
// focus for it.
func (r *Report) sharpness() []Fact {
	s := r.sharp()
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
		facts = append(facts, Fact{Key: "sharp.wider", Asks: true, Text: say("a frame %s wide would hold them, at %s, with "+
			"the %s %s wide in it", enough("sharpness.wider_frame.frame_width_mm", w.FrameWidthMM),
			stop("sharpness.wider_frame.f_number", w.FNumber), r.body,
			whole("sharpness.wider_frame.drop_px", w.DropPx, Pixels))},
			Fact{Key: "sharp.scaled", Asks: true, Text: say("this frame would do, scaled down to a width of %s",
				Figure{Value: float64(r.shot.Camera.WidthPx) * s.SharpToPx / s.Least.BlurPx, Unit: Pixels, rounds: down})},
			Fact{Key: "sharp.longer", Text: say("a longer lens from further off does %s help, in a frame of the same width: "+
				"edge and picture hardly change", strong("not"))},
			Fact{Key: "sharp.beside", Text: say("the board beside them then blurs more, up to %s times as much, and less of it "+
				"is seen", Figure{Value: 1 + r.shot.Drop.DistanceMM/r.shot.Drop.CameraMM, Decimals: 1})})
	}
	facts = append(facts, r.alongRod()...)
	facts = append(facts, r.fringe()...)
	half := say("half the frame rate")
	if rate := r.shot.Camera.FrameRate; rate > 0 {
		half = say("half the frame rate, %s in place of %s frames a second", frameRate("", rate/2),
			frameRate("camera.frame_rate", rate))
	}
	return append(facts, Fact{Key: "sharp.light", Text: say("each stop further closed needs twice the light, or %s",
		half)})
}

// fringe tells how far colours part, where that is known.
func (r *Report) fringe() []Fact {
	px := r.fringePx()
	if px == 0 {
		return nil
	}
	return []Fact{{Key: "sharp.fringe",
		Text: say("colours part by %s at the fill, from red outside to blue inside: no stop "+
			"changes that", blur("fringe_px", px))}}
}

// alongRod tells what no stop can do for a rod; nothing of a ball.
func (r *Report) alongRod() []Fact {
	if !r.shot.Drop.Body.Rod() {
		return nil
	}
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	return []Fact{
		{Key: "sharp.across", Text: say("the blur of edge, centre and fill counts across the rod")},
		{Key: "sharp.along", Text: say("%s it nothing is bent, and the picture is seen at nearly its true place, far "+
			"behind: there its blur is %s at %s", strong("along"),
			blur(path+in+".blur_px.centre.sagittal_px", at.Blur.Centre.SagittalPx), stop(path+"f_number", own.FNumber))},
		{Key: "sharp.both", Text: say("a picture in a rod is hardly ever sharp both ways: lines along the rod " +
			"come out best")},
	}
}

// focus tells where to focus at the plan's stop, and what blur that and the other two focuses give.
func (r *Report) focus() []Fact {
	own, path := r.ownStop()
	at, in := atFocus(own, r.shot.Camera.Focus)
	facts := []Fact{{Key: "focus.where", Name: "focus", Text: say("focus on something thin held where the %s will be, "+
		"then move the camera back by %s", r.body, strong(r.BeforeMiddle(at.FocusMM)))}}
	for _, f := range focuses(own) {
		centrePx, fillPx := r.shot.PictureBlurs(f.at.Blur)
		centre, fill := r.blurPaths(path+f.path, f.at.Blur)
		plan := ""
		if f.path == in {
			plan = " (the plan)"
		}
		facts = append(facts, Fact{Key: f.key, Text: say("%s%s, %s back: at %s the edge's blur is %s, the picture's %s in "+
			"the middle, %s at the fill and %s over its area",
			f.words, plan, r.BeforeMiddle(f.at.FocusMM), stop(path+"f_number", own.FNumber),
			blur(path+f.path+".blur_px.edge_px", f.at.Blur.EdgePx), blur(centre, centrePx).bare(),
			blur(fill, fillPx).bare(), blur(path+f.path+".picture_area_px", f.at.AreaPx).bare())})
	}
	return append(append(facts, r.focusStops()), r.stacked()...)
}

// focusStops tells at which stop the picture, and edge and picture together, are least blurred over the picture's area.
func (r *Report) focusStops() Fact {
	at := func(path string, f shot.FocusedStop) Text {
		return say("%s, %s back: %s", stop(path+".f_number", f.FNumber), r.BeforeMiddle(f.FocusMM),
			blur(path+".blur_px", f.BlurPx))
	}
	return Fact{Key: "focus.stops", Text: say("over its area the picture alone is least blurred at %s, and edge and "+
		"picture together at %s", at("sharpness.picture_alone", r.sharp().PictureAlone),
		at("sharpness.whole", r.sharp().Whole))}
}

// stacked tells how many exposures make a stack in which all of edge and picture is sharp; nothing of what falls.
func (r *Report) stacked() []Fact {
	if !standsStill(r.shot.Drop) {
		return nil
	}
	within := significant("sharpness.sharp_to_px", r.sharp().SharpToPx, Pixels, 3)
	s := r.stack()
	if s == nil {
		least := r.stackable()
		to := significant("stackable.sharp_to_px", least.SharpToPx, Pixels, 3)
		to.rounds = up
		return []Fact{{Key: "focus.stack", Text: say("the %s stands still, and yet no stack of exposures makes all of edge "+
			"and picture sharp within %s, at no stop; with --sharp-to as wide as %s there is one, at %s", r.body, within, to,
			stop("stackable.f_number", least.FNumber))}}
	}
	at := stop("stack.f_number", s.FNumber)
	shot := counted("stack.exposures", s.Exposures, "exposure", "exposures")
	var text Text
	if s.Exposures == 1 {
		text = say("the %s stands still, and need not be stacked: %s at %s, %s back, has all of edge and picture within %s",
			r.body, strong(shot), strong(at), r.BeforeMiddle(s.FromMM), within)
	} else {
		text = say("the %s stands still, so exposures can be stacked on a computer: %s at %s, from %s to %s back, %s "+
			"apart, have all of edge and picture within %s in one of them", r.body, strong(shot), strong(at),
			r.BeforeMiddle(s.FromMM), r.BeforeMiddle(s.ToMM), Figure{Path: "stack.step_mm", Value: s.StepMM, Unit: MM,
				Decimals: 2, rounds: down}, within)
	}
	if s.FNumber != r.shot.Camera.FNumber {
		text = say("%s; at the plan's %s some of it is never so sharp", text, stop("camera.f_number", r.shot.Camera.FNumber))
	}
	return []Fact{{Key: "focus.stack", Text: text}}
}

// Focuses is the same as a table: how far back each focus is, and its blur in frame pixels.
func (r *Report) Focuses() Table {
	t := Table{Heads: []string{"in focus", "mm back", "edge", "centre", "at fill", "over area"}}
	own, path := r.ownStop()
	_, in := atFocus(own, r.shot.Camera.Focus)
	for _, f := range focuses(own) {
		centrePx, fillPx := r.shot.PictureBlurs(f.at.Blur)
		centre, fill := r.blurPaths(path+f.path, f.at.Blur)
		row := Row{Cells: []Text{say(f.name)}, Own: f.path == in}
		for _, c := range []Figure{r.BeforeMiddle(f.at.FocusMM), blur(path+f.path+".blur_px.edge_px", f.at.Blur.EdgePx),
			blur(centre, centrePx), blur(fill, fillPx), blur(path+f.path+".picture_area_px", f.at.AreaPx)} {
			row.Cells = append(row.Cells, say("%s", c.Column()))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// focused is a focus with its words.
type focused struct {
	key, words, name string
	path             string // what JSON calls it
	at               shot.Focused
}

// focuses are all of them at a stop.
func focuses(own shot.StopLine) []focused {
	return []focused{
		{"focus.edge", "with the edge in focus", "the edge", "focus_edge", own.Edge},
		{"focus.best", "between the two", "between", "focus_best", own.Best},
		{"focus.whole", "with both in focus over the picture's area", "both, over area", "focus_whole", own.Whole},
		{"focus.picture", "with the picture in focus", "the picture", "focus_picture", own.Picture},
	}
}

// BeforeMiddle is how far before the drop's middle a plane lies that is so far from the lens's entrance pupil, to
// a hundredth: it is some millimetres.
func (r *Report) BeforeMiddle(fromPupilMM float64) Figure {
	return Figure{Value: r.shot.Drop.CameraMM - fromPupilMM, Unit: MM, Decimals: 2}
}

// blurPaths are where JSON has the two figures that shot.PictureBlurs picks from a blur.
func (r *Report) blurPaths(focus string, b layout.Blur) (centre, fill string) {
	way := func(s layout.Spread) string {
		if !r.shot.Drop.Body.Rod() && s.SagittalPx > s.TangentialPx {
			return "sagittal_px"
		}
		return "tangential_px"
	}
	return focus + ".blur_px.centre." + way(b.Centre), focus + ".blur_px.at_fill." + way(b.Fill)
}

// ownStop is the line of the plan's own stop, which the table always holds, and where JSON has it.
func (r *Report) ownStop() (own shot.StopLine, path string) {
	for i, line := range r.sharp().Stops {
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
	case layout.FocusWhole:
		return line.Whole, "focus_whole"
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
	case layout.FocusWhole:
		return "with both in focus over the picture's area"
	}
	return "at the best focus"
}
