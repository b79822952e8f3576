package layout

import (
	"fmt"
	"math"
)

// Circle is a place on the board.
type Circle struct {
	Centre   Point
	RadiusMM float64
}

// CircleOnBoard finds a circle of the picture on the board: its centre in picture coordinates, 0 to 1 as it
// appears in the drop, and its radius as a share of the picture's width. On a bent print it is no circle any
// more, and the least about its centre that holds it is given; what the print leaves out does not count.
func (p Plan) CircleOnBoard(x, y, radius float64) Circle {
	h := p.hang()
	centre, ok := h.Board(x, y)
	if h.Plain() || !ok {
		return Circle{centre, radius * p.Picture.FlatWidthMM}
	}
	c := Circle{Centre: centre}
	const directions = 90
	for i := range directions {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / directions)
		at, ok := h.Board(x+radius*cos, y+radius*sin*p.Picture.FlatWidthMM/p.Picture.FlatHeightMM)
		if ok {
			c.RadiusMM = max(c.RadiusMM, math.Hypot(at.XMM-centre.XMM, at.YMM-centre.YMM))
		}
	}
	return c
}

// check refuses a circle that is none.
func (c Circle) check() error {
	if !(c.RadiusMM > 0 && c.RadiusMM <= MaxLengthMM && math.Abs(c.Centre.XMM) <= MaxLengthMM &&
		math.Abs(c.Centre.YMM) <= MaxLengthMM) {
		return fmt.Errorf("a circle of %gmm about %g, %gmm can't be kept clear of seams\nhint: give it a radius above 0mm",
			c.RadiusMM, c.Centre.XMM, c.Centre.YMM)
	}
	return nil
}

// crossedMM is how much of a seam lies in the circle.
func (c Circle) crossedMM(s Seam) float64 {
	across, alongMM := s.AtMM-c.Centre.XMM, c.Centre.YMM
	if s.Axis == "y" {
		across, alongMM = s.AtMM-c.Centre.YMM, c.Centre.XMM
	}
	if math.Abs(across) >= c.RadiusMM {
		return 0
	}
	half := math.Sqrt(c.RadiusMM*c.RadiusMM - across*across)
	return max(0, min(s.ToMM, alongMM+half)-max(s.FromMM, alongMM-half))
}

// CrossingMM is how long the plan's seams run inside a circle.
func (p Plan) CrossingMM(c Circle) (lengthMM float64) {
	for _, s := range p.Seams {
		lengthMM += c.crossedMM(s)
	}
	return lengthMM
}
