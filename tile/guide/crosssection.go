package guide

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

const sectionMM = 34.0

// crossSections draws a seam cut through, pasted as it should be and the other way round. The lamp stands on
// the side that it stands on.
func (b *book) crossSections(box layout.Rect) {
	const gapMM = 8.0
	w := min((box.WidthMM-gapMM)/2, 90)
	b.crossSection(layout.Rect{XMM: box.XMM, YMM: box.YMM, WidthMM: w, HeightMM: box.HeightMM}, true)
	b.crossSection(layout.Rect{XMM: box.XMM + w + gapMM, YMM: box.YMM, WidthMM: w, HeightMM: box.HeightMM}, false)
}

// crossSection draws one seam: with the cut edge toward the lamp, or away from it.
func (b *book) crossSection(box layout.Rect, toward bool) {
	const paperMM, slopeMM, lapMM, boardMM = 2.2, 5.0, 14.0, 4.0
	left := b.job.Plan.Backdrop.LightFrom.Left()
	// x counts from the lamp's side of the box.
	x := func(mm float64) float64 {
		if left {
			return box.XMM + mm
		}
		return box.RightMM() - mm
	}
	point := func(mm, y float64) layout.Point { return layout.Point{XMM: x(mm), YMM: y} }
	w := box.WidthMM
	seam := 0.5 * w
	ground := box.BottomMM() - boardMM - 1
	board := layout.Rect{XMM: box.XMM, YMM: ground, WidthMM: w, HeightMM: boardMM}
	b.Fill(board, pale)
	b.Put(tinyStyle, board.XMM+1.5, tinyStyle.Base(board.YMM+0.2), "board")

	// along mirrors the pasting for the wrong way round: the sheet on top lies on the lamp's side then.
	along := func(mm float64) float64 {
		if toward {
			return mm
		}
		return 2*seam - mm
	}
	low, high := ground-paperMM, ground-2*paperMM
	outline := pen(black, 0.3)
	far, near := along(w), along(0)
	if !toward {
		far, near = 0, w
	}
	b.Polygon(tint, outline, point(near, ground), point(along(seam+lapMM), ground), point(along(seam+lapMM), low),
		point(near, low))
	b.Polygon(white, outline,
		point(along(seam), low), point(along(seam+lapMM), low), point(along(seam+lapMM+slopeMM), ground), point(far, ground),
		point(far, low), point(along(seam+lapMM+slopeMM+1), low), point(along(seam+lapMM+1), high), point(along(seam), high))
	if !toward {
		b.Polygon(grey, pdf.Pen{}, point(seam, high), point(seam, low), point(seam+9, low))
	}
	edgeInk := pen(accent, 1)
	b.Line(x(seam), high, x(seam), low, edgeInk)

	lampX, lampY := 9.0, box.YMM+12.0
	ux, uy := seam-lampX, high-lampY
	k := 1 / math.Hypot(ux, uy)
	dir := 1.0
	if !left {
		dir = -1
	}
	b.lamp(x(lampX), lampY, dir*ux*k, uy*k)
	reachX, reachY := seam, low
	if !toward {
		reachX, reachY = seam+9, low
	}
	b.Line(x(lampX+8*ux*k), lampY+8*uy*k, x(reachX), reachY, pen(accent, 0.25, 1, 0.8))

	// Words: the sheets above their middles, the verdict on top.
	under, over := 0.25*w, 0.78*w
	first, second := "pasted first", "pasted over it"
	if !toward {
		under, over = 0.78*w, 0.25*w
	}
	b.PutMiddle(tinyStyle, x(under), high-1.6, first)
	b.PutMiddle(tinyStyle, x(over), high-1.6, second)
	verdict := "Good: the cut edge faces the lamp."
	if !toward {
		verdict = "Bad: the edge throws a shadow."
	}
	b.PutFit(boldLabel, box.XMM, box.YMM+4, w, verdict)
	b.Line(box.XMM, box.YMM+6.5, box.RightMM(), box.YMM+6.5, thin)
}
