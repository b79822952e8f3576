package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// drop tells what refracts, what it does to the picture, and how large it is in the frame.
func (r *Report) drop() []Fact {
	p := r.shot.Plan
	facts := []Fact{{Key: "drop.what", Name: r.body, Text: say("%s; refractive index %s", r.bodyAtLength(),
		Figure{Path: "drop.index", Value: p.Drop.Index, Decimals: 4})}}
	facts = append(facts, r.comes()...)
	facts = append(facts, r.hanging()...)
	if m, ok := flip.MaterialByName(p.Drop.Material); ok {
		facts = append(facts, Fact{Key: "drop.source", Text: say("index at %s and %s: %s",
			Figure{Value: m.TemperatureC, Unit: "°C", Decimals: 1}, Figure{Value: m.WavelengthNM, Unit: "nm", Decimals: 1},
			m.Source)})
	}
	facts = append(facts, Fact{Key: "drop.focal", Text: say("its focal length is %s, from its middle",
		Figure{Path: "drop.focal_length_mm", Value: p.Drop.FocalLengthMM, Unit: MM, Decimals: 2})})
	return append(facts, r.walled()...)
}

// walled tells what a tube's wall changes; nothing of what has none.
func (r *Report) walled() []Fact {
	walled := r.shot.Sight()
	without := walled
	without.Drop.WallMM = 0
	is, ok := walled.ReachMM(r.shot.Picture.Fill)
	was, okWas := without.ReachMM(r.shot.Picture.Fill)
	if walled.Drop.WallMM == 0 || !ok || !okWas {
		return nil
	}
	return []Fact{{Key: "drop.wall", Text: say("that is with its wall, of index %s: with none the focal length would "+
		"be %s, and at the picture's fill it would see %s as far",
		Figure{Path: "drop.wall_index", Value: r.shot.Drop.WallIndex, Decimals: 4},
		Figure{Value: without.Drop.FocalLengthMM(), Unit: MM, Decimals: 2},
		say("%s times", Figure{Value: was / is, Decimals: 3}))}}
}

// hangs tells how the board looks as it hangs, and why.
func (r *Report) hangs() []Fact {
	p := r.shot.Plan
	looks, which, why := r.turnedOver()
	text := say("the board looks %s when it hangs%s", strong(looks), which)
	if r.turn() != nil {
		text = say("the board looks %s when it hangs, against the picture in the %s", strong(looks), r.body)
	}
	facts := []Fact{{Key: "hangs.looks", Name: "hangs", Text: text}}
	if p.Picture.Look != layout.Bulged {
		facts = append(facts, Fact{Key: "hangs.bent", Text: say("it looks bent too: it is drawn out toward its edge, where "+
			"the %s squeezes the picture together", r.body)})
	}
	return append(facts, Fact{Key: "hangs.why", Text: why})
}

// turnedOver says how the board looks, what that means, and how the drop undoes it.
func (r *Report) turnedOver() (looks string, which, why Text) {
	undoes := func(what string) Text {
		return say("the %s %s of everything behind it, and so puts the picture right again", r.body, what)
	}
	switch r.shot.Drop.Reverses {
	case flip.ReversesBoth:
		why := say("the %s turns everything behind it by half a turn, and so puts the picture right again", r.body)
		if r.turn() != nil {
			return "turned by half a turn", nil, why
		}
		return "upside down", say(": it is turned by half a turn, and nothing in it is mirrored"), why
	case flip.ReversesX:
		return "mirrored left to right", say(": lettering on it reads backwards"), undoes("changes left and right")
	case flip.ReversesY:
		return "mirrored top to bottom", say(", like a picture seen in still water"), undoes("changes up and down")
	}
	return "upright", nil, say("at this distance the %s does not reverse what is behind it", r.body)
}

// turn is the turn that was asked for, nil for none.
func (r *Report) turn() Text {
	deg := math.Mod(r.shot.Picture.Framing.TurnDeg, 360)
	way := "clockwise"
	if deg < 0 {
		way = "counter-clockwise"
	}
	if deg == 0 {
		return nil
	}
	return say("%s %s", Figure{Value: math.Abs(deg), Unit: Degrees, Decimals: 2}, way)
}
