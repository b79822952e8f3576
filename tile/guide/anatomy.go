package guide

import (
	"cmp"
	"fmt"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/sheet"
)

// anatomy draws a sheet of this job with its parts called out.
func (b *book) anatomy(s layout.Sheet) {
	const (
		outMM   = 11.0 // beside the page, for the numbers
		belowMM = 4.0  // from the page to the words below it
	)
	page := b.job.Plan.Backdrop.Page()
	calls := b.callouts(s)
	full := b.geo.fullMM()
	most := b.geo.bottom - b.geo.top
	// A sheet that stands leaves room for the words beside it, on a page that is large enough; else they go below.
	drawn, words := 0.58*full-2*outMM, min(0.42*full-4, 90)
	list := b.listMM(calls, words)
	stands := page.HeightMM >= page.WidthMM && list < 0.9*most
	if !stands {
		drawn, words = min(full, 174)-2*outMM, min(full, measureMM)
		list = b.listMM(calls, words)
	}
	share := 0.66 // of the page's height, at most
	if b.spacing < 1 {
		share = 0.44
	}
	k := min(drawn/page.WidthMM, share*most/page.HeightMM)
	if !stands {
		k = min(k, (most-list-belowMM-2*figureGapMM)/page.HeightMM)
	}
	w, h := k*page.WidthMM, k*page.HeightMM
	high := h
	if stands {
		high = max(high, list)
	} else {
		high += list + belowMM
	}
	b.figure(high, func(box layout.Rect) {
		at := layout.Rect{XMM: box.XMM + outMM, YMM: box.YMM, WidthMM: w, HeightMM: h}
		b.drawSheet(at.XMM, at.YMM, k, layout.Rect{WidthMM: page.WidthMM, HeightMM: page.HeightMM}, s)
		b.point(at, k, calls)
		if stands {
			b.list(calls, at.RightMM()+outMM+4, box.YMM, words)
		} else {
			b.list(calls, box.XMM, at.BottomMM()+belowMM, words)
		}
	}, "")
}

// callout points at a part of a sheet and says what it is.
type callout struct {
	at   layout.Point // page mm
	text string
}

// callouts lists the parts of a sheet.
func (b *book) callouts(s layout.Sheet) []callout {
	p := b.job.Plan
	left, top, right, bottom := b.job.lands(s)
	c := p.Backdrop.OnPage(s).Cell
	// Places along the cell, counted from the lamp's side.
	lamp := lampCorner(c, p.Backdrop.LightFrom)
	outX, outY := 1.0, 1.0
	if p.Backdrop.LightFrom.Left() {
		outX = -1
	}
	if p.Backdrop.LightFrom.Top() {
		outY = -1
	}
	x := func(share float64) float64 { return lamp.XMM - outX*share*c.WidthMM }
	y := func(share float64) float64 { return lamp.YMM - outY*share*c.HeightMM }

	room := ""
	if all, _ := b.coded(); !all {
		room = ", as far as there is room"
	}
	calls := []callout{
		{layout.Point{XMM: x(0.62), YMM: y(0.45)}, strong("Cell") + ": what stays in sight, " +
			b.size(s.Cell.WidthMM, s.Cell.HeightMM) + ". No mark is printed in it."},
		{layout.Point{XMM: x(0), YMM: y(0.72)}, strong("Cut line") + ", dashed here. It is not printed."},
		{layout.Point{XMM: lamp.XMM, YMM: lamp.YMM + outY*(layout.BleedMM+layout.StripMM)/2}, strong("Cut mark") +
			", with an arrowhead that points along the cut: one at either end of every cut."},
		{layout.Point{XMM: c.XMM + 0.86*c.WidthMM, YMM: lamp.YMM + outY*layout.BleedMM/2}, strong("Strip") +
			fmt.Sprintf(" of %s beyond the cut, to be cut off. The picture goes on in it for %s, so that a cut that is a "+
				"little off shows picture and not paper.", length(layout.StripMM), length(layout.BleedMM))},
		{layout.Point{XMM: c.XMM + 12, YMM: lamp.YMM + outY*(layout.StripMM+0.6)}, strong("Label") +
			": name, place in the order, board-up, check code, job" + room + "."},
	}
	if sheet.CheckRuleMM(p, s) > 0 {
		calls = append(calls, callout{layout.Point{XMM: lamp.XMM + outX*(layout.StripMM-0.4),
			YMM: c.YMM + min(0.3*c.HeightMM, 55)}, strong("Check rule") + ", its length beside it."})
	}
	lap := p.Backdrop.LapMM
	switch {
	case left || right:
		calls = append(calls,
			callout{layout.Point{XMM: x(1) - outX*0.6*lap, YMM: y(0.2)}, lapWords(lap)},
			callout{layout.Point{XMM: x(1) - outX*sheet.LandingMM, YMM: y(1) + outY*4.5}, landingWords()})
	case top || bottom:
		calls = append(calls,
			callout{layout.Point{XMM: x(0.8), YMM: y(1) - outY*0.6*lap}, lapWords(lap)},
			callout{layout.Point{XMM: x(1) + outX*4.5, YMM: y(1) - outY*sheet.LandingMM}, landingWords()})
	}
	if across, _ := sheet.MarkedEnds(p, s); across && (left || right) {
		at := layout.Point{XMM: x(1), YMM: lamp.YMM + outY*(layout.StripMM-0.4)}
		calls = append(calls, callout{at, strong("Seam tick") +
			", without an arrowhead: the cell ends there. Those on the laps meet the lines of the pencil grid."})
	}
	return calls
}

