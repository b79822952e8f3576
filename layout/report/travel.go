package report

import (
	"dropsheet/flip"
)

// moves tells how far the drop may move off the axis, and what becomes of the travel that was asked for.
func (r *Report) moves() []Fact {
	facts := append(r.tolerated(), r.askedTravel()...)
	return append(facts, Fact{Key: "travel.frame", Text: r.framed()})
}

// leastMM is the least length that is told as other than none: lengths are told to a tenth.
const leastMM = 0.1

// tolerated tells what travel leaves the dark rim where it is.
func (r *Report) tolerated() []Fact {
	t := r.travel()
	var free, none []Text
	for _, way := range []struct {
		mm          *float64
		path, words string
	}{{t.AcrossMM, "travel.across_mm", "to either side"}, {t.DownMM, "travel.down_mm", "up or down"}} {
		switch {
		case way.mm == nil:
			free = append(free, say("any distance along itself"))
		case *way.mm < leastMM:
			none = append(none, say(way.words))
		default:
			free = append(free, say("%s %s", strong(atMost(way.path, *way.mm)), way.words))
		}
	}
	edge, ends := "the picture's edge", "the board"
	switch {
	case !r.shot.Filled():
		edge, ends = "the edge of the print", "the print"
	case r.shot.Backdrop.Surround != "":
		edge = "the board's edge"
	}
	shows := say("%s would show, since %s ends where the fill does", edge, ends)
	if len(free) == 0 {
		return []Fact{{Key: "travel.none", Name: "travel", Asks: true, Text: say("the %s may %s stray off the axis: %s",
			r.body, strong("not"), shows)}}
	}
	facts := []Fact{{Key: "travel.free", Name: "travel", Text: say("the %s may stray off the axis %s before the rim "+
		"that looks past the board comes inside a fill of %s", r.body, join(free, ", and "),
		share("travel.held_fill", t.HeldFill))}}
	if len(none) > 0 {
		facts = append(facts, Fact{Key: "travel.shows", Asks: true, Text: say("%s it may %s stray at all: %s", none[0],
			strong("not"), shows)})
	}
	return facts
}

// askedTravel tells what fill the travel that was asked for leaves, and what would keep all of it.
func (r *Report) askedTravel() []Fact {
	a, held := r.travel().Asked, share("travel.held_fill", r.travel().HeldFill)
	if a == nil {
		return nil
	}
	over := significant("travel.asked.travel_mm", a.TravelMM, MM, 4)
	if a.Holds {
		return []Fact{{Key: "travel.holds", Text: say("over the %s each way that you asked for, a fill of %s stays free of "+
			"the rim that looks past the board", over, held)}}
	}
	kept := share("travel.asked.fill", a.Fill)
	kept.rounds = down
	facts := []Fact{{Key: "travel.asked", Asks: true,
		Text: say("over the %s each way that you asked for, only a fill of %s "+
			"stays free of the rim that looks past the board", over, kept)}}
	if a.NeedsBoard == nil {
		return append(facts, Fact{Key: "travel.hopeless", Asks: true, Text: say("no board is large enough for %s: take a "+
			"smaller fill or a shorter travel", held)})
	}
	if m := a.Print; m != nil {
		facts = append(facts, Fact{Key: "travel.larger", Asks: true, Text: say("to keep %s print larger: %s", held,
			askFor("travel.asked.larger_print", m))})
	}
	if m := a.Surround; m != nil {
		facts = append(facts, Fact{Key: "travel.surround", Asks: true, Text: say("to see a surround in place of the dark "+
			"room: %s", r.askForSurround("travel.asked.surround", m))})
	}
	return facts
}

// framed says how far the drop may move before the frame cuts it off.
func (r *Report) framed() Text {
	p := r.shot.Plan
	radiusMM := p.Sight().ApparentRadiusMM()
	across := atMost("", p.Camera.FrameWidthMM/2-radiusMM)
	updown := atMost("", p.Camera.FrameHeightMM/2-radiusMM)
	turn := p.Drop.Reverses.Turn()
	narrowest := min(across.Value, updown.Value)
	var text Text
	switch {
	case turn.ReverseX && across.Value <= 0, turn.ReverseY && updown.Value <= 0:
		return say("the frame cuts the %s off where it is", r.body)
	case p.Drop.Body == flip.UprightRod:
		text, narrowest = say("the frame holds the whole width of the rod up to %s to either side", across), across.Value
	case p.Drop.Body == flip.LevelRod:
		text, narrowest = say("the frame holds the whole width of the rod up to %s up or down", updown), updown.Value
	default:
		text = say("the frame holds the whole %s up to %s to either side, and %s up or down", r.body, across, updown)
	}
	if p.Drop.TravelMM > narrowest {
		text = say("%s: less than the %s asked for", text, significant("drop.travel_mm", p.Drop.TravelMM, MM, 4))
	}
	return text
}
