package ink

// Rect is an upright rectangle, in pixels.
type Rect struct{ Left, Top, Right, Bottom float64 }

// Holds tells whether the point lies in the rectangle or on its edge.
func (r Rect) Holds(p Point) bool {
	return p.X >= r.Left && p.X <= r.Right && p.Y >= r.Top && p.Y <= r.Bottom
}

// Overlaps tells whether two rectangles share any area.
func (r Rect) Overlaps(s Rect) bool {
	return r.Left < s.Right && s.Left < r.Right && r.Top < s.Bottom && s.Top < r.Bottom
}

// Grow moves every side outward by that many pixels.
func (r Rect) Grow(px float64) Rect {
	return Rect{r.Left - px, r.Top - px, r.Right + px, r.Bottom + px}
}

// Outline is the rectangle's edge as a closed path.
func (r Rect) Outline() Path {
	return Path{{r.Left, r.Top}, {r.Right, r.Top}, {r.Right, r.Bottom}, {r.Left, r.Bottom}, {r.Left, r.Top}}
}

// LengthInside is how much of the straight line from p to q lies in the rectangle, in pixels (Liang and
// Barsky's clipping, ACM Transactions on Graphics 3, 1984, cited from memory).
func (r Rect) LengthInside(p, q Point) float64 {
	first, last := 0.0, 1.0
	for _, side := range []struct{ out, room float64 }{
		{p.X - q.X, p.X - r.Left}, {q.X - p.X, r.Right - p.X}, {p.Y - q.Y, p.Y - r.Top}, {q.Y - p.Y, r.Bottom - p.Y},
	} {
		switch {
		case side.out == 0 && side.room < 0:
			return 0
		case side.out < 0:
			first = max(first, side.room/side.out)
		case side.out > 0:
			last = min(last, side.room/side.out)
		}
	}
	return max(0, last-first) * apart(p, q)
}
