package ink

import "math"

// clipped is what of a closed outline lies in a rectangle, by Sutherland and Hodgman's method (Communications
// of the ACM 17, 1974, cited from memory): cut along one side after the other. Parts that the outline joins
// through the outside stay joined by lines along the sides, which cover nothing. An outline with a point that
// is no finite number gives nothing.
func (r Rect) clipped(outline Path) Path {
	for _, p := range outline {
		if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
			return nil
		}
	}
	// Each side's depth is how far inside of it a point lies.
	for _, depth := range []func(Point) float64{
		func(p Point) float64 { return p.X - r.Left },
		func(p Point) float64 { return r.Right - p.X },
		func(p Point) float64 { return p.Y - r.Top },
		func(p Point) float64 { return r.Bottom - p.Y },
	} {
		var kept Path
		for i, p := range outline {
			before := outline[(i+len(outline)-1)%len(outline)]
			d, was := depth(p), depth(before)
			if (d >= 0) != (was >= 0) {
				kept = append(kept, between(before, p, was/(was-d)))
			}
			if d >= 0 {
				kept = append(kept, p)
			}
		}
		outline = kept
	}
	return outline
}
