package colour

import (
	"cmp"
	"fmt"
	"slices"
)

// grid is a table's numbers at even steps of each component, the last component's lying closest (ICC.1:2010, 10.10,
// recalled from memory).
type grid struct {
	sides  []int // points of each component
	to     int   // numbers of each point
	points numbers
}

// grid splits off a grid. None is read into memory that the table does not have.
func (r *numbers) grid(sides []int, to int) (grid, error) {
	n := int64(to)
	for _, side := range sides {
		if side < 2 {
			return grid{}, fmt.Errorf("has a grid of %d points a side", side)
		}
		n *= int64(side) // at most 255 to the fourth, times four
	}
	points, err := r.take(n)
	return grid{sides, to, points}, err
}

// at is what lies between the points about a place, 0 to 1 in each component. Of three components it goes by the
// tetrahedron that the place lies in, of four by those at both sides of the first, with a straight line between: so do
// other engines, and on a coarse grid it matters.
func (g grid) at(values []float64) []float64 {
	steps := g.steps()
	if len(values) < mostComponents {
		return g.simplex(0, values, g.sides, steps)
	}
	k, part := along(values[0], g.sides[0])
	near := g.simplex(k*steps[0], values[1:], g.sides[1:], steps[1:])
	far := g.simplex((k+1)*steps[0], values[1:], g.sides[1:], steps[1:])
	for c := range near {
		near[c] += float64(part * (far[c] - near[c]))
	}
	return near
}

// steps are how far apart the numbers of neighbouring points lie, for each component.
func (g grid) steps() []int {
	steps, step := make([]int, len(g.sides)), g.to
	for i := len(steps) - 1; i >= 0; i-- {
		steps[i] = step
		step *= g.sides[i]
	}
	return steps
}

// along is the point before a place, 0 to 1, of so many points, and the share of the way from there to the next.
func along(v float64, side int) (point int, part float64) {
	at := share(v) * float64(side-1)
	point = min(int(at), side-2)
	return point, at - float64(point)
}

// simplex goes by some of the corners of the place's cell: the first, the one a step further along the component of the
// largest part, then along the next as well, and so on (Rovatti, Borgatti and Guerrieri, A geometric approach to
// maximum-speed n-dimensional continuous linear interpolation in rectangular grids, IEEE Transactions on Computers 47,
// 1998; recalled from memory).
func (g grid) simplex(corner int, values []float64, sides, steps []int) []float64 {
	type way struct {
		part float64
		step int
	}
	ways := make([]way, len(values))
	for i, v := range values {
		k, part := along(v, sides[i])
		corner += k * steps[i]
		ways[i] = way{part, steps[i]}
	}
	slices.SortStableFunc(ways, func(a, b way) int { return cmp.Compare(b.part, a.part) })
	out, before := make([]float64, g.to), 1.0
	add := func(weight float64) {
		for c := range out {
			out[c] += float64(weight * g.points.at(corner+c)) // rounded by itself, as matrix.times has it
		}
	}
	for _, w := range ways {
		add(before - w.part)
		corner, before = corner+w.step, w.part
	}
	add(before)
	return out
}
