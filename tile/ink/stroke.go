package ink

import (
	"image/color"
	"math"
)

// Line is what a path is drawn with.
type Line struct {
	Colour  color.RGBA
	WidthPx float64
	// DashPx are lengths of ink and gap by turns, an even number of them, each above 0; none means unbroken. They are
	// stretched or squeezed a little, so that a path ends with a whole number of them.
	DashPx []float64
	// A keyline is a rim of another colour, KeylinePx wide on either side, that makes the line read on any ground.
	Keyline   color.RGBA
	KeylinePx float64
	// A core is a thinner line of another colour along the middle, that makes it double; none where CorePx is 0.
	Core   color.RGBA
	CorePx float64
}

// Stroke is a path drawn as a line.
type Stroke struct {
	Path Path
	Line Line
}

// Draw draws the strokes. All keylines lie under all lines, so that paths may cross and meet.
func (c Canvas) Draw(strokes ...Stroke) {
	dashes := make([][]Path, len(strokes))
	for i, s := range strokes {
		dashes[i] = s.Line.dashes(s.Path.snapped().thinned())
		for _, dash := range dashes[i] {
			if s.Line.KeylinePx > 0 {
				c.stroke(s.Line.Keyline, s.Line.WidthPx/2+s.Line.KeylinePx, s.Line.KeylinePx, dash)
			}
		}
	}
	for i, s := range strokes {
		for _, dash := range dashes[i] {
			c.stroke(s.Line.Colour, s.Line.WidthPx/2, 0, dash)
			if s.Line.CorePx > 0 {
				c.stroke(s.Line.Core, s.Line.CorePx/2, 0, dash)
			}
		}
	}
}

// stroke draws a path that far to either side, and that far past its ends.
func (c Canvas) stroke(colour color.RGBA, sidePx, pastPx float64, path Path) {
	if path.closed() {
		c.Fill(colour, path.offset(sidePx), path.Reversed().offset(sidePx))
		return
	}
	path = path.lengthened(pastPx)
	c.Fill(colour, append(path.offset(sidePx), path.Reversed().offset(sidePx)...))
}

// thinned drops points that follow another by less than half a pixel, where a direction can't be told. The ends
// stay, and so do points that are no numbers.
func (p Path) thinned() Path {
	const least = 0.5
	if len(p) < 2 {
		return nil
	}
	last := p[len(p)-1]
	out := Path{p[0]}
	for _, q := range p[1 : len(p)-1] {
		if !(apart(out[len(out)-1], q) < least || apart(q, last) < least) {
			out = append(out, q)
		}
	}
	if len(out) == 1 && out[0] == last {
		return nil
	}
	return append(out, last)
}

// lengthened moves both ends outward along the path's direction there.
func (p Path) lengthened(px float64) Path {
	if px == 0 {
		return p
	}
	out := append(Path(nil), p...)
	n := len(p) - 1
	first, last := direction(p[1], p[0]), direction(p[n-1], p[n])
	out[0], out[n] = p[0].moved(px, first), p[n].moved(px, last)
	return out
}

// offset is the path moved sideways by that many pixels, to the right of its direction. Corners are mitred up
// to a turn of 120 degrees and blunt beyond.
func (p Path) offset(px float64) Path {
	const bluntest = 0.5 // cosine of half of 120 degrees
	n := len(p) - 1
	side := func(i int) Point { // the unit normal of the piece that starts at point i
		d := direction(p[i], p[i+1])
		return Point{-d.Y, d.X}
	}
	var out Path
	add := func(at, normal Point, far float64) {
		out = append(out, at.moved(far, normal))
	}
	turn := func(at, before, after Point) {
		sum := Point{before.X + after.X, before.Y + after.Y}
		length := math.Hypot(sum.X, sum.Y)
		if half := length / 2; half > bluntest { // the sum of two unit normals is 2 cos(half the turn) long
			add(at, Point{sum.X / length, sum.Y / length}, px/half)
			return
		}
		add(at, before, px)
		add(at, after, px)
	}
	if p.closed() {
		turn(p[0], side(n-1), side(0))
	} else {
		add(p[0], side(0), px)
	}
	for i := 1; i < n; i++ {
		turn(p[i], side(i-1), side(i))
	}
	if p.closed() {
		return append(out, out[0])
	}
	add(p[n], side(n-1), px)
	return out
}

// moved is the point that far away in the direction of a unit vector.
func (p Point) moved(px float64, by Point) Point {
	return Point{p.X + float64(px*by.X), p.Y + float64(px*by.Y)}
}

// direction is the unit vector from p to q, which are apart.
func direction(p, q Point) Point {
	d := apart(p, q)
	return Point{(q.X - p.X) / d, (q.Y - p.Y) / d}
}
