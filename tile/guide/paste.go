package guide

import (
	"fmt"

	"dropsheet/layout"
)

// sample is the sheet that the figures show: the one with the most neighbours over and under it.
func (j Job) sample() layout.Sheet {
	board := j.Plan.Backdrop
	best, most := j.Plan.Sheets[0], -1
	for _, s := range j.Plan.Sheets {
		left, top, right, bottom := board.Cut(s)
		score := 0
		for _, cut := range []bool{left, top, right, bottom} {
			if !cut {
				score += 3 // a lap
			}
		}
		if s.Column > 1 && s.Column < board.Columns {
			score++
		}
		if s.Row > 1 && s.Row < board.Rows {
			score++
		}
		if score > most {
			best, most = s, score
		}
	}
	return best
}

// paste says how to cut and paste one sheet.
func (b *book) paste() {
	p := b.job.Plan
	s := b.job.sample()
	light := p.Backdrop.LightFrom
	many := len(p.Sheets) > 1
	b.intro("The same steps for every sheet, one sheet after the other. The figures show " + s.Name + ".")
	b.anatomy(s)

	b.side("Cut")
	b.step(1, "Read the label: the sheet\u2019s name, its place in the order, the arrow for board-up. Its check code must be "+strong(b.clean(b.job.CheckCode))+". Write the name and the arrow on the back in pencil: the label is cut off.")
	corners := "Start and stop each cut " + strong("where the cut lines cross") + ", or past the end of a lap, not at the paper\u2019s edge: the marks for the other cuts stand in the strip and are needed until the last one."
	const ruler = "Lay the steel rule through the two marks of a side, on the picture, so that a slip of the knife goes into the waste, and cut in several light strokes. "
	if many {
		b.step(2, fmt.Sprintf("Cut the %s and the %s side, which face the lamp, and every side on the board\u2019s outer edge: these have the strip. ", horizontal(light), vertical(light))+ruler+corners)
		b.step(3, "The other sides carry a lap. "+strong("Do not cut the lap off.")+" Cut away only the white paper beyond it. A rough cut will do here: the neighbour covers it.")
	} else {
		b.step(2, "Cut all four sides. "+ruler+corners)
	}
	next := 3
	if many {
		next = 4
	}
	b.side("Paste")
	at := lampCorner(s.Cell, light)
	b.step(next, fmt.Sprintf("Try it dry. The corner toward the lamp goes on the pencil lines of its cell: %s at %s from the left edge and %s from the upper edge.",
		s.Name, tenth(at.XMM)+noBreak+"mm", tenth(at.YMM)+noBreak+"mm"))
	if many {
		b.step(next+1, "Where a neighbour is down already, the cut edge goes "+strong("on its landing line")+", so that the line just disappears, and the corners go on its registration marks. Where marks and pencil lines disagree a little, go halfway.")
		next++
	}
	b.step(next+1, "Spread the glue on the back, right to the edges, as its maker says. Paste makes paper grow a little: give every sheet the same time to soak.")
	b.step(next+2, fmt.Sprintf("Set down the corner toward the lamp first, the %s one, then the edges that start there. Press the sheet down away from the lamp, from that corner outward, and drive the air out before you.", corner(light)))
	b.step(next+3, "Wipe off glue at once with a barely damp cloth, and press the cut edges down again after a minute.")
	if many {
		b.step(next+4, "Wait until it holds before the next sheet. Touch up any white edge of paper with the grey pen, little by little.")
	} else {
		b.step(next+4, "Leave it to dry flat.")
	}
}

// lampCorner is the corner of a rectangle that faces the lamp.
func lampCorner(r layout.Rect, light layout.Corner) layout.Point {
	at := layout.Point{XMM: r.RightMM(), YMM: r.BottomMM()}
	if light.Left() {
		at.XMM = r.XMM
	}
	if light.Top() {
		at.YMM = r.YMM
	}
	return at
}

// spoiled says how to print a sheet again.
func (b *book) spoiled() {
	p := b.job.Plan
	s := b.job.sample()
	b.intro("Splashed, torn or cut wrong: print that one sheet again.")
	b.para("In the folder with job.json, name the sheet:")
	b.command("dropsheet reprint job.json " + s.Name)
	b.para("It comes out exactly as before, from the same job and the same picture. Its label must show the check code " + strong(b.clean(b.job.CheckCode)) + " again. Use paper from the same packet, and the same printer settings.")
	if len(p.Sheets) > 1 {
		b.para("As long as nothing is pasted over its laps, lift the old sheet off and paste the new one in its place. Otherwise cut the new one on all four sides, just inside the landing lines where it has laps, and paste it over the old one, edge on edge.")
	}
}
