package report

import (
	"math"

	"dropsheet/flip"
)

// drop tells what refracts, what it does to the picture, and how large it is in the frame.
func (r *Report) drop() []Fact {
	p := r.shot.Plan
	facts := []Fact{{Key: "drop.what", Name: r.body, Text: say("%s; refractive index %s", r.bodyAtLength(),
		Figure{Path: "drop.index", Value: p.Drop.Index, Decimals: 4})}}
	if m, ok := flip.MaterialByName(p.Drop.Material); ok {
		facts = append(facts, Fact{Key: "drop.source", Text: say("index at %s and %s: %s",
			Figure{Value: m.TemperatureC, Unit: "°C", Decimals: 1}, Figure{Value: m.WavelengthNM, Unit: "nm", Decimals: 1},
			m.Source)})
	}
	return append(facts, Fact{Key: "drop.focal", Text: say("focal length %s from its middle",
		Figure{Path: "drop.focal_length_mm", Value: p.Drop.FocalLengthMM, Unit: MM, Decimals: 2})})
}

// hangs tells how the board looks as it hangs, and why.
func (r *Report) hangs() []Fact {
	looks, why := r.turnedOver()
	p := r.shot.Plan
	if p.Picture.Framing.TurnDeg != 0 || !p.Picture.Plain() {
		against := say(" against the picture in the %s", r.body)
		if turn := r.turn(); turn != nil {
			against = say("%s, where it is turned by %s as asked", against, turn)
		}
		looks = say("%s%s", looks, against)
	}
	facts := []Fact{{Key: "hangs.looks", Name: "hangs", Text: say("as it hangs, the board looks %s", strong(looks))},
		{Key: "hangs.why", Text: why}}
	return facts
}

// turnedOver says what the drop undoes.
func (r *Report) turnedOver() (looks, why Text) {
	switch r.shot.Drop.Reverses {
	case flip.ReversesBoth:
		return say("turned by half a turn: upside down, left and right changed places, nothing mirrored"),
			say("the %s turns everything behind it by half a turn, and so puts the picture right again", r.body)
	case flip.ReversesX:
		return say("mirrored left to right: lettering on it reads backwards"),
			say("an upright rod changes left and right of everything behind it, and so puts the picture right again")
	case flip.ReversesY:
		return say("mirrored top to bottom, like a picture seen in still water"),
			say("a level rod changes up and down of everything behind it, and so puts the picture right again")
	}
	return say("upright"), say("at this distance the %s does not reverse what is behind it", r.body)
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
	return say("%s %s", Figure{Value: math.Abs(deg), Unit: "°", Decimals: 2}, way)
}
