package report

import (
	"math"

	"dropsheet/layout"
)

// whiteRound tells what of an uncut sheet stays white round the print, and what to do about it.
func (r *Report) whiteRound() []Fact {
	left, top, right, bottom := white(r.shot.Plan)
	mm := func(v float64) Figure { return Length(math.Max(0, v)) }
	at := say("%s at the left, %s above, %s at the right and %s below", mm(left), mm(top), mm(right), mm(bottom))
	switch even := func(a, b float64) bool { return mm(a).Number() == mm(b).Number() }; {
	case !even(left, right) || !even(top, bottom):
	case even(left, top):
		at = say("%s all round", mm(left))
	default:
		at = say("%s at either side, %s above and below", mm(left), mm(top))
	}
	facts := []Fact{{Key: "print.lies", Text: say("the paper goes on beyond the print by %s", at)}}
	if !r.showsWhite() {
		return facts
	}
	return append(facts, Fact{Key: "print.white", Text: say("that white shows as a bright line in the %s's rim: cut it "+
		"off along the print's edge, or cover it with black tape", r.body)})
}

// leastWhiteMM is the least white beside an uncut print that is worth a word (common practice, no source).
const leastWhiteMM = 0.5

// showsWhite tells whether an uncut sheet leaves white paper round its print.
func (r *Report) showsWhite() bool {
	if !r.shot.Backdrop.Uncut {
		return false
	}
	left, top, right, bottom := white(r.shot.Plan)
	return max(left, top, right, bottom) >= leastWhiteMM
}

// white is how far the paper of an uncut sheet goes on beyond its print, mm on each side.
func white(p layout.Plan) (left, top, right, bottom float64) {
	s := p.Sheets[0]
	paper := p.Backdrop.PaperOnBoard(s)
	return s.Cell.XMM - paper.XMM, s.Cell.YMM - paper.YMM, paper.RightMM() - s.Cell.RightMM(),
		paper.BottomMM() - s.Cell.BottomMM()
}
