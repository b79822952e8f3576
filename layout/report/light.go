package report

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// lit tells how evenly the lamps light the picture, and what would do it better; nothing without lamps.
func (r *Report) lit() []Fact {
	f := r.light()
	if f == nil {
		return nil
	}
	facts := []Fact{
		{Key: "light.falls", Name: "light", Text: say("over the picture the light falls off by %s",
			strong(stops("light.falloff_stops", f.FalloffStops)))},
		{Key: "light.places", Text: say("it is brightest at board place %s, and darkest at %s",
			boardPlace("light.brightest", f.Brightest.Board), boardPlace("light.darkest", f.Darkest.Board))},
	}
	if f.FalloffStops >= layout.NoLightStops {
		facts = []Fact{{Key: "light.falls", Name: "light", Asks: true,
			Text: say("a part of the picture gets %s from these lamps", strong("no light"))}}
	}
	at := func(path string, p shot.LitPlace) Text { return stopsBelow("light."+path+".stops", p.Stops) }
	facts = append(facts, Fact{Key: "light.corners", Text: say("in stops below the brightest: centre %s, top left %s, "+
		"top right %s, bottom left %s, bottom right %s", at("centre", f.Centre), at("corners.0", f.Corners[0]),
		at("corners.1", f.Corners[1]), at("corners.2", f.Corners[2]), at("corners.3", f.Corners[3]))})
	return append(append(r.lampsKnown(), facts...), r.evener()...)
}

// evener tells what would light the board more evenly.
func (r *Report) evener() []Fact {
	f, p := r.light(), r.shot.Plan
	if level := p.Level(); level.On() { // lamps moved now would spoil what the print makes up for
		return []Fact{
			{Key: "light.levelled", Name: "levelled", Text: say("the sheets make up for the fall-off of the lamps that they " +
				"were made for")},
			{Key: "light.loss", Text: say("they are darker by up to %s where the light is strong, and the board comes out as "+
				"even and as dark as its darkest place", strong(stops("", level.LossStops())))},
			{Key: "light.exactly", Text: say("set the lamps up exactly, and open up by that much")},
		}
	}
	var facts []Fact
	switch m := f.Retreat; {
	case m == nil:
		facts = append(facts, Fact{Key: "light.hopeless", Asks: true, Text: say("no distance within a kilometre brings it " +
			"under half a stop: turn the lamps more straight on")})
	case m.Factor > 1:
		costs := Text(nil) // lamps that point elsewhere may give the middle more from there
		if m.LossStops >= 0 {
			costs = say(", which costs %s of light", stops("light.under_half_a_stop.loss_stops", m.LossStops))
		}
		facts = append(facts, Fact{Key: "light.retreat",
			Text: say("it would fall off by under half a stop with every lamp %s times as far from the board's middle%s",
				Figure{Path: "light.under_half_a_stop.factor", Value: m.Factor, Decimals: 2}, costs)},
			Fact{Key: "light.retreat_to", Text: say("that is %s", lampPlaces(m.Lamps))})
	default:
		facts = append(facts, Fact{Key: "light.even", Text: say("half a stop is hardly seen")})
	}
	if len(p.Lamps) == 1 && f.TwinStops < f.FalloffStops/2 {
		l := p.Lamps[0]
		facts = append(facts, Fact{Key: "light.twin", Text: say("a second lamp like it on the other side (%s) leaves %s",
			lampPlaces([]layout.Lamp{{XMM: -l.XMM, YMM: -l.YMM, ZMM: l.ZMM}}),
			stops("light.falloff_with_twins_stops", f.TwinStops))})
	}
	if (f.Retreat == nil || f.Retreat.Factor > 1) && f.FalloffStops <= layout.MostLevelStops {
		facts = append(facts, Fact{Key: "light.level",
			Text: say("a print made with %s makes up for the fall-off, darker by up to %s where the light is strong",
				strong("--level"), stops("light.falloff_stops", f.FalloffStops))})
	}
	return facts
}

