package seammap

import (
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/ink"
)

// drawView draws lines and words on a view: fills lowest, then the seams, then the picture's edge, then the words.
// It tells whether every sheet found room for its name.
func (m seamMap) drawView(v view) (named bool) {
	canvas := m.canvas.Within(v.frame())
	for _, mark := range m.marks {
		canvas.Draw(strokes(mark.line, v.fill(mark.fill))...)
	}
	seams, paths := m.seamStrokes(v)
	canvas.Draw(seams...)
	words := &labels{canvas: canvas, view: v, lines: paths}
	if m.surrounded() {
		edge := outline(v, m.plan.Backdrop.Board())
		canvas.Draw(strokes(boardLine, edge)...)
		words.lines = append(words.lines, edge...)
	}
	edge := m.pictureEdge(v)
	canvas.Draw(strokes(edgeLine, edge)...)
	words.lines = append(words.lines, edge...)

	named = m.writeNames(v, words)
	m.writeFills(v, words)
	return named
}

// roomPx is how far apart the middles of the cells on either side of a seam show, going by the scale at the
// middle of what shows of the seam; nothing where that can't be told.
func roomPx(seam ink.Path, v view, axis string, before, after layout.Rect) float64 {
	if len(seam) == 0 {
		return 0
	}
	const halfPx = 0.5
	// stepMM is how far the coordinate that the seam holds still goes on when the place moves by a pixel.
	here := seam.At(0.5)
	stepMM := func(dx, dy float64) float64 {
		p, pOK := v.land(ink.Point{X: here.X - dx, Y: here.Y - dy})
		q, qOK := v.land(ink.Point{X: here.X + dx, Y: here.Y + dy})
		switch {
		case !pOK || !qOK:
			return math.Inf(1)
		case axis == "x":
			return q.XMM - p.XMM
		default:
			return q.YMM - p.YMM
		}
	}
	pitchMM := (before.WidthMM + after.WidthMM) / 2
	if axis == "y" {
		pitchMM = (before.HeightMM + after.HeightMM) / 2
	}
	return pitchMM / math.Hypot(stepMM(halfPx, 0), stepMM(0, halfPx))
}

// pictureEdge is the edge of what is printed of the picture.
func (m seamMap) pictureEdge(v view) []ink.Path {
	if m.plan.Picture.Plain() {
		return outline(v, m.plan.PictureOnBoard())
	}
	return v.around(m.plan.PictureOutline())
}

// surrounded tells whether the board goes on, printed, beyond the picture.
func (m seamMap) surrounded() bool {
	if !m.plan.Picture.Plain() {
		return m.plan.Backdrop.Surround != ""
	}
	return m.plan.PictureOnBoard() != m.plan.Backdrop.Board()
}

// unfilled tells whether nothing is printed in what the picture leaves of its board.
func (m seamMap) unfilled() bool { return !m.plan.Picture.Plain() && m.plan.Backdrop.Surround == "" }

// paperEdge is where the sheets end on a board that the picture does not fill.
func (m seamMap) paperEdge() (paths []ink.Path) {
	if !m.unfilled() {
		return nil
	}
	taken := map[[2]int]bool{}
	for _, s := range m.plan.Sheets {
		taken[[2]int{s.Row, s.Column}] = true
	}
	for _, s := range m.plan.Sheets {
		c := s.Cell
		for _, side := range []struct {
			row, column int // of the cell beyond
			path        ink.Path
		}{
			{s.Row - 1, s.Column, m.board.line("y", c.YMM, c.XMM, c.RightMM())},
			{s.Row + 1, s.Column, m.board.line("y", c.BottomMM(), c.XMM, c.RightMM())},
			{s.Row, s.Column - 1, m.board.line("x", c.XMM, c.YMM, c.BottomMM())},
			{s.Row, s.Column + 1, m.board.line("x", c.RightMM(), c.YMM, c.BottomMM())},
		} {
			if !taken[[2]int{side.row, side.column}] {
				paths = append(paths, side.path)
			}
		}
	}
	return paths
}

// outline is the edge of a rectangle of the board as a view shows it: one closed path, or its sides where it
// does not show whole.
func outline(v view, r layout.Rect) []ink.Path {
	top := v.line("y", r.YMM, r.XMM, r.RightMM())
	right := v.line("x", r.RightMM(), r.YMM, r.BottomMM())
	bottom := v.line("y", r.BottomMM(), r.XMM, r.RightMM())
	left := v.line("x", r.XMM, r.YMM, r.BottomMM())
	for _, corner := range []layout.Point{{XMM: r.XMM, YMM: r.YMM}, {XMM: r.RightMM(), YMM: r.YMM},
		{XMM: r.XMM, YMM: r.BottomMM()}, {XMM: r.RightMM(), YMM: r.BottomMM()}} {
		if _, ok := v.spot(corner); !ok {
			return []ink.Path{top, right, bottom, left}
		}
	}
	around := slices.Concat(top, right, bottom.Reversed(), left.Reversed())
	return []ink.Path{append(around, around[0])}
}

// writeNames writes each sheet's name in the middle of its cell, where the whole word fits there, if need be
// in small type. It tells whether all did.
func (m seamMap) writeNames(v view, words *labels) (all bool) {
	all = true
	for _, s := range m.plan.Sheets {
		at, ok := v.spot(middleOf(s.Cell))
		face := m.faces.name
		if ok && !fits(v, face.Box(at, s.Name), s.Cell) {
			face = m.faces.smallName
			ok = fits(v, face.Box(at, s.Name), s.Cell)
		}
		if ok {
			words.put(face, at, black, s.Name)
		}
		all = all && ok
	}
	return all
}

// writeFills writes each fill on its ring, where it hides least.
func (m seamMap) writeFills(v view, words *labels) {
	for _, mark := range m.marks {
		text := fillText(mark.fill)
		if at, ok := words.best(m.faces.fill, text, v.fill(mark.fill)); ok {
			words.put(m.faces.fill, at, blue, text)
		}
	}
}

// middleOf is the middle of a rectangle.
func middleOf(r layout.Rect) layout.Point {
	return layout.Point{XMM: r.XMM + r.WidthMM/2, YMM: r.YMM + r.HeightMM/2}
}

// fillText is how a fill is written.
func fillText(fill float64) string { return set(report.Fill(fill).Text()) }
