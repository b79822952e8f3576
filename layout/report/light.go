package report

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// lit tells how evenly the lamps light the picture, and what would do it better; nothing without lamps.
func (r *Report) lit() []Fact {
	f := r.light
	if f == nil {
		return nil
	}
	falls := Fact{Key: "light.falls", Name: "light", Text: say("over the picture the light falls off by %s: brightest at "+
		"board place %s, darkest at %s", strong(stops("light.falloff_stops", f.FalloffStops)),
		boardPlace("light.brightest", f.Brightest.Board), boardPlace("light.darkest", f.Darkest.Board))}
	if f.FalloffStops >= layout.NoLightStops {
		falls = Fact{Key: "light.falls", Name: "light", Asks: true,
			Text: say("a part of the picture gets %s from these lamps", strong("no light"))}
	}
	at := func(path string, p shot.LitPlace) Figure {
		return Figure{Path: "light." + path + ".stops", Value: p.Stops, Decimals: 2}
	}
	facts := []Fact{falls, {Key: "light.corners", Text: say("in stops below the brightest: centre %s, top left %s, "+
		"top right %s, bottom left %s, bottom right %s", at("centre", f.Centre), at("corners.0", f.Corners[0]),
		at("corners.1", f.Corners[1]), at("corners.2", f.Corners[2]), at("corners.3", f.Corners[3]))}}
	facts = append(facts, r.evener()...)
	facts = append(facts, r.glare()...)
	return append(facts, r.lampsInTheWay()...)
}

// evener tells what would light the board more evenly.
func (r *Report) evener() []Fact {
	f, p := r.light, r.shot.Plan
	if level := p.Level(); level.On() { // lamps moved now would spoil what the print makes up for
		return []Fact{{Key: "light.levelled", Name: "levelled", Text: say("the sheets make up for the fall-off of the lamps "+
			"that they were made for: they are darker by up to %s where the light is strong, and the board comes out as "+
			"even and as dark as its darkest place; set the lamps up exactly, and open up by that much",
			strong(stops("", level.LossStops())))}}
	}
	var facts []Fact
	switch m := f.Retreat; {
	case m == nil:
		facts = append(facts, Fact{Key: "light.hopeless", Asks: true, Text: say("no distance within a kilometre brings it " +
			"under half a stop: turn the lamps more straight on")})
	case m.Factor > 1:
		facts = append(facts, Fact{Key: "light.retreat",
			Text: say("it would be under half a stop with every lamp %s times as "+
				"far from the board's middle (%s), which costs %s of light",
				Figure{Path: "light.under_half_a_stop.factor", Value: m.Factor, Decimals: 2}, lampPlaces(m.Lamps),
				stops("light.under_half_a_stop.loss_stops", m.LossStops))})
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
		facts = append(facts, Fact{Key: "light.level", Text: say("or make the print with %s, which darkens it by up to %s "+
			"where the light is strong", strong("--level"), stops("light.falloff_stops", f.FalloffStops))})
	}
	return facts
}

// glare tells where shiny paper would mirror a lamp into the picture, and what to do (common practice, no
// source).
func (r *Report) glare() []Fact {
	var facts []Fact
	for i, g := range r.light.Glares {
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
		beyond := Figure{Path: path + ".beyond_mm", Value: g.BeyondMM, Unit: MM, rounds: up}
		facts = append(facts, Fact{Key: "glare.seen", Name: name, Asks: true, Text: say("shiny paper mirrors lamp %s %s, at "+
			"board place %s, frame pixel %s, %s; it is gone when the lamp stands %s or more from the axis",
			whole(path+".lamp", float64(g.Lamp), Bare), where, boardPlace(path, g.Board),
			whole(path+".frame_px.x", g.Frame.XPx, Bare), whole(path+".frame_px.y", g.Frame.YPx, Bare), beyond)})
	}
	if len(facts) == 0 {
		return []Fact{{Key: "glare.none", Name: "glare", Text: say("no lamp stands where the board would mirror it to the "+
			"camera or into the %s", r.body)}}
	}
	return append(facts, Fact{Key: "glare.mend",
		Text: say("on %s a mirrored lamp is only a faint veil; a polarising sheet "+
			"on the lamp, and a polariser on the lens turned until the veil is darkest, take it away", strong("matt paper"))})
}

// lampsInTheWay tells what about the lamps spoils the shot: those that are seen, and cut edges turned from them.
func (r *Report) lampsInTheWay() []Fact {
	var facts []Fact
	for i, v := range r.light.InView {
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
	f := r.light.Facing
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