func landingWords() string {
	return strong("Landing ticks") + ", " + length(sheet.LandingMM) + " past the cell, to check where the " +
		"neighbour\u2019s cut edge comes. The neighbour hides them: nothing is printed nearer to the cell."
}

func lapWords(lapMM float64) string {
	return strong("Lap") + " of " + length(lapMM) + ", paler here than it is printed. It stays on: the neighbour is " +
		"pasted over it. It carries picture, so that a slip shows picture."
}

// list sets the callouts' words with their numbers; listMM is how high that is.
func (b *book) list(calls []callout, x, y, widthMM float64) {
	for i, c := range calls {
		b.disc(x+2.3, y+labelStyle.LeadMM/2, 2.3, fmt.Sprint(i+1))
		y = b.block(labelStyle, x+listIndentMM, y, widthMM-listIndentMM, c.text) + listGapMM
	}
}

const listIndentMM, listGapMM = 7.0, 2.0

func (b *book) listMM(calls []callout, widthMM float64) float64 {
	sum := 0.0
	for _, c := range calls {
		sum += b.blockMM(labelStyle, widthMM-listIndentMM, c.text) + listGapMM
	}
	return sum
}

// point draws the callouts' numbers on either side of a sheet drawn at k guide mm for a mm, each with a line
// to its part.
func (b *book) point(at layout.Rect, k float64, calls []callout) {
	const apartMM, offMM, radius = 7.0, 6.0, 2.3
	for _, onLeft := range []bool{true, false} {
		var side []int
		for i, c := range calls {
			if (k*c.at.XMM < at.WidthMM/2) == onLeft {
				side = append(side, i)
			}
		}
		slices.SortStableFunc(side, func(i, j int) int { return cmp.Compare(calls[i].at.YMM, calls[j].at.YMM) })
		x, edge := at.XMM-offMM, at.XMM-offMM+radius
		if !onLeft {
			x, edge = at.RightMM()+offMM, at.RightMM()+offMM-radius
		}
		free := at.YMM + radius
		for n, i := range side {
			toX, toY := at.XMM+k*calls[i].at.XMM, at.YMM+k*calls[i].at.YMM
			last := at.BottomMM() - radius - apartMM*float64(len(side)-1-n)
			y := min(max(toY, free), last)
			free = y + apartMM
			b.Line(edge, y, toX, toY, pen(white, 0.9))
			b.Line(edge, y, toX, toY, mark)
			b.ring(toX, toY, 0.8, accent, pen(white, 0.3))
			b.disc(x, y, radius, fmt.Sprint(i+1))
		}
	}
}
