package gauge

import (
	"fmt"

	"dropsheet/tile/pdf"
)

// The rules' ticks, in mm. A rule's line keeps one side free, for the steel rule that is laid along it.
const (
	tickLineMM = 0.1
	tickMM     = 1.6
	fiveMM     = 2.4
	tenMM      = 3.4
	endMM      = 5.6 // an end tick, and
	endBackMM  = 1.4 // how far it reaches past the line
	endLineMM  = 0.2
	ruleInMM   = 2.8 // from the frame to the line
	numberMM   = 0.7 // from a tick to its number
)

var (
	numberStyle = pdf.Sans(6.5)
	nameStyle   = pdf.Sans(7).Bold()
)

// tick is a tick's length, and its width.
func tick(mm, whole int) (long, back, widthMM float64) {
	switch {
	case mm == 0 || mm == whole:
		return endMM, endBackMM, endLineMM
	case mm%10 == 0:
		return tenMM, 0, tickLineMM
	case mm%5 == 0:
		return fiveMM, 0, tickLineMM
	}
	return tickMM, 0, tickLineMM
}

// ruleAcross draws the rule along the shorter side, below the frame.
func (p *page) ruleAcross() {
	x0, y, whole := p.start.XMM, p.depth+ruleInMM, int(p.rules.WidthMM)
	base := y + tenMM + numberMM + numberStyle.CapMM()
	p.level(x0, x0+p.rules.WidthMM, y, tickLineMM)
	for mm := range whole + 1 {
		long, back, widthMM := tick(mm, whole)
		x := x0 + float64(mm)
		p.upright(x, y-back, y+long, widthMM)
		text := fmt.Sprint(mm)
		switch {
		case mm == 0: // the end ticks are long: their numbers stand inside
			p.put(numberStyle, x+numberMM, base, text)
		case mm == whole:
			p.put(numberStyle, x-numberMM-numberStyle.Width(text), base, text)
		case mm%10 == 0:
			p.putMiddle(numberStyle, x, base, text)
		}
	}
	p.name(fmt.Sprintf("ACROSS  %d mm", whole), p.rules.WidthMM, func(name string) {
		p.putMiddle(nameStyle, p.paper.WidthMM/2, p.depth+bandMM-1.2, name)
	})
}

// ruleFeed draws the rule along the longer side, right of the frame.
func (p *page) ruleFeed() {
	x, y0, whole := p.depth+ruleInMM, p.start.YMM, int(p.rules.HeightMM)
	p.upright(x, y0, y0+p.rules.HeightMM, tickLineMM)
	for mm := range whole + 1 {
		long, back, widthMM := tick(mm, whole)
		y := y0 + float64(mm)
		p.level(x-back, x+long, y, widthMM)
		text, left := fmt.Sprint(mm), x+tenMM+numberMM
		switch {
		case mm == 0:
			p.put(numberStyle, left, y+numberMM+numberStyle.CapMM(), text)
		case mm == whole:
			p.put(numberStyle, left, y-numberMM, text)
		case mm%10 == 0:
			p.put(numberStyle, left, y+numberStyle.CapMM()/2, text)
		}
	}
	p.name(fmt.Sprintf("FEED  %d mm", whole), p.rules.HeightMM, func(name string) {
		p.putTurned(nameStyle, p.depth+bandMM+0.8, y0+p.rules.HeightMM/2, name)
	})
}

// name puts a rule's name where the rule is long enough for it.
func (p *page) name(name string, lengthMM float64, put func(string)) {
	if nameStyle.Width(name) <= lengthMM {
		put(name)
	}
}
