package guide

import (
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/sheet"
)

// drawSheet draws the part of a sheet's page that view names, page mm, enlarged or reduced to k guide mm for
// a page mm, its top-left corner at (x, y). The marks are those of the real sheet. The laps are paler than
// printed, and the cut lines, which are not printed, are dashed.
func (b *book) drawSheet(x, y, k float64, view layout.Rect, s layout.Sheet) {
	p, on := b.job.Plan, b.job.Plan.Backdrop.OnPage(s)
	out := layout.Rect{XMM: x, YMM: y, WidthMM: k * view.WidthMM, HeightMM: k * view.HeightMM}
	b.Fill(out, white)
	b.Inset(out, k, layout.Point{XMM: view.XMM, YMM: view.YMM}, func() {
		at := overlap(on.Printed, view)
		b.placeBoard(at, k, on.ToBoard(at), s.Cell)
		sheet.Marks(b.Document, p, s, sheet.Label{Job: b.clean(b.job.Name), Code: b.clean(b.job.CheckCode),
			Of: len(p.Sheets)})
		b.cutLines(on, k)
	})
	b.Frame(out, plain)
}

// cutLines dashes a sheet's cut lines over the drawing of its page: each from cut to cut, or past the end of a lap.
func (b *book) cutLines(on layout.SheetPage, k float64) {
	const pastLapMM = 4.0
	cell, left, top, right, bottom := on.Cell, on.CutLeft, on.CutTop, on.CutRight, on.CutBottom
	past := func(cut bool) float64 {
		if cut {
			return 0
		}
		return b.job.Plan.Backdrop.LapMM + pastLapMM
	}
	from := layout.Point{XMM: cell.XMM - past(left), YMM: cell.YMM - past(top)}
	to := layout.Point{XMM: cell.RightMM() + past(right), YMM: cell.BottomMM() + past(bottom)}
	for _, l := range []struct {
		cut            bool
		x1, y1, x2, y2 float64
	}{
		{left, cell.XMM, from.YMM, cell.XMM, to.YMM},
		{right, cell.RightMM(), from.YMM, cell.RightMM(), to.YMM},
		{top, from.XMM, cell.YMM, to.XMM, cell.YMM},
		{bottom, from.XMM, cell.BottomMM(), to.XMM, cell.BottomMM()},
	} {
		if l.cut {
			b.Line(l.x1, l.y1, l.x2, l.y2, pen(white, 0.8/k))
			b.Line(l.x1, l.y1, l.x2, l.y2, pen(accent, 0.45/k, 1.8/k, 1.2/k))
		}
	}
}

// overlap is what two rectangles share; they must meet.
func overlap(r, q layout.Rect) layout.Rect {
	x, y := math.Max(r.XMM, q.XMM), math.Max(r.YMM, q.YMM)
	return layout.Rect{XMM: x, YMM: y, WidthMM: math.Min(r.RightMM(), q.RightMM()) - x,
		HeightMM: math.Min(r.BottomMM(), q.BottomMM()) - y}
}

// details enlarges the corner of a sheet that faces the lamp and the one across, where the laps are.
func (b *book) details(s layout.Sheet) {
	const gapMM, enlarged, highMM = 8.0, 2.0, 48.0
	k := enlarged / b.geo.scale // on paper, whatever the guide's own scale is
	p := b.job.Plan
	light := p.Backdrop.LightFrom
	cell := p.Backdrop.OnPage(s).Cell
	w := min((b.geo.fullMM()-gapMM)/2, 90)
	view := func(right, bottom bool, share float64) layout.Rect {
		v := layout.Rect{WidthMM: w / k, HeightMM: highMM / k}
		v.XMM, v.YMM = cell.XMM-(1-share)*v.WidthMM, cell.YMM-(1-share)*v.HeightMM
		if right {
			v.XMM = cell.RightMM() - share*v.WidthMM
		}
		if bottom {
			v.YMM = cell.BottomMM() - share*v.HeightMM
		}
		return v
	}
	left, top, right, bottom := b.job.lands(s)
	laps := left || top || right || bottom
	toward := "The " + report.Corner(light) + " corner, between cut sides, twice life size. Cut along the dashed " +
		"lines, from mark to mark."
	away := "The corner across, twice life size. The cell ends in line with the seam ticks. The landing ticks stand " +
		length(sheet.LandingMM) + " past it."
	high := highMM + b.blockMM(captionStyle, w, away) + 2
	b.figure(high, func(box layout.Rect) {
		b.drawSheet(box.XMM, box.YMM, k, view(!light.Left(), !light.Top(), 0.62), s)
		b.block(captionStyle, box.XMM, box.YMM+highMM+1.5, w, toward)
		if laps {
			x := box.XMM + w + gapMM
			b.drawSheet(x, box.YMM, k, view(light.Left(), light.Top(), 0.5), s)
			b.block(captionStyle, x, box.YMM+highMM+1.5, w, away)
		}
	}, "")
}
