package main

import (
	"fmt"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// lightLines says how the lamps light the picture: a name with each line, empty where a line goes on. Without
// lamps there is nothing to say.
func lightLines(p layout.Plan) [][2]string {
	f := shot.Of(p).LightFigures()
	if f == nil {
		return nil
	}
	var lines [][2]string
	say := func(what, format string, args ...any) {
		lines = append(lines, [2]string{what, fmt.Sprintf(format, args...)})
	}
	say("light", "falls off by %s over the picture: brightest at board place %s, darkest at %s", stops(f.FalloffStops),
		boardPlace(f.Brightest.Board), boardPlace(f.Darkest.Board))
	say("", "in stops below the brightest: centre %.2f, top left %.2f, top right %.2f, bottom left %.2f, bottom "+
		"right %.2f",
		f.Centre.Stops, f.Corners[0].Stops, f.Corners[1].Stops, f.Corners[2].Stops, f.Corners[3].Stops)
	level := p.Level()
	if level.On() {
		say("levelled", "the print makes up for the fall-off: it is darker by up to %s, as even and as dark as its "+
			"darkest place; leave the lamps as they are", stops(level.LossStops()))
		return append(lines, glareLines(f, noun(p))...)
	}
	switch r := f.Retreat; {
	case r == nil:
		say("", "no distance within a kilometre brings it under half a stop: turn the lamps more straight on")
	case r.Factor > 1:
		say("", "under half a stop with every lamp %.2f times as far from the board's centre (%s), for %s less light",
			r.Factor, lampPlaces(r.Lamps), stops(r.LossStops))
	}
	if len(p.Lamps) == 1 && f.TwinStops < f.FalloffStops/2 {
		l := p.Lamps[0]
		say("", "a second lamp like it on the other side (%s) leaves %s",
			lampPlaces([]layout.Lamp{{XMM: -l.XMM, YMM: -l.YMM, ZMM: l.ZMM}}), stops(f.TwinStops))
	}
	if (f.Retreat == nil || f.Retreat.Factor > 1) && f.FalloffStops <= layout.MostLevelStops {
		say("", "or make the print with --level, which darkens it by up to %s where the light is strong",
			stops(f.FalloffStops))
	}
	return append(lines, glareLines(f, noun(p))...)
}

// glareLines says where shiny paper would mirror a lamp into the picture, and what to do. drop is the word
// for what refracts.
func glareLines(f *shot.LightFigures, drop string) [][2]string {
	var lines [][2]string
	for _, g := range f.Glares {
		if !g.Seen {
			continue
		}
		where := "beside the " + drop
		if g.Path == shot.ThroughDrop {
			where = "in the " + drop
		}
		what := ""
		if len(lines) == 0 {
			what = "glare"
		}
		lines = append(lines, [2]string{what,
			fmt.Sprintf("shiny paper mirrors lamp %d %s, at board place %s, frame pixel %.0f, %.0f; gone with the lamp %.0f "+
				"mm or more from the axis",
				g.Lamp, where, boardPlace(g.Board), g.Frame.XPx, g.Frame.YPx, g.BeyondMM)})
	}
	if len(lines) == 0 {
		return [][2]string{{"glare", "none: no lamp stands where the board would mirror it to the camera or into the " +
			drop}}
	}
	return append(lines, [2]string{"", "matt paper shows it as a faint veil; a polariser on the lamp and one crossed " +
		"to it on the lens take it away"})
}

// lightWarnings says what about the lamps spoils the shot.
func lightWarnings(p layout.Plan) (warnings []string) {
	f := shot.Of(p).LightFigures()
	if f == nil {
		return nil
	}
	for _, v := range f.InView {
		if v.Path == shot.Direct {
			warnings = append(warnings, fmt.Sprintf("lamp %d stands in the frame itself, at pixel %.0f, %.0f: move it "+
				"further out", v.Lamp, v.Frame.XPx, v.Frame.YPx))
		} else {
			warnings = append(warnings, fmt.Sprintf("lamp %d stands where the %s shows it, at frame pixel %.0f, %.0f: move "+
				"it further out, or before the %s", v.Lamp, noun(p), v.Frame.XPx, v.Frame.YPx, noun(p)))
		}
	}
	if c := f.Facing; c.Better != "" {
		warnings = append(warnings, fmt.Sprintf("on %.0f%% of the seams' length the cut edge faces away from its "+
			"strongest lamp and throws a shadow: with --light-from %s it is %.0f%%",
			100*c.TurnedMM/c.AllMM, c.Better, 100*c.BetterTurnedMM/c.AllMM))
	}
	return warnings
}

// levelProfileWarning says what levelling takes for granted of an artwork that carries a colour profile of its own.
const levelProfileWarning = "--level darkens by sRGB's curve, and the artwork's own colour profile may have " +
	"another: check one sheet before you print all"

func stops(n float64) string {
	if n >= layout.NoLightStops {
		return "all its light"
	}
	if text := fmt.Sprintf("%.2f", n); text != "1.00" {
		return text + " stops"
	}
	return "1 stop"
}

// boardPlace writes a place of the board in mm from its top-left corner.
func boardPlace(p layout.Point) string { return fmt.Sprintf("%.0f, %.0f mm", p.XMM, p.YMM) }

// lampPlaces writes where lamps stand as --lamp takes it.
func lampPlaces(lamps []layout.Lamp) string {
	var all []string
	for _, l := range lamps {
		// Adding 0 turns the -0 of a mirrored 0 into 0.
		all = append(all, fmt.Sprintf("--lamp %.0fmm,%.0fmm,%.0fmm", l.XMM+0, l.YMM+0, l.ZMM))
	}
	return strings.Join(all, " ")
}
