package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// light says where the lamps stand, how evenly they light the board, and what to watch for.
func (b *book) light() {
	f := b.found.light
	if f == nil {
		b.evenLight()
		return
	}
	b.intro("Where the lamps stand, and how their light falls off over the board. A stop is half the light.")
	b.together(func(b *book) {
		b.figure(lampPlanMM, b.lampPlan, "Seen from above, to scale. Every lamp points at the board\u2019s middle.")
		b.lampTable()
	})
	b.topic("On the board", func(b *book) {
		text := b.falloff(f)
		if !b.job.single() && f.Facing.Better == "" {
			text += " " + b.cutEdges(f.Facing)
		}
		b.para(text)
		corners := ""
		if b.job.Plan.Backdrop.Surround != "" {
			corners = " These are the corners of the board; the table gives those of the picture."
		}
		b.figure(b.lightMapMM(), func(box layout.Rect) { b.lightMap(box, f) },
			"The board as it hangs. The lines join places of equal light, in stops below the brightest place; so do the "+
				"figures at its corners. The open ring marks the brightest place of the picture, the dot its darkest."+corners)
	})
	b.together(func(b *book) { b.placesTable(f) })

	b.topic("Glare", func(b *book) { b.glare(f) })
	if v := f.InView; len(v) > 0 {
		b.topic("In the view", func(b *book) {
			for _, seen := range v {
				where := "stands in the frame itself. Move it further out."
				if seen.Path == shot.ThroughDrop {
					where = "stands where the " + b.job.body() + " shows it. Move it further out, or to the camera\u2019s " +
						"side of the " + b.job.body() + "."
				}
				b.bullet(fmt.Sprintf("Lamp %d %s", seen.Lamp, where))
			}
		})
	}
	if !b.job.single() && f.Facing.Better != "" {
		b.topic("Cut edges", func(b *book) { b.para(b.cutEdges(f.Facing)) })
	}
}

// evenLight is the section's text when no lamp was named (common practice, no source).
func (b *book) evenLight() {
	b.intro("This plan counts on a board that is lit evenly, for no lamp was named.")
	b.bullet("Two lamps alike, one on either side, equally far and aimed at the board\u2019s middle, light it far " +
		"more evenly than one.")
	b.bullet("The further off, the more even, and the less light: at twice the distance a quarter is left.")
	b.bullet("Make the job with " + strong("--lamp") + " for each lamp, and this section shows how the light falls " +
		"off and where the board mirrors a lamp. With " + strong("--level") + " the print makes up for the fall-off.")
}

// lampTable lists where each lamp stands, in words that can be measured on the set.
func (b *book) lampTable() {
	t := table{columns: []column{{"lamp", true, 8}, {"from the middle", false, 28}, {"", false, 26},
		{"before the board", true, 26}, {"to the middle", true, 24}}}
	way := func(mm float64, less, more string) string {
		switch {
		case mm < 0:
			return length(-mm) + " " + less
		case mm > 0:
			return length(mm) + " " + more
		}
		return "\u2013"
	}
	for i, l := range b.job.Plan.Lamps {
		straight := math.Hypot(math.Hypot(l.XMM, l.YMM), l.ZMM)
		t.rows = append(t.rows, []string{fmt.Sprint(i + 1), way(l.XMM, "left", "right"), way(l.YMM, "up", "down"),
			length(l.ZMM), length(straight)})
	}
	b.table(t)
}

// placesTable lists the light at the places that a meter can be held to.
func (b *book) placesTable(f *shot.LightFigures) {
	t := table{columns: []column{{"place", false, 26}, {"from left mm", true, 22}, {"from top mm", true, 22},
		{"stops down", true, 20}, {"light", true, 16}}}
	for _, p := range []struct {
		name string
		at   shot.LitPlace
	}{
		{"brightest", f.Brightest}, {"middle", f.Centre}, {"top left", f.Corners[0]}, {"top right", f.Corners[1]},
		{"bottom left", f.Corners[2]}, {"bottom right", f.Corners[3]}, {"darkest", f.Darkest},
	} {
		t.rows = append(t.rows, []string{p.name, tenth(p.at.Board.XMM), tenth(p.at.Board.YMM), stopsDown(p.at.Stops),
			fmt.Sprintf("%.0f%s%%", 100*p.at.Share, noBreak)})
	}
	b.table(t)
}

// stopsDown writes stops for drawings and tables.
func stopsDown(stops float64) string {
	if stops >= layout.NoLightStops {
		return "no light"
	}
	return fmt.Sprintf("%.2f", stops)
}

// stops writes stops for running text.
func stops(n float64) string {
	text := short(n, 2)
	if text == "1" {
		return "1" + noBreak + "stop"
	}
	return text + noBreak + "stops"
}

// falloff says how even the light is and what would make it so.
func (b *book) falloff(f *shot.LightFigures) string {
	p := b.job.Plan
	text := "Over the picture the light falls off by " + strong(stops(f.FalloffStops)) + "."
	if f.FalloffStops >= layout.NoLightStops {
		text = "A part of the picture gets " + strong("no light") + " from these lamps."
	}
	switch r := f.Retreat; {
	case p.Level().On(): // lamps moved now would spoil what the print makes up for
	case r != nil && r.Factor == 1:
		text += " Half a stop is hardly seen."
	case r != nil:
		text += fmt.Sprintf(" It would be under half a stop with every lamp %s times as far from the board\u2019s "+
			"middle, which costs %s of light.", short(r.Factor, 2), stops(r.LossStops))
	}
	if level := p.Level(); level.On() {
		text += " The sheets make up for the fall-off of the lamps that they were made for: they are darker by up to " +
			strong(stops(level.LossStops())) +
			" where the light is strong, and the board comes out as even as its darkest place. Set the lamps up exactly, " +
			"and open up by that much."
	}
	return text
}

// glare says where shiny paper would mirror a lamp into the picture.
func (b *book) glare(f *shot.LightFigures) {
	seen := false
	for _, g := range f.Glares {
		if !g.Seen {
			continue
		}
		seen = true
		where := "beside the " + b.job.body()
		if g.Path == shot.ThroughDrop {
			where = "in the " + b.job.body()
		}
		b.bullet(fmt.Sprintf("Shiny paper mirrors lamp %d %s, at %s from the board\u2019s left edge and %s from its "+
			"upper edge. It is gone when the lamp stands %s or more from the axis.",
			g.Lamp, where, whole(g.Board.XMM), whole(g.Board.YMM), whole(g.BeyondMM)))
	}
	if !seen {
		b.para("None of these lamps stands where the board would mirror it to the camera or into the " + b.job.body() + ".")
		return
	}
	b.para("Print on " + strong("matt paper") + ", on which a mirrored lamp is only a faint veil. A polarising sheet " +
		"on the lamp, and a polariser on the lens turned until the veil is darkest, take it away.")
}

// cutEdges says whether the cut edges face the lamps.
func (b *book) cutEdges(f shot.Facing) string {
	switch {
	case f.Better != "":
		return fmt.Sprintf("On %s of the seams\u2019 length the cut edge faces %s the lamp that is strongest there, and "+
			"throws a shadow. Made with --light-from %s it would be %s.",
			percent(f.TurnedMM/f.AllMM), strong("away from"), f.Better, percent(f.BetterTurnedMM/f.AllMM))
	case f.TurnedMM > 0:
		return fmt.Sprintf("On %s of the seams\u2019 length the cut edge faces away from the lamp that is strongest "+
			"there; cut for any other corner it would be no less.", percent(f.TurnedMM/f.AllMM))
	}
	return "Every cut edge faces the lamp that is strongest there, and throws no shadow."
}
