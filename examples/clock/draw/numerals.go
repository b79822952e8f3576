package main

import (
	"math"
	"strconv"

	"dropsheet/examples/paint"
)

const quarter = math.Pi / 2

// digitW is how wide most digits are, digitStroke how thick all are, and digitGap the space between the
// strokes' middles of two neighbours; all to a digit 1 high, measured along the middle of its strokes.
const digitW, digitStroke, digitGap = 0.56, 0.185, 0.33

// digit draws a digit of our own, in strokes, and gives its width.
func digit(d rune) (paint.Shape, float64) {
	const mid, w = digitW / 2, digitStroke
	switch d {
	case '0':
		return stroke(w, arc(mid, 0.7, mid, 0.3, 0, 2*quarter), arc(mid, 0.3, mid, 0.3, 2*quarter, 4*quarter),
			paint.Points(digitW, 0.7)), digitW
	case '1':
		return stroke(w, paint.Points(0, 0.8, 0.24, 1, 0.24, 0)), 0.24
	case '2':
		return stroke(w, arc(mid, 0.72, mid, 0.28, 1.86*quarter, -0.47*quarter), paint.Points(0, 0, digitW, 0)), digitW
	case '3':
		return paint.Together(
			stroke(w, arc(mid, 0.765, 0.245, 0.235, 1.75*quarter, -quarter), paint.Points(0.2, 0.53)),
			stroke(w, arc(mid, 0.265, mid, 0.265, quarter, -1.8*quarter))), digitW
	case '4':
		return stroke(w, paint.Points(0.43, 0, 0.43, 1, 0, 0.25, 0.6, 0.25)), 0.6
	case '5':
		return stroke(w, paint.Points(0.5, 1, 0.09, 1, 0.06, 0.515), arc(mid, 0.31, mid, 0.31, 1.45*quarter, -1.8*quarter)),
			digitW
	case '6':
		return paint.Together(
			stroke(w, arc(mid, 0.29, mid, 0.29, 0, 4*quarter)),
			stroke(w, paint.Curve(0, 0.29, 0.03, 0.47, 0.11, 0.66, 0.235, 0.84, 0.38, 1))), digitW
	case '7':
		return stroke(w, paint.Points(0, 1, digitW, 1, 0.17, 0)), digitW
	case '8':
		return paint.Together(
			stroke(w, arc(mid, 0.765, 0.235, 0.235, 0, 4*quarter)),
			stroke(w, arc(mid, 0.265, mid, 0.265, 0, 4*quarter))), digitW
	default: // 9 is a 6 turned round
		six, _ := digit('6')
		return six.Scaled(-1).Moved(digitW, 1), digitW
	}
}

// numeral draws a number, its middle at x, y.
func numeral(n int, x, y, high float64) paint.Shape {
	var out paint.Shape
	pen := -digitGap
	for _, d := range strconv.Itoa(n) {
		s, wide := digit(d)
		out = append(out, s.Moved(pen+digitGap, 0)...)
		pen += digitGap + wide
	}
	return out.Moved(-pen/2, -0.5).Scaled(high).Moved(x, y)
}
