package guide

import (
	"fmt"
	"slices"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/sheet"
)

// lands tells on which sides of a sheet a neighbour is pasted over its lap.
func (j Job) lands(s layout.Sheet) (left, top, right, bottom bool) {
	left, top, right, bottom = j.Plan.Backdrop.Cut(s)
	bareLeft, bareTop, bareRight, bareBottom := sheet.Bare(j.Plan, s)
	return !left && !bareLeft, !top && !bareTop, !right && !bareRight, !bottom && !bareBottom
}

// sample is the sheet that the figures show: the one with the most neighbours over and under it.
func (j Job) sample() layout.Sheet {
	board, taken := j.Plan.Backdrop, j.takenCells()
	best, most := j.Plan.Sheets[0], -1
	for _, s := range j.Plan.Sheets {
		cutLeft, cutTop, cutRight, cutBottom := board.Cut(s)
		left, right := taken[cell{s.Row, s.Column - 1}], taken[cell{s.Row, s.Column + 1}]
		top, bottom := taken[cell{s.Row - 1, s.Column}], taken[cell{s.Row + 1, s.Column}]
		score := 0
		for _, pastedOver := range []bool{left && !cutLeft, top && !cutTop, right && !cutRight, bottom && !cutBottom} {
			if pastedOver {
				score += 3
			}
		}
		if left && right {
			score++
		}
		if top && bottom {
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
	s := b.job.sample()
	if b.job.single() {
		b.intro("Cut the sheet out, then paste it.")
	} else {
		b.intro("The same steps for every sheet, one sheet after the other. The figures show " + s.Name + ".")
	}
	b.anatomy(s)
	b.details(s)
	b.topic("Cut", (*book).cutSteps)
	b.topic("Paste", (*book).pasteSteps)
	if !b.job.single() {
		b.topic("What to expect", func(b *book) { b.para(b.told("build.expect", "build.hands")) })
	}
}

// steps sets numbered steps from a number on, and returns the number that comes next.
func (b *book) steps(number int, texts ...string) (next int) {
	for i, text := range texts {
		b.step(number+i, text)
	}
	return number + len(texts)
}

// cutSteps says how to cut.
func (b *book) cutSteps() { b.steps(1, b.cutting(b.clean(b.job.CheckCode))...) }

func (b *book) cutting(code string) []string {
	j := b.job
	light := j.Plan.Backdrop.LightFrom
	const ruler = "Lay the steel rule through the two cut marks of a side, on the picture, so that a slip of the " +
		"knife goes into the waste, and cut in several light strokes. "
	const needed = ", not at the paper\u2019s edge: the marks for the other cuts stand in the strip and are needed " +
		"until the last one."
	corners := "Start and stop each cut " + strong("where the cut lines cross")
	read := "Read the label: the sheet\u2019s name, its place in the order, the arrow for board-up. "
	switch all, any := b.coded(); {
	case all:
		read += "Its check code must be " + strong(code) + ". "
	case any:
		read += "Its check code, where there is room for it, must be " + strong(code) + ". "
	}
	read += "Write the name and the arrow on the back in pencil: the label is cut off."
	if j.single() {
		return []string{read, "Cut all four sides. " + ruler + corners + needed}
	}
	vertical, horizontal := report.CornerSides(light)
	steps := []string{
		read,
		fmt.Sprintf("Cut the %s and the %s side, and every side on the board\u2019s outer edge: "+
			"these have the strip. ", horizontal, vertical) + ruler + corners + ", or past the end of a lap" +
			needed,
		"The other sides carry a lap. " + strong("Do not cut the lap off.") +
			" Cut away only the white paper beyond it. A rough cut will do here: the neighbour covers it.",
	}
	if j.bareLaps() {
		steps = append(steps, "A lap without landing ticks lies toward a cell that has no sheet, and nothing comes over "+
			"it. Cut that one off last, roughly, a little beyond the picture: the marks at its end go with it.")
	}
	return steps
}

// bareLaps tells whether any sheet has a lap that nothing is pasted over.
func (j Job) bareLaps() bool {
	if j.bareCells() == 0 {
		return false
	}
	taken := j.takenCells()
	return slices.ContainsFunc(j.Plan.Sheets, func(s layout.Sheet) bool {
		left, top, right, bottom := j.Plan.Backdrop.Cut(s)
		return !left && !taken[cell{s.Row, s.Column - 1}] || !right && !taken[cell{s.Row, s.Column + 1}] ||
			!top && !taken[cell{s.Row - 1, s.Column}] || !bottom && !taken[cell{s.Row + 1, s.Column}]
	})
}

// pasteSteps says how to paste. They go on from the steps of cutting.
func (b *book) pasteSteps() { b.steps(len(b.cutting(""))+1, b.pasting()...) }

func (b *book) pasting() []string {
	j := b.job
	light := j.Plan.Backdrop.LightFrom
	const glue = "Spread the glue on the back, right to the edges, as its maker says. "
	setDown := fmt.Sprintf("Set down the %s corner first, then the edges that start there. Press the sheet down from "+
		"that corner outward, and drive the air out before you.", b.cutCorner())
	const wipe = "Wipe off glue at once with a barely damp cloth, and press the cut edges down again after a minute."
	if j.single() {
		return []string{"Try it dry. Its edges go on the pencil outline.", glue + "Paste makes paper grow a little.",
			setDown, wipe, "Leave it to dry flat."}
	}
	s := j.sample()
	at := lampCorner(s.Cell, light)
	return []string{
		fmt.Sprintf("Try it dry. Its %s corner goes on the pencil lines of its cell: %s at %s from the left edge and %s "+
			"from the upper edge.", b.cutCorner(), s.Name, length(at.XMM), length(at.YMM)),
		"The cut edges go along the pencil lines. " + strong("The pencil grid decides.") + " Where laps hide a line, " +
			"lay the steel rule, or stretch a thread, between what is seen of it in the border and on the bare board, and " +
			"lay the sheet against that. The seam ticks on its laps meet the lines that come out from under them.",
		"Where a neighbour is down already, " + strong("its landing ticks check") + ": before the sheet covers them, see " +
			"that its cut edge passes them at " + length(sheet.LandingMM) + ", all along. " +
			b.told("build.measure", "build.split"),
		glue + "Paste makes paper grow a little: give every sheet the same time to soak.",
		setDown,
		wipe,
		"Wait until it holds before the next sheet. Touch up any white edge of paper with the grey pen, little by little.",
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
	name := b.job.sample().Name
	if b.job.single() {
		b.intro("Splashed, torn or cut wrong: print it again.")
	} else {
		b.intro("Splashed, torn or cut wrong: print that one sheet again.")
	}
	b.together(func(b *book) {
		b.para("Name the job\u2019s folder, in which job.json lies, and the sheet. From a checkout of dropsheet\u2019s " +
			"source it is the second line.")
		b.command("dropsheet reprint <folder> " + name)
		b.command("go run ./cmd/dropsheet reprint <folder> " + name)
	})
	b.para("Keep the picture\u2019s file as it was and where it was, or add " + strong("--artwork") +
		" and its new place.")
	again := "The sheet comes out exactly as before. "
	if all, _ := b.coded(); all {
		again += "Its label must show the check code " + strong(b.clean(b.job.CheckCode)) + " again. "
	}
	b.para(again + "Use paper from the same packet, and the same printer settings.")
	if !b.job.single() {
		b.para("As long as nothing is pasted over its laps, lift the old sheet off and paste the new one in its place. " +
			"Otherwise cut the new one on all four sides, and paste it over the old one, edge on edge. Where it has laps, " +
			"its seam ticks show where the cell ends; at an end that has none, measure the cell\u2019s size.")
	}
}
