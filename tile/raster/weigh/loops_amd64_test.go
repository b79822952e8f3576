package weigh

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// both runs something with the loops in AVX2 and in Go.
func both(do func() any) (fast, inGo any) {
	was := avx2
	defer func() { avx2 = was }()
	fast = do()
	avx2 = false
	return fast, do()
}

// agree holds the loops in AVX2 and those in Go together, bit by bit, over sizes, rows, weights and paths
// that a seed makes up.
func agree(t *testing.T, seed uint64) {
	random := rand.New(rand.NewPCG(seed, 42))
	n := 1 + random.IntN(90)
	rows, stride := 2+2*random.IntN(12), n+random.IntN(20)
	src, down := harsh(random, stride*rows), randomWeights(random, rows)
	fast, inGo := both(func() any {
		dst := make([]int16, n)
		Down(dst, src, stride, down)
		return dst
	})
	require.Equal(t, inGo, fast, "down: seed %d", seed)

	each := 1 + random.IntN(30)
	row := make([]int16, each+40+tapsAtOnce)
	for i := range row {
		row[i] = int16(random.IntN(1<<15) - 1<<13)
	}
	taps := randomTaps(random, n, each, each+40)
	fast, inGo = both(func() any {
		dst := make([]byte, n)
		Across(dst, row, taps)
		return dst
	})
	require.Equal(t, inGo, fast, "across: seed %d", seed)

	pixels := make([]int16, 4*len(row))
	for i := range pixels {
		pixels[i] = int16(random.IntN(1<<15) - 1<<13)
	}
	fast, inGo = both(func() any {
		dst := make([]byte, 4*n)
		AcrossPixels(dst, pixels, taps)
		return dst
	})
	require.Equal(t, inGo, fast, "across pixels: seed %d", seed)

	w, h := KernelTaps+random.IntN(60), KernelTaps+random.IntN(40)
	picture, kernel, path := harsh(random, w*h+Slack), randomKernel(random), randomPath(random, w, h, n)
	fast, inGo = both(func() any {
		dst := make([]byte, n)
		LookUp(dst, picture, w, path, kernel)
		return dst
	})
	require.Equal(t, inGo, fast, "looked up: seed %d", seed)

	colour := harsh(random, 4*(w*h+Slack))
	fast, inGo = both(func() any {
		dst := make([]byte, 4*n)
		LookUpPixels(dst, colour, 4*w, path, kernel)
		return dst
	})
	require.Equal(t, inGo, fast, "pixels looked up: seed %d", seed)
}

func TestLoopsAgree(t *testing.T) {
	for seed := range uint64(2000) {
		agree(t, seed)
	}
}

func FuzzLoopsAgree(f *testing.F) {
	for seed := range uint64(10) {
		f.Add(seed)
	}
	f.Fuzz(agree)
}
