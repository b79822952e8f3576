package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// look tells how the picture appears in the drop, what part of it comes where, and what a swing of the drop
// does to it.
func (r *Report) look() []Fact {
	facts := []Fact{{Key: "look.bend", Name: "look", Text: r.bend()}}
	if r.shot.Picture.Look != layout.Bulged {
		facts = append(facts, Fact{Key: "look.holds", Text: say("that holds for this distance, this camera distance and "+
			"this shape of the %s", r.body)})
	}
	facts = append(facts, r.framing()...)
	if r.shot.CutToFill() {
		facts = append(facts, Fact{Key: "look.cut", Text: say("the picture is cut to what the %s sees at the "+
			"fill; --fit inside shows all of it", r.body)})
	}
	facts = append(facts, r.alongPicture()...)
	if swing := r.swing(); swing != nil {
		facts = append(facts, r.swings(*swing)...)
	}
	return facts
}

// bend says how the print is bent.
func (r *Report) bend() Text {
	switch look := r.shot.Picture.Look; look {
	case layout.Bulged:
		return say("%s: the print is not bent, and the picture looks wrapped round the %s, squeezed toward its rim",
			strong("bulged"), r.body)
	case layout.Straight:
		return say("%s: the print is bent beforehand, so that the picture appears in the %s just as drawn",
			strong("straight"), r.body)
	default:
		return say("the print is bent beforehand, %s from bulged to straight",
			strong(say("%s of the way", Figure{Value: float64(look), Decimals: 4})))
	}
}

// framing tells what part of the picture comes where, as far as that is not the usual.
func (r *Report) framing() (facts []Fact) {
	f := r.shot.Picture.Framing
	if turn := r.turn(); turn != nil {
		facts = append(facts, Fact{Key: "look.turn", Name: "turn", Text: say("in the %s the picture is turned by %s", r.body,
			strong(turn))})
	}
	if f.OffX != 0 || f.OffY != 0 {
		facts = append(facts, Fact{Key: "look.off", Name: "on the axis", Text: say("in place of the picture's middle, the "+
			"point %s of its width from its left and %s of its height from its top",
			strong(share("", 0.5+f.OffX)), strong(share("", 0.5+f.OffY)))},
			Fact{Key: "look.aside", Text: say("print and board are laid out about the axis, and the picture lies to one side " +
				"of it")})
	}
	if f.Round {
		facts = append(facts, Fact{Key: "look.round", Name: "round", Text: say("only the circle that touches the picture's " +
			"shorter sides is printed")})
	}
	return facts
}

// alongPicture says what a rod does not do for the picture, and how much of it shows for that; nothing of a
// ball.
func (r *Report) alongPicture() []Fact {
	p := r.shot.Plan
	if !p.Drop.Body.Rod() {
		return nil
	}
	squeezes := "a rod squeezes the picture across itself and not along"
	switch p.Picture.Look {
	case layout.Bulged:
		squeezes += ", so that it looks stretched along the rod"
	case layout.Straight:
		squeezes += "; the print makes up for that"
	default:
		squeezes += "; the print makes up for part of that, and the picture still looks somewhat stretched along the rod"
	}
	sees, whole, way := length("coverage.sees_mm.height", r.coverage().Sees.HeightMM),
		length("backdrop.height_mm", p.Backdrop.HeightMM), "high"
	if p.Drop.Body == flip.LevelRod {
		sees, whole, way = length("coverage.sees_mm.width", r.coverage().Sees.WidthMM),
			length("backdrop.width_mm", p.Backdrop.WidthMM), "wide"
	}
	shows := say("along it the frame sees the middle %s of a print that is %s %s", strong(sees), whole, way)
	if sees.Value >= whole.Value {
		shows = say("along it the frame sees all of the print")
	}
	return append([]Fact{{Key: "look.along", Name: "along", Text: say(squeezes)}, {Key: "look.shows", Text: shows}},
		r.usesSheets()...)
}

// swings says how much the picture changes while the drop swings.
func (r *Report) swings(s shot.Swing) []Fact {
	change := func(share float64) Figure {
		f := Figure{Value: share - 1, Unit: Percent}
		if math.Round(100*f.Value) > 0 {
			f.prefix = "+"
		}
		return f
	}
	both := func(flat, long float64) Text { return say("%s / %s", change(flat), change(long)) }
	flat, long := s.Flat, s.Long
	return append([]Fact{
		{Key: "look.swing", Name: "swing", Text: say("swinging from %s flatter than round to %s longer, the %s changes the "+
			"picture's edge by %s in width and %s in height", Figure{Value: 1 - flat.HeightOverWidth, Unit: Percent},
			Figure{Value: long.HeightOverWidth - 1, Unit: Percent}, r.body, both(flat.WidthShare, long.WidthShare),
			both(flat.HeightShare, long.HeightShare))},
		{Key: "look.swing_middle", Text: say("its middle, where a face sits, changes by %s in width and %s in height",
			both(flat.MiddleWidthShare, long.MiddleWidthShare), both(flat.MiddleHeightShare, long.MiddleHeightShare))},
		{Key: "look.swing_shape", Text: say("that changes its width over height by %s",
			both(flat.MiddleProportionsShare, long.MiddleProportionsShare))},
	}, r.wobble()...)
}
