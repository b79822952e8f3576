package report

import (
	"fmt"
	"math"

	"dropsheet/layout/shot"
)

// mirrored tells where the drop shows each lamp, and how bright; nothing without lamps.
func (r *Report) mirrored() (facts []Fact) {
	all := r.highlights()
	for lamp := range r.shot.Lamps {
		name := ""
		if lamp == 0 {
			name = "highlights"
		}
		inside := -1 // the brightest that comes from inside
		shown := false
		for i, h := range all {
			switch {
			case h.Lamp != lamp+1:
			case h.Way == shot.Mirrored:
				facts, shown = append(facts, r.mirroredLamp(name, i, h)), true
				name = ""
			case inside < 0 || h.OverWhite > all[inside].OverWhite:
				inside = i
			}
		}
		if !shown {
			facts = append(facts, Fact{Key: "highlights.none", Name: name, Text: say("the %s mirrors nothing of lamp %s",
				r.body, whole("", float64(lamp+1), Bare))})
		}
		if inside >= 0 {
			h := all[inside]
			times := map[string]string{shot.OnceThrown: "once", shot.TwiceThrown: "twice"}[h.Way]
			facts = append(facts, Fact{Key: "highlights.inside", Text: say("thrown back %s inside, the light of lamp %s shows "+
				"%s%s", times, whole("", float64(lamp+1), Bare), r.inDrop(inside, h), brightness(inside, h))})
		}
	}
	for _, l := range r.shot.Lamps {
		if l.SizeMM == 0 && len(facts) > 0 {
			return append(facts, Fact{Key: "highlights.size", Text: say("how bright they are depends on how wide a lamp's " +
				"shining face is: say that with --lamp-size")})
		}
	}
	return facts
}

// mirroredLamp tells where the front mirrors a lamp.
func (r *Report) mirroredLamp(name string, i int, h shot.Highlight) Fact {
	lamp := r.shot.Lamps[h.Lamp-1]
	text := say("lamp %s is mirrored in the %s, %s%s", whole("", float64(h.Lamp), Bare), r.body, r.inDrop(i, h),
		brightness(i, h))
	if lamp.Aim.AtDrop {
		text = say("lamp %s, which points at the %s, is mirrored in it, %s%s", whole("", float64(h.Lamp), Bare), r.body,
			r.inDrop(i, h), brightness(i, h))
	}
	if h.BlowsOut {
		text = say("%s; a face %s wide that gives as much light would not", text, enough(highlight(i, "held_face_mm"),
			h.HeldFaceMM))
	}
	return Fact{Key: "highlights.mirrored", Name: name, Text: text, Asks: h.BlowsOut && !lamp.Aim.AtDrop}
}

// highlight is the path of a figure of a highlight.
func highlight(i int, name string) string { return fmt.Sprintf("shot.highlights.%d.%s", i, name) }

// inDrop says where in the drop a highlight lies, and in the frame.
func (r *Report) inDrop(i int, h shot.Highlight) Text {
	way := func(name, of string, of1 float64, less, more string) Text {
		f := share(highlight(i, name), math.Abs(of1))
		switch {
		case f.Number() == "0":
			return nil
		case of1 < 0:
			f.Path = "" // JSON has it below zero
			return say("%s%s %s", f, of, less)
		}
		return say("%s%s %s", f, of, more)
	}
	const radius = " of its radius"
	across, of := way("x_share", radius, h.XShare, "left", "right"), radius
	if across != nil {
		of = ""
	}
	down := way("y_share", of, h.YShare, "above", "below")
	place := say("in its middle")
	switch {
	case across != nil && down != nil:
		place = say("%s of its middle and %s it", across, down)
	case across != nil:
		place = say("%s of its middle", across)
	case down != nil:
		place = say("%s its middle", down)
	}
	return say("%s (frame pixel %s, %s)", place, whole(highlight(i, "frame_px.x"), h.Frame.XPx, Bare),
		whole(highlight(i, "frame_px.y"), h.Frame.YPx, Bare))
}

// brightness says how bright a highlight is; nothing where that is not known.
func brightness(i int, h shot.Highlight) Text {
	if h.OverWhite == 0 {
		return nil
	}
	times := significant(highlight(i, "over_white"), h.OverWhite, Bare, 2)
	if h.BlowsOut {
		return say(", %s times as bright as the print's white: %s", times, strong("it blows out"))
	}
	return say(", %s times as bright as the print's white", times)
}
