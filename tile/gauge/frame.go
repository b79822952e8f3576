package gauge

import (
	"fmt"
	"math"

	"dropsheet/tile/pdf"
)

// The frame's lines, in mm.
const (
	frameLineMM  = 0.1
	fifthLineMM  = 0.25 // every fifth, and the last, to count by
	frameStairMM = 5.0  // from a number to the next, along the side
	frameClearMM = 1.0  // between a line's end and a number
)

var frameStyle = pdf.Sans(5.5)

// frame draws lines at each whole millimetre from the paper's edges, all around but where the rule across
// ends. On each side the numbers step inwards in a stair, and each stands on its own line; the lines beside
// it make room.
func (p *page) frame() {
	w, h := p.paper.WidthMM, p.paper.HeightMM
	n := int(p.depth)
	p.side(n, w, func(k, from, to, widthMM float64) {
		p.level(from, to, k, widthMM)
		p.level(from, to, h-k, widthMM)
	}, func(k, at float64, text string) {
		p.putMiddle(frameStyle, at, k+frameStyle.CapMM()/2, text)
		p.putMiddle(frameStyle, at, h-k+frameStyle.CapMM()/2, text)
	}, 0, 0)
	p.side(n, h, func(k, from, to, widthMM float64) {
		p.upright(k, from, to, widthMM)
		p.upright(w-k, from, to, widthMM)
	}, func(k, at float64, text string) {
		p.putTurned(frameStyle, k+frameStyle.CapMM()/2, at, text)
		p.putTurned(frameStyle, w-k+frameStyle.CapMM()/2, at, text)
	}, p.depth+0.8, p.depth+bandMM-0.2)
}

// side lays out two opposite sides of the frame, of the given length, with lines 0 to n. No line runs from
// openFrom to openTo.
func (p *page) side(n int, lengthMM float64, line func(k, from, to, widthMM float64),
	number func(k, at float64, text string), openFrom, openTo float64) {
	from, to := math.Max(p.depth, openTo)+frameClearMM, lengthMM-p.depth-frameClearMM
	stair := math.Min(frameStairMM, (to-from)/float64(n+1))
	middle := math.Max(lengthMM/2, from+stair*float64(n+1)/2)
	at := func(k int) float64 { return middle + (float64(k)-float64(n+1)/2)*stair }
	every := 1 // on the smallest papers the stair has no room for all numbers
	for _, fewer := range []int{2, 5} {
		if float64(every)*stair < frameStyle.Width(fmt.Sprint(n))+0.3 {
			every = fewer
		}
	}
	for k := range n + 1 {
		depth, widthMM := float64(k), frameLineMM
		if k > 0 && (k%5 == 0 || k == n) {
			widthMM = fifthLineMM
		}
		if k == 0 {
			depth = frameLineMM / 2 // its outer side is the paper's edge
		}
		half := frameStyle.Width(fmt.Sprint(k))/2 + frameClearMM
		gapFrom, gapTo := at(k)-half, at(k)+half
		if k > 1 {
			gapFrom = at(k-1) - half
		}
		if k < n {
			gapTo = at(k+1) + half
		}
		corner := depth - widthMM/2
		if openTo > openFrom {
			line(depth, corner, openFrom, widthMM)
			corner = openTo
		}
		if gapFrom > corner {
			line(depth, corner, gapFrom, widthMM)
		}
		line(depth, gapTo, lengthMM-depth+widthMM/2, widthMM)
		if k > 0 && k%every == 0 {
			number(depth, at(k), fmt.Sprint(k))
		}
	}
}
