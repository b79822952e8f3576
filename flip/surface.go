package flip

import "math"

// surface is a body's surface as the quadric x²X + y²Y + z²Z = 1, in 1/mm²; a rod's own axis has no weight.
type surface Vec

// surface returns the body's surface.
func (d Drop) surface() surface {
	w := 1 / (d.RadiusMM() * d.RadiusMM())
	q := surface{0, 0, w}
	x, y := d.bends()
	if x {
		q.X = w
	}
	if y {
		q.Y = 1 / (d.HalfHeightMM() * d.HalfHeightMM())
	}
	return q
}

// weigh multiplies v by the weights.
func (q surface) weigh(v Vec) Vec { return Vec{v.X * q.X, v.Y * q.Y, v.Z * q.Z} }

// normal is the unit outward normal at a point of the surface.
func (q surface) normal(p Vec) Vec { return q.weigh(p).Unit() }

// enter returns how far along r, in mm, the surface is first met from outside. It starts from where r passes the centre: from far off, what is wanted would be the small
// difference of squares of the distance.
func (q surface) enter(r Ray) (mm float64, hit bool) {
	nearMM := -r.From.Dot(r.Dir)
	r.From = r.At(nearMM)
	wd := q.weigh(r.Dir)
	a, b, c := r.Dir.Dot(wd), r.From.Dot(wd), r.From.Dot(q.weigh(r.From))-1
	discriminant := b*b - a*c
	if a == 0 || discriminant <= 0 {
		return 0, false
	}
	mm = nearMM + (-b-math.Sqrt(discriminant))/a
	return mm, mm > 0
}

// leave returns where a ray that starts on the surface and runs inside meets it again.
func (q surface) leave(r Ray) Vec {
	wd := q.weigh(r.Dir)
	return r.At(-2 * r.From.Dot(wd) / r.Dir.Dot(wd))
}
