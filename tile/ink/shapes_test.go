package ink

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCircleIsRound(t *testing.T) {
	for _, radius := range []float64{0.5, 20, 900} {
		path := Circle(Point{3, 4}, radius, 0.7)
		require.True(t, path.closed())
		require.InDelta(t, 3+radius*math.Cos(0.7), path[0].X, 1e-9)
		for i := 1; i < len(path); i++ {
			middle := between(path[i-1], path[i], 0.5)
			require.InDelta(t, radius, apart(Point{3, 4}, path[i]), 1e-9)
			require.InDelta(t, radius, apart(Point{3, 4}, middle), 0.0201, "a chord of radius %g", radius)
		}
	}
}

func TestAlongAPath(t *testing.T) {
	path := Path{{0, 0}, {30, 0}, {30, 10}}
	require.Equal(t, 40.0, path.Length())
	require.Equal(t, Point{20, 0}, path.At(0.5))
	require.Equal(t, Point{30, 5}, path.At(0.875))
	require.Equal(t, Point{30, 10}, path.At(1))
	require.Equal(t, path[0], path.Reversed().At(1))
}

// LengthInside against counting a hundred thousand points of the line.
func TestLengthInside(t *testing.T) {
	const seed, steps = 42, 100_000
	random := rand.New(rand.NewSource(seed))
	r := Rect{20, 30, 70, 60}
	inside := 0
	for range 60 {
		p := Point{100 * random.Float64(), 100 * random.Float64()}
		q := Point{100 * random.Float64(), 100 * random.Float64()}
		if random.Intn(4) == 0 {
			q.Y = p.Y
		}
		n := 0
		for i := range steps {
			if r.Holds(between(p, q, (float64(i)+0.5)/steps)) {
				n++
			}
		}
		inside += n
		require.InDelta(t, apart(p, q)*float64(n)/steps, r.LengthInside(p, q), 0.01, "seed %d: %v to %v", seed, p, q)
	}
	require.Positive(t, inside)
	require.Zero(t, r.LengthInside(Point{40, 40}, Point{40, 40}))
}

func TestRectangles(t *testing.T) {
	r := Rect{10, 20, 30, 40}
	require.True(t, r.Overlaps(Rect{29, 39, 50, 50}))
	require.False(t, r.Overlaps(Rect{30, 20, 50, 40}), "sides that touch share no area")
	require.True(t, r.Holds(Point{30, 40}))
	require.Equal(t, Rect{8, 18, 32, 42}, r.Grow(2))
	require.Equal(t, 80.0, r.Outline().Length())
}

// Clipping against a straight route: the area of a clipped triangle, counted by points inside both.
func TestClipped(t *testing.T) {
	const seed, grid = 43, 400
	random := rand.New(rand.NewSource(seed))
	r := Rect{20, 30, 70, 60}
	area := func(p Path) float64 { // the shoelace formula
		sum := 0.0
		for i := range p {
			q := p[(i+1)%len(p)]
			sum += p[i].X*q.Y - q.X*p[i].Y
		}
		return math.Abs(sum) / 2
	}
	for range 40 {
		var c [3]Point
		for i := range c {
			c[i] = Point{200*random.Float64() - 50, 200*random.Float64() - 50}
		}
		inside := func(p Point) bool {
			left := 0
			for i := range c {
				a, b := c[i], c[(i+1)%3]
				if (b.X-a.X)*(p.Y-a.Y) > (b.Y-a.Y)*(p.X-a.X) {
					left++
				}
			}
			return left == 0 || left == 3
		}
		n := 0
		for j := range grid {
			for i := range grid {
				if inside(Point{r.Left + 50*(float64(i)+0.5)/grid, r.Top + 30*(float64(j)+0.5)/grid}) {
					n++
				}
			}
		}
		require.InDelta(t, 50*30*float64(n)/grid/grid, area(r.clipped(c[:])), 2, "seed %d: %v", seed, c)
	}
	require.Nil(t, r.clipped(Path{{1, 1}, {math.NaN(), 50}, {50, 50}}))
}
