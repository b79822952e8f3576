package colour

import (
	"math"
	"slices"
)

// baked is a profile's table for levels of 8 bits, worked out once: light of sRGB's primaries on a grid of so many
// points a side. Light runs smoothly where levels bend, about black and where a primary is left behind; what sRGB
// can't show is kept, so that what lies between is right, and cut off at the end.
type baked struct {
	components int
	nodes      [][3]int32 // in nodeLights of full light; the last component's lie closest
	steps      [mostComponents]int32
	places     [mostComponents][256]place // of each component's levels, through its curve
}

// place is where a level lies between two points.
type place struct {
	point int32
	share int32 // of the way to the next, in 255ths
}

// The most points a side, by how many components there are: 390,625 of inks.
var mostSide = map[int]int{3: 33, 4: 25}

// sideFor is how many points a side to bake: those of the table and as many between each two as there may be, so that
// straight lines between those of the table stay straight.
func sideFor(d *device) int {
	most := mostSide[d.components]
	if len(d.sides) == 0 || slices.Min(d.sides) != slices.Max(d.sides) || d.sides[0] > most {
		return most
	}
	each := d.sides[0] - 1
	return (most-1)/each*each + 1
}

func bake(d *device) *baked {
	components, side := d.components, sideFor(d)
	t := &baked{components: components, nodes: make([][3]int32, int(math.Pow(float64(side), float64(components))))}
	step := int32(1)
	for i := components - 1; i >= 0; i-- {
		t.steps[i] = step
		step *= int32(side)
	}
	for level := range 256 {
		same := slices.Repeat([]float64{float64(level) / 255}, components)
		for i, v := range d.in.of(same) {
			at := int32(math.Round(255 * share(v) * float64(side-1)))
			point := min(at/255, int32(side-2))
			t.places[i][level] = place{point, at - 255*point}
		}
	}
	toLight := xyzToSRGBLight()
	values := make([]float64, components)
	for n := range t.nodes {
		for i := range values {
			values[i] = float64(n/int(t.steps[i])%side) / float64(side-1)
		}
		for c, light := range toLight.times(d.xyz(values)) {
			if light == light { // not what a wild formula makes of nothing
				t.nodes[n][c] = int32(math.Round(nodeLights * max(-mostLight, min(light, mostLight))))
			}
		}
	}
	return t
}

// Steps of light in nodes, a twentieth of a level in the dark, and a bound for wild tables: further off than any
// colour that can be seen.
const (
	nodeLights = 1 << 16
	mostLight  = 8
)

// fullLight is full light as at has it.
const fullLight = 255 * nodeLights

// at is the light of a colour, up to fullLight or not cut off: between points as grid.at has it, by the tetrahedron of
// the last three components and, of four, by a straight line along the first.
func (t *baked) at(levels [mostComponents]uint8) [3]int32 {
	// Shares and steps in one number each, so that sorting by shares takes the steps along.
	const shareAt = 20
	first, across, part := int32(0), int32(0), int64(0) // across is the step along the first of four
	inner := t.components - connected
	if inner > 0 {
		p := t.places[0][levels[0]]
		first, across, part = p.point*t.steps[0], t.steps[0], int64(p.share)
	}
	var along [connected]int32
	for i := range along {
		p := t.places[inner+i][levels[inner+i]]
		first += p.point * t.steps[inner+i]
		along[i] = p.share<<shareAt | t.steps[inner+i]
	}
	sort := func(i, j int) { along[i], along[j] = max(along[i], along[j]), min(along[i], along[j]) }
	sort(0, 1)
	sort(1, 2)
	sort(0, 1)
	// The tetrahedron's other corners, and how much each of the four weighs.
	second := first + along[0]&(1<<shareAt-1)
	third := second + along[1]&(1<<shareAt-1)
	fourth := third + along[2]&(1<<shareAt-1)
	w1, w2, w3 := 255-along[0]>>shareAt, along[0]>>shareAt-along[1]>>shareAt, along[1]>>shareAt-along[2]>>shareAt
	w4 := along[2] >> shareAt
	weighed := func(by int32) (light [3]int32) {
		a, b, c, d := &t.nodes[first+by], &t.nodes[second+by], &t.nodes[third+by], &t.nodes[fourth+by]
		for i := range light {
			light[i] = w1*a[i] + w2*b[i] + w3*c[i] + w4*d[i]
		}
		return light
	}
	light := weighed(0)
	if part != 0 {
		far := weighed(across)
		for i, near := range light {
			light[i] = near + int32(part*int64(far[i]-near)/255)
		}
	}
	return light
}