// glare tells where shiny paper would mirror a lamp into the picture, and what to do (common practice, no
// source).
func (r *Report) glare() []Fact {
	if r.light() == nil {
		return nil
	}
	var facts []Fact
	for i, g := range r.light().Glares {
		if !g.Seen {
			continue
		}
		where, name := "beside the "+r.body, ""
		if g.Path == shot.ThroughDrop {
			where = "in the " + r.body
		}
		if len(facts) == 0 {
			name = "glare"
		}
		path := fmt.Sprintf("light.glare.%d", i)
		lamp := whole(path+".lamp", float64(g.Lamp), Bare)
		facts = append(facts, Fact{Key: "glare.seen", Name: name, Asks: true, Text: say("shiny paper mirrors lamp %s %s, at "+
			"%s from the board's left edge and %s from its upper edge, frame pixel %s, %s", lamp, where,
			whole(path+".board_mm.x", g.Board.XMM, MM), whole(path+".board_mm.y", g.Board.YMM, MM),
			whole(path+".frame_px.x", g.Frame.XPx, Bare), whole(path+".frame_px.y", g.Frame.YPx, Bare))},
			Fact{Key: "glare.gone", Asks: true, Text: say("to lose that, move lamp %s at least %s away from the axis", lamp,
				Figure{Path: path + ".beyond_mm", Value: g.BeyondMM, Unit: MM, rounds: up})})
	}
	if len(facts) == 0 {
		return []Fact{{Key: "glare.none", Name: "glare", Text: say("no lamp stands where the board would mirror it to the "+
			"camera or into the %s", r.body)}}
	}
	return append(facts,
		Fact{Key: "glare.matt", Text: say("on %s a mirrored lamp is only a faint veil", strong("matt paper"))},
		Fact{Key: "glare.polarise", Text: say("a polarising sheet on the lamp, and a polariser on the lens turned " +
			"until the veil is darkest, take that away")})
}

// lampsInTheWay tells what about the lamps spoils the shot: those that are seen, and cut edges turned from them.
func (r *Report) lampsInTheWay() []Fact {
	if r.light() == nil {
		return nil
	}
	var facts []Fact
	for i, v := range r.light().InView {
		path := fmt.Sprintf("light.lamps_in_view.%d", i)
		at := say("%s, %s", whole(path+".frame_px.x", v.Frame.XPx, Bare), whole(path+".frame_px.y", v.Frame.YPx, Bare))
		lamp := whole(path+".lamp", float64(v.Lamp), Bare)
		text := say("lamp %s stands in the frame itself, at pixel %s: move it further out", lamp, at)
		if v.Path == shot.ThroughDrop {
			text = say("lamp %s stands where the %s shows it, at frame pixel %s: move it further out, or to the camera's "+
				"side of the %s", lamp, r.body, at, r.body)
		}
		facts = append(facts, Fact{Key: "lamps.seen", Asks: true, Text: text})
	}
	f := r.light().Facing
	turned := share("", f.TurnedMM/math.Max(f.AllMM, 1))
	switch {
	case len(r.shot.Seams) == 0:
	case f.Better != "":
		facts = append(facts, Fact{Key: "lamps.cut", Asks: true,
			Text: say("on %s of the seams' length the cut edge faces %s "+
				"the lamp that is strongest there, and throws a shadow; made with --light-from %s it would be %s",
				turned, strong("away from"), string(f.Better), share("", f.BetterTurnedMM/f.AllMM))})
	case f.TurnedMM > 0:
		facts = append(facts, Fact{Key: "lamps.turned",
			Text: say("on %s of the seams' length the cut edge faces away from the "+
				"lamp that is strongest there; cut for any other corner it would be no less", turned)})
	default:
		facts = append(facts, Fact{Key: "lamps.facing",
			Text: say("every cut edge faces the lamp that is strongest there, and " +
				"throws no shadow")})
	}
	return facts
}

// stops is a loss of light.
func stops(path string, n float64) any {
	if n >= layout.NoLightStops {
		return "all its light"
	}
	return Figure{Path: path, Value: n, Unit: Stops, Decimals: 2}
}

// boardPlace is a place of the board in mm from its top-left corner.
func boardPlace(path string, at layout.Point) Text {
	return say("%s, %s", whole(path+".board_mm.x", at.XMM, Bare), whole(path+".board_mm.y", at.YMM, MM))
}

// lampPlaces is where lamps stand, as --lamp takes it.
func lampPlaces(lamps []layout.Lamp) Text {
	var all []Text
	for _, l := range lamps {
		mm := func(v float64) Figure { return Figure{Value: v} }
		all = append(all, say("--lamp %smm,%smm,%smm", mm(l.XMM), mm(l.YMM), mm(l.ZMM)))
	}
	return join(all, " ")
}
