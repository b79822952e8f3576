package flip

import "math"

// quadric is the surface of a body other than a drop that hangs, x²X + y²Y + z²Z = 1, in 1/mm²; a rod's own axis
// has no weight. Half its gradient, the weighed place, points outward.
type quadric Vec

// quadric returns the body's surface; of a drop that hangs the spheroid that is curved as it is at its equator.
func (d Drop) quadric() quadric {
	w := 1 / (d.RadiusMM() * d.RadiusMM())
	q := quadric{0, 0, w}
	x, y := d.bends()
	if x {
		q.X = w
	}
	if y {
		q.Y = 1 / (d.HalfHeightMM() * d.HalfHeightMM())
	}
	if d.Body == Hanging {
		q.Y = w * d.RadiusMM() / d.CurvedUpMM()
	}
	return q
}

// weigh multiplies v by the weights.
func (q quadric) weigh(v Vec) Vec { return Vec{v.X * q.X, v.Y * q.Y, v.Z * q.Z} }

// enter returns where a ray along d first meets the surface from outside, and how steeply: the size of its
// gradient's part along d. It starts from where the ray passes the centre: from far off, what is wanted would
// be the small difference of squares of the distance.
func (q quadric) enter(from, d Vec) (at Vec, slope float64, hit bool) {
	nearMM := -from.Dot(d)
	at = from.Add(d.Scale(nearMM))
	wd := q.weigh(d)
	a, b, c := d.Dot(wd), at.Dot(wd), at.Dot(q.weigh(at))-1
	discriminant := b*b - a*c
	if a == 0 || discriminant <= 0 {
		return Vec{}, 0, false
	}
	slope = math.Sqrt(discriminant)
	mm := (-b - slope) / a
	return at.Add(d.Scale(mm)), slope, nearMM+mm > 0
}
