package jpeg

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// at returns the coefficient (v, u) as S(v, u) of A.3.3.
func (c *coefficients) at(v, u int) float64 {
	s := step{}
	s.word, s.shift = place(v, u)
	return float64(s.coefficient(c)) / scale
}

// cosines are those of (2 x + 1) u pi/16, by u and x.
var cosines = func() (c [8][8]float64) {
	for u := range 8 {
		for x := range 8 {
			c[u][x] = math.Cos(float64((2*x+1)*u) * math.Pi / 16)
		}
	}
	return c
}()

// plainDCT is the formula of A.3.3 (recalled from memory) after the level shift of A.3.1.
func plainDCT(pix []byte, stride, v, u int) float64 {
	sum := 0.0
	for y := range 8 {
		for x := range 8 {
			sum += (float64(pix[y*stride+x]) - 128) * cosines[u][x] * cosines[v][y]
		}
	}
	for _, k := range []int{u, v} {
		if k == 0 {
			sum /= math.Sqrt2
		}
	}
	return sum / 4
}

// wave is black and white where the wave (v, u) is above and below zero: of all blocks, the one with the
// greatest coefficient there.
func wave(v, u int, positive bool) []byte {
	pix := make([]byte, 64)
	for y := range 8 {
		for x := range 8 {
			if (cosines[u][x]*cosines[v][y] > 0) == positive {
				pix[8*y+x] = 255
			}
		}
	}
	return pix
}

func TestTransformIsTheDCT(t *testing.T) {
	// Coefficients are off by half a unit for dropped bits in every number between the passes, and in each
	// pass by 0.15 of a unit's part of 1020 at most, what the numbers come to that are multiplied.
	const bound = (1<<drop)/2.0/unit + 2*1020*0.15/unit
	worst := 0.0
	check := func(pix []byte, stride int) {
		var c coefficients
		c.transform(pix, stride)
		for v := range 8 {
			for u := range 8 {
				want := plainDCT(pix, stride, v, u)
				worst = max(worst, math.Abs(c.at(v, u)-want))
				require.InDelta(t, want, c.at(v, u), bound, "S(%d, %d) of %v", v, u, pix)
			}
		}
	}
	for v := range 8 {
		for u := range 8 {
			check(wave(v, u, true), 8)
			check(wave(v, u, false), 8)
		}
	}
	const seed = 1
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		stride := 8 + rng.IntN(5)
		pix := make([]byte, 7*stride+8)
		spread := 1 + rng.IntN(256)
		for i := range pix {
			pix[i] = byte(rng.IntN(spread))
		}
		check(pix, stride)
	}
	t.Logf("seed %d: worst %.4f", seed, worst)
}

func TestTransformOfOneLevel(t *testing.T) {
	for level := range 256 {
		pix := make([]byte, 64)
		for i := range pix {
			pix[i] = byte(level)
		}
		var c coefficients
		c.transform(pix, 8)
		for v := range 8 {
			for u := range 8 {
				want := 0.0
				if v == 0 && u == 0 {
					want = 8 * float64(level-128)
				}
				require.InDelta(t, want, c.at(v, u), 0.03, "level %d (%d, %d)", level, v, u)
			}
		}
	}
}
