package loops

import (
	"math"
	"sort"
	"testing"

	"github.com/stretchr/testify/require"
)

// profile is a hanging drop of water by the loop's own integration, written apart from package flip: along the arc
// from the tip, where flip goes up the axis by the square of the radius.
type profile struct {
	arc                []onArc // from the tip to where the drop is held
	halfWidth, equator float64 // the greatest radius, and its height above the tip
}

// onArc is a place of the profile: radius, height above the tip, and the angle to the level of the way on.
type onArc struct{ x, z, angle float64 }

// arcStep is short enough that chords miss the arc by under a ten-millionth of a millimetre, and angles between steps
// are off by as little: at 15 cm a ray lands a thousandth of a board pixel off at most.
const arcStep = 0.001

// capillary is the capillary length of water at 20 degrees Celsius in air, mm: of 72.74 mN/m (IAPWS R1-76, 2014) and
// 998.2 kg/m³ less air's 1.2 (both from memory), at 9.80665 m/s².
var capillary = 1000 * math.Sqrt(0.07274/((998.2-1.2)*9.80665))

// ahead goes a step along the arc, by Runge and Kutta's fourth order: the sum of both curvatures is what it is at the
// tip, 2 over its radius, less the height over the capillary length's square (Young and Laplace).
func (a onArc) ahead(tip, step float64) onArc {
	slope := func(a onArc) onArc {
		around := 1 / tip // at the tip itself both curvatures are alike
		if a.x > 0 {
			around = math.Sin(a.angle) / a.x
		}
		return onArc{math.Cos(a.angle), math.Sin(a.angle), 2/tip - a.z/(capillary*capillary) - around}
	}
	on := func(by onArc, k float64) onArc { return onArc{a.x + k*by.x, a.z + k*by.z, a.angle + k*by.angle} }
	k1 := slope(a)
	k2 := slope(on(k1, step/2))
	k3 := slope(on(k2, step/2))
	k4 := slope(on(k3, step))
	return on(onArc{k1.x + 2*k2.x + 2*k3.x + k4.x, k1.z + 2*k2.z + 2*k3.z + k4.z,
		k1.angle + 2*k2.angle + 2*k3.angle + k4.angle}, step/6)
}

// hangingProfile is the drop that is so wide and held by such a radius: the tip's radius is found by halves.
func hangingProfile(halfWidth, held float64) (p profile) {
	widest := func(tip, step float64) (at onArc) {
		for next := at; next.angle < math.Pi/2; next = at.ahead(tip, step) {
			at = next
		}
		// across the last step, on which the way turns upright, as the arc that it is
		past := at.ahead(tip, step)
		return at.ahead(tip, step*(math.Pi/2-at.angle)/(past.angle-at.angle))
	}
	low, high := halfWidth/4, halfWidth
	for range 40 {
		if tip := (low + high) / 2; widest(tip, 5*arcStep).x < halfWidth {
			low = tip
		} else {
			high = tip
		}
	}
	tip := (low + high) / 2
	equator := widest(tip, arcStep)
	p.halfWidth, p.equator = equator.x, equator.z
	for at := (onArc{}); at.z <= p.equator || at.x > held; at = at.ahead(tip, arcStep) {
		p.arc = append(p.arc, at)
	}
	return p
}

// roundHalfHeight is that of the drop's round: no lower than the tip, and no higher than where the side, which leans
// in further and further, begins to lean out again.
func (p profile) roundHalfHeight() float64 {
	k := sort.Search(len(p.arc)-1, func(k int) bool { return p.arc[k].z > p.equator })
	for k+1 < len(p.arc) && p.arc[k+1].angle > p.arc[k].angle {
		k++
	}
	return min(p.equator, p.arc[k].z-p.equator)
}

