package gauge

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

// heading sets a line over a patch.
func (p *page) heading(text string) {
	s := p.types.small.At(p.types.small.Pt + 1).Bold()
	for _, line := range s.Wrap(p.middle.WidthMM, text) {
		p.y += s.LeadMM
		p.put(s, p.middle.XMM, p.y, line.Text())
	}
	p.y += 1.6
}

// wedge draws steps of grey from bare paper to black.
func (p *page) wedge() {
	p.heading("Grey: 255 bare paper, 0 black. Alike here is alike on the sheets too.")
	n := p.fitting(p.middle.WidthMM, 21, 11, 6)
	levels := make([]int, n)
	for i := range levels {
		levels[i] = int(math.Round(white * float64(n-1-i) / float64(n-1)))
	}
	p.greys(p.middle.XMM, p.middle.WidthMM, p.patchMM(), levels)
	p.y += p.patchMM() + numbersMM + p.types.small.CapMM()
}

// endLevels is how far the finer steps at both ends go.
const endLevels = 40

// endGreys draws finer steps near bare paper and near black, where a printer first loses them.
func (p *page) endGreys() {
	p.heading("The lightest and the darkest greys")
	halfMM := p.middle.WidthMM/2 - 2
	n := p.fitting(halfMM, 11, 6, 3)
	light, dark := make([]int, n), make([]int, n)
	for i := range n {
		light[i], dark[i] = white-endLevels*i/(n-1), endLevels*(n-1-i)/(n-1)
	}
	p.greys(p.middle.XMM, halfMM, p.patchMM(), light)
	p.greys(p.middle.RightMM()-halfMM, halfMM, p.patchMM(), dark)
	p.y += p.patchMM() + numbersMM + p.types.small.CapMM()
}

// fitting is the first of the numbers of steps, most first, whose numbers have room in a row; or the last.
func (p *page) fitting(rowMM float64, numbers ...int) int {
	for _, n := range numbers {
		if rowMM/float64(n) >= p.types.small.Width("255")+0.8 {
			return n
		}
	}
	return numbers[len(numbers)-1]
}

// numbersMM is from a patch to the numbers below it.
const numbersMM = 1.0

// greys draws a row of steps with a hairline around it and its numbers below.
func (p *page) greys(x, rowMM, highMM float64, levels []int) {
	s, stepMM := p.types.small, rowMM/float64(len(levels))
	for i, level := range levels {
		at := x + float64(i)*stepMM
		p.fills = append(p.fills, fill{layout.Rect{XMM: at, YMM: p.y, WidthMM: stepMM, HeightMM: highMM}, level})
		p.putMiddle(s, at+stepMM/2, p.y+highMM+numbersMM+s.CapMM(), fmt.Sprint(level))
	}
	p.box(layout.Rect{XMM: x, YMM: p.y, WidthMM: rowMM, HeightMM: highMM})
}

// patchMM is how high a patch stands.
func (p *page) patchMM() float64 {
	if p.compact {
		return 7
	}
	return 15
}

// perWidth is how many lines of a width stand side by side, with gaps as wide between them.
const perWidth = 3

// lines draws lines of known widths, with gaps as wide, black on white and below that white on black.
func (p *page) lines() {
	s := p.types.small
	tenths := []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	if p.middle.WidthMM < 75 {
		tenths = []int{1, 2, 3, 5, 10}
	}
	p.heading("Lines, and gaps as wide between them, in mm: black, and reversed.")
	columnMM, highMM := p.middle.WidthMM/float64(len(tenths)), p.patchMM()
	top := p.y
	p.fills = append(p.fills, fill{layout.Rect{XMM: p.middle.XMM, YMM: top + highMM, WidthMM: p.middle.WidthMM,
		HeightMM: highMM}, black})
	for i, tenth := range tenths {
		widthMM := float64(tenth) / 10
		middle := p.middle.XMM + (float64(i)+0.5)*columnMM
		for k := range perWidth {
			x := middle + float64(2*k-(perWidth-1))*widthMM
			p.stroke(x, top, x, top+highMM, widthMM, black)
			p.stroke(x, top+highMM, x, top+2*highMM-1, widthMM, white)
		}
		p.putMiddle(s, middle, top+2*highMM+numbersMM+s.CapMM(), fmt.Sprintf("%.1f", widthMM))
	}
	p.y = top + 2*highMM + 1 + s.CapMM()
}
