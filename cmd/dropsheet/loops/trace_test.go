package loops

import "math"

// lookThrough is the closed loop's own ray trace, written apart from package flip: it finds the surface by
// bisection on the distance from the body's axis or centre, and bends the ray by turning it in the plane of
// incidence through the difference of Snell's angles. A ball out of round has oval for its height over its
// width, radius for half its width. It returns where on the backdrop's plane (mm from the axis) the camera
// sees through (x, y) of the drop's plane.
func lookThrough(body string, radius, oval, index, camera, distance, x, y float64) (bx, by float64, ok bool) {
	type vec [3]float64
	dot := func(a, b vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	plus := func(a vec, k float64, b vec) vec { return vec{a[0] + k*b[0], a[1] + k*b[1], a[2] + k*b[2]} }
	unit := func(a vec) vec { return plus(vec{}, 1/math.Sqrt(dot(a, a)), a) }
	cross := func(a, b vec) vec {
		return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	along := -1 // the rod's own axis
	switch body {
	case "upright-rod":
		along = 1
	case "level-rod":
		along = 0
	}
	// radial is the part of p that leads away from the centre, or from the rod's axis.
	radial := func(p vec) vec {
		if along >= 0 {
			p[along] = 0
		}
		return p
	}
	inside := func(p vec) bool { r := radial(p); r[1] /= oval; return dot(r, r) < radius*radius }
	// outward is at right angles to the surface: of x² + (y/k)² + z² = R², the direction (x, y/k², z).
	outward := func(p vec) vec { r := radial(p); r[1] /= oval * oval; return unit(r) }
	boundary := func(from, dir vec, a, b float64, wasInside bool) vec {
		for range 64 {
			middle := (a + b) / 2
			if middle == a || middle == b { // a double has no more places
				break
			}
			if inside(plus(from, middle, dir)) == wasInside {
				a = middle
			} else {
				b = middle
			}
		}
		return plus(from, (a+b)/2, dir)
	}
	// bend turns dir towards the inward normal, or away from it, so that sin(out) = ratio sin(in).
	bend := func(dir, normal vec, ratio float64) (vec, bool) {
		in := math.Acos(math.Max(-1, math.Min(1, dot(dir, normal))))
		sinOut := ratio * math.Sin(in)
		if sinOut >= 1 {
			return vec{}, false
		}
		if in < 1e-12 {
			return dir, true
		}
		turn := in - math.Asin(sinOut)
		axis := unit(cross(dir, normal))
		// Rodrigues' rotation; dir is at right angles to the axis.
		return plus(plus(vec{}, math.Cos(turn), dir), math.Sin(turn), cross(axis, dir)), true
	}

	eye := vec{0, 0, -camera}
	dir := unit(vec{x, y, camera})
	// The ray comes nearest to the centre or axis where the radial part of its way is used up; in a space
	// where an oval body is round.
	rd := radial(dir)
	rd[1] /= oval
	nearest := -dot(radial(eye), rd) / dot(rd, rd)
	if !inside(plus(eye, nearest, dir)) {
		far := (distance + camera) / dir[2]
		p := plus(eye, far, dir)
		return p[0], p[1], true
	}
	p := boundary(eye, dir, 0, nearest, false)
	dir, ok = bend(dir, plus(vec{}, -1, outward(p)), 1/index)
	if !ok {
		return 0, 0, false
	}
	q := boundary(p, dir, radius*1e-6, 100*radius, true)
	dir, ok = bend(dir, outward(q), index)
	if !ok || dir[2] <= 0 {
		return 0, 0, false
	}
	end := plus(q, (distance-q[2])/dir[2], dir)
	return end[0], end[1], true
}