// at is the radius at a height above the tip, and the angle; 0 and none past the drop's ends.
func (p profile) at(z float64) (radius, angle float64) {
	k := sort.Search(len(p.arc), func(k int) bool { return p.arc[k].z > z })
	if k == 0 || k == len(p.arc) {
		return 0, 0
	}
	a, b := p.arc[k-1], p.arc[k]
	share := (z - a.z) / (b.z - a.z)
	return a.x + share*(b.x-a.x), a.angle + share*(b.angle-a.angle)
}

// lookThrough is where on the backdrop's plane the camera sees through (x, y) of the plane through the drop's middle,
// y down. It marches along the ray to where the surface is passed, closes in by halves, and bends the ray by the part
// of it across the normal.
func (p profile) lookThrough(index, camera, distance, x, y float64) (bx, by float64, ok bool) {
	type vec [3]float64
	plus := func(a vec, k float64, b vec) vec { return vec{a[0] + k*b[0], a[1] + k*b[1], a[2] + k*b[2]} }
	dot := func(a, b vec) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	unit := func(a vec) vec { return plus(vec{}, 1/math.Sqrt(dot(a, a)), a) }
	inside := func(at vec) bool { radius, _ := p.at(p.equator - at[1]); return math.Hypot(at[0], at[2]) < radius }
	passes := func(from, dir vec, is bool) (at vec, ok bool) {
		const stride = 0.02
		k, most := 1, int(4*p.halfWidth/stride)
		for ; k < most && inside(plus(from, float64(k)*stride, dir)) == is; k++ {
		}
		a, b := float64(k-1)*stride, float64(k)*stride
		for range 40 {
			if middle := (a + b) / 2; inside(plus(from, middle, dir)) == is {
				a = middle
			} else {
				b = middle
			}
		}
		return plus(from, (a+b)/2, dir), k < most
	}
	bend := func(at, dir vec, ratio float64) (vec, bool) {
		_, angle := p.at(p.equator - at[1])
		out := math.Hypot(at[0], at[2])
		normal := vec{math.Sin(angle) * at[0] / out, math.Cos(angle), math.Sin(angle) * at[2] / out}
		straight := dot(dir, normal)
		across := plus(dir, -straight, normal)
		sin := ratio * math.Sqrt(dot(across, across))
		return plus(plus(vec{}, ratio, across), math.Copysign(math.Sqrt(max(0, 1-sin*sin)), straight), normal), sin < 1
	}
	dir := unit(vec{x, y, camera})
	from := plus(vec{0, 0, -camera}, (camera-1.2*p.halfWidth)/dir[2], dir)
	enters, ok := passes(from, dir, false)
	if !ok {
		return 0, 0, false
	}
	if dir, ok = bend(enters, dir, 1/index); !ok {
		return 0, 0, false
	}
	leaves, ok := passes(plus(enters, 1e-6, dir), dir, true)
	if !ok {
		return 0, 0, false
	}
	if dir, ok = bend(leaves, dir, index); !ok || dir[2] <= 0 {
		return 0, 0, false
	}
	end := plus(leaves, (distance-leaves[2])/dir[2], dir)
	return end[0], end[1], true
}

// Where there is next to no gravity, that is of a tiny drop, the profile is a ball's and its rays are those of the
// loop's other trace.
func TestLoopProfileOfATinyDropIsABall(t *testing.T) {
	const radius = 0.05
	p := hangingProfile(radius, radius/4)
	require.InDelta(t, radius, p.equator, 1e-4*radius)
	for _, c := range [][2]float64{{0, 0.3}, {0.5, -0.4}, {-0.6, 0.5}, {0.1, 0.8}} {
		x, y := c[0]*radius, c[1]*radius
		wantX, wantY, ok := lookThrough("ball", radius, 1, 1.333, 300, 150, x, y)
		require.True(t, ok)
		bx, by, ok := p.lookThrough(1.333, 300, 150, x, y)
		require.True(t, ok)
		require.InDelta(t, wantX, bx, 0.5)
		require.InDelta(t, wantY, by, 0.5)
	}
}
