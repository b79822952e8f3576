package jpeg

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Against the formulas in floating point: off by the half level that is rounded and by what the constants
// are, under 2^-17 of each component.
func TestBandOfRGBA(t *testing.T) {
	const seed = 12
	rng := rand.New(rand.NewPCG(seed, 0))
	const bound = 0.5 + 3*255.0/(1<<17)
	corners := func(_, _, _ int) byte { return -byte(rng.Uint32() & 1) }
	for i := range 300 {
		at := noise(rng)
		if i%3 == 0 {
			at = corners
		}
		w, h, step := 1+rng.IntN(20), 1+rng.IntN(BlockPx), 1+rng.IntN(2)
		m := paint(1, image.Rect(-3, 5, w-3, 5+h), at).(*image.RGBA)
		band := newPlanes(w, h, step)
		band.fromRGBA(m, m.Rect.Min.Y, step)
		for k, want := range truth(m, []image.YCbCrSubsampleRatio{full, half}[step-1]) {
			for j, v := range want {
				require.LessOrEqual(t, math.Abs(float64(band[k].pix[j])-min(v, 255)), bound,
					"seed %d, %d x %d, plane %d, pixel %d: %d, want %f", seed, w, h, k, j, band[k].pix[j], v)
			}
		}
	}
}

func TestBandOfAnySubsampling(t *testing.T) {
	const seed = 13
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		w, h, step := 1+rng.IntN(20), 1+rng.IntN(BlockPx), 1+rng.IntN(2)
		// up to the left of 0, but not all: image.NewYCbCr leaves no room for that
		x, y := rng.IntN(11)-min(w-1, 5), rng.IntN(11)-min(h-1, 5)
		m := paint(2+rng.IntN(len(ratios)), image.Rect(x, y, x+w, y+h), noise(rng)).(*image.YCbCr)
		band := newPlanes(w, h, step)
		band.fromYCbCr(m, y, step, chromaColumns(m))
		for k, want := range truth(m, []image.YCbCrSubsampleRatio{full, half}[step-1]) {
			for j, v := range want {
				require.Equal(t, math.Floor(v+0.5), float64(band[k].pix[j]), "seed %d, %v of %v, plane %d, pixel %d", seed,
					m.Rect, m.SubsampleRatio, k, j)
			}
		}
	}
}
