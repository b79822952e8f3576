package proof

import (
	"math"
	"sync"
)

// sample is one ray of the set: where in the pixel, where on the pupil and how far thrown by diffraction.
type sample struct {
	x, y           float64 // from the pixel's middle, in pixels
	pupilX, pupilY float64 // on a pupil of radius 1
	airyX, airyY   float64 // in radii of the first dark ring
	airySpread     float64 // how far this ray is from the next by diffraction: rays are few where little light is thrown
}

// overlap is how much wider than its share of pixel and pupil each ray's patch is taken, in variance, so that
// the patches of a set, which are not quite even, leave no gaps. The rays are drawn in by as much as the
// patches are wider.
const overlap = 1.5

// raySet spreads about n rays over pixel, pupil and diffraction, each of them evenly: the pupil by a
// sunflower (Vogel, A Better Way to Construct the Sunflower Head, 1979), the pixel by the additive sequence
// of the plastic number (Roberts, The Unreasonable Effectiveness of Quasirandom Sequences, 2018), diffraction
// by equal shares of light. Each goes through its places in another order, so that none follows another.
// Every ray has an opposite, so that a set has its middle in the middle of the pixel. A set is not to be changed.
func raySet(n int) []sample {
	if set, ok := raySets.Load(n); ok {
		return set.([]sample)
	}
	set := newRaySet(n)
	raySets.Store(n, set)
	return set
}

// raySets are the sets made so far, by their size.
var raySets sync.Map

func newRaySet(n int) []sample {
	const (
		golden  = 2.399963229728653 // radians: the golden angle
		plastic = 1.324717957244746 // p^3 = p + 1
	)
	half := (n + 1) / 2
	drawn := math.Sqrt(max(0, 1-overlap/float64(2*half)))
	set := make([]sample, 0, 2*half)
	for i := range half {
		var s sample
		r := math.Sqrt((float64(i) + 0.5) / float64(half))
		s.pupilX, s.pupilY = drawn*r*math.Cos(golden*float64(i)), drawn*r*math.Sin(golden*float64(i))

		k := float64(i + 1)
		_, u := math.Modf(0.5 + k/plastic)
		_, w := math.Modf(0.5 + k/(plastic*plastic))
		s.x, s.y = drawn*(u-0.5), drawn*(w-0.5)

		k = float64(i)
		r = airyRadius((k + 0.5) / float64(half))
		s.airyX, s.airyY = r*math.Cos(golden*k), r*math.Sin(golden*k)
		// The ring between the neighbouring shares of light belongs to this ray and its opposite: the side of a
		// square of half its area.
		in, out := airyRadius(k/float64(half)), airyRadius((k+1)/float64(half))
		s.airySpread = math.Sqrt(math.Pi * (out*out - in*in) / 2)
		set = append(set, s)
	}
	even(set, func(s *sample) (x, y *float64) { return &s.pupilX, &s.pupilY })
	even(set, func(s *sample) (x, y *float64) { return &s.x, &s.y })
	even(set, func(s *sample) (x, y *float64) { return &s.airyX, &s.airyY })
	set = shuffled(set)
	for _, s := range set {
		set = append(set, sample{-s.x, -s.y, -s.pupilX, -s.pupilY, -s.airyX, -s.airyY, s.airySpread})
	}
	return set
}

// covariance is that of places about the origin.
type covariance struct{ xx, xy, yy float64 }

// add counts a place (x, y) in.
func (c *covariance) add(x, y, weight float64) {
	c.xx, c.xy, c.yy = c.xx+weight*x*x, c.xy+weight*x*y, c.yy+weight*y*y
}

// even makes places that lie about the origin spread alike in all directions, as they must not blur one way
// more than another: it undoes the Cholesky factor of their covariance and keeps its size.
func even(set []sample, place func(*sample) (x, y *float64)) {
	var c covariance
	for i := range set {
		x, y := place(&set[i])
		c.add(*x, *y, 1/float64(len(set)))
	}
	determinant := c.xx*c.yy - c.xy*c.xy
	if determinant <= 0 {
		return // fewer than two places
	}
	size := math.Sqrt((c.xx + c.yy) / 2)
	a := math.Sqrt(c.xx)
	b, d := c.xy/a, math.Sqrt(determinant)/a
	for i := range set {
		x, y := place(&set[i])
		u := *x / a
		*x, *y = size*u, size*(*y-b*u)/d
	}
}

// Diffraction is followed to airyReach radii of the first dark ring, which holds 95 % of the light; the rest,
// a faint veil, is shared out over that.
const airyReach = 4.0

// airyTable holds the share of the light within each radius: 1 - J0²(v) - J1²(v) (Rayleigh; Born and Wolf,
// Principles of Optics, 8.5.2), v = 3.8317 at the first dark ring.
var airyTable = func() (table [1025]float64) {
	const firstDark = 3.8317059702075125 // first zero of J1
	for i := range table {
		v := firstDark * airyReach * float64(i) / float64(len(table)-1)
		table[i] = 1 - math.J0(v)*math.J0(v) - math.J1(v)*math.J1(v)
	}
	return table
}()

// airyRadius is the radius that holds a share u of the followed light, in radii of the first dark ring.
func airyRadius(u float64) float64 {
	want := max(0, min(1, u)) * airyTable[len(airyTable)-1]
	low, high := 0, len(airyTable)-1
	for high-low > 1 {
		if middle := (low + high) / 2; airyTable[middle] < want {
			low = middle
		} else {
			high = middle
		}
	}
	part := 0.0
	if d := airyTable[high] - airyTable[low]; d > 0 {
		part = (want - airyTable[low]) / d
	}
	return airyReach * (float64(low) + part) / float64(len(airyTable)-1)
}
