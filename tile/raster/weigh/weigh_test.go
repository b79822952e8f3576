package weigh

import (
	"bytes"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// randomWeights are n weights that add up to One, some of them below 0, as those of a kernel with lobes do.
func randomWeights(random *rand.Rand, n int) []int16 {
	weights := make([]int16, n)
	left := One
	for i := range weights[:n-1] {
		w := (random.IntN(2*One) - One/2) / n
		weights[i], left = int16(w), left-w
	}
	weights[n-1] = int16(left)
	return weights
}

// harsh are bytes of which most are 0 or 255.
func harsh(random *rand.Rand, n int) []byte {
	all := make([]byte, n)
	for i := range all {
		all[i] = []byte{0, 255, byte(random.IntN(256))}[random.IntN(3)]
	}
	return all
}

func randomTaps(random *rand.Rand, n, each, row int) *Taps {
	t := NewTaps(n, each)
	for i := range n {
		count := 1 + random.IntN(each)
		t.Set(i, random.IntN(row-each), randomWeights(random, count))
	}
	return t
}

// randomKernel is a kernel whose weights differ from phase to phase.
func randomKernel(random *rand.Rand) *Kernel {
	k := new(Kernel)
	for i := range k {
		copy(k[i][:], randomWeights(random, KernelTaps))
	}
	return k
}

// The sums by their definition, in float64: what is rounded between the axes is half of 1/64, and at the end
// half a level.
func TestAgainstFloat(t *testing.T) {
	random := rand.New(rand.NewPCG(40, 0))
	level := func(v float64) float64 { return max(0, min(255, v)) }
	t.Run("down and across", func(t *testing.T) {
		for range 50 {
			n, rows, each := 40+random.IntN(300), 2+2*random.IntN(12), 1+random.IntN(20)
			src, down := harsh(random, n*rows), randomWeights(random, rows)
			middle := make([]int16, n)
			Down(middle, src, n, down)
			real := make([]float64, n)
			for i := range real {
				for k, w := range down {
					real[i] += float64(w) / One * float64(src[k*n+i])
				}
				require.InDelta(t, real[i], float64(middle[i])/(1<<middleBits), 0.5/(1<<middleBits))
			}
			taps := randomTaps(random, 60, each, n-8)
			got := make([]byte, 60)
			Across(got, middle, taps)
			for i, v := range got {
				sum := 0.0
				for k, w := range taps.weights[i*taps.each:][:taps.each] {
					sum += float64(w) / One * real[int(taps.first[i])+k]
				}
				require.InDelta(t, level(sum), float64(v), 0.5+0.02)
			}
		}
	})
	t.Run("across pixels: each channel by itself", func(t *testing.T) {
		taps := randomTaps(random, 50, 20, 80)
		var channels [4][]int16
		pixels := make([]int16, 4*90)
		for i := range pixels {
			pixels[i] = int16(random.IntN(255 << middleBits))
			channels[i%4] = append(channels[i%4], pixels[i])
		}
		got, want := make([]byte, 4*50), make([]byte, 50)
		AcrossPixels(got, pixels, taps)
		for c, channel := range channels {
			Across(want, channel, taps)
			for i, v := range want {
				require.Equal(t, v, got[4*i+c])
			}
		}
	})
	t.Run("looked up", func(t *testing.T) {
		const w, h = 60, 40
		kernel := randomKernel(random)
		for range 300 {
			src := harsh(random, w*h+Slack)
			path := randomPath(random, w, h, 30)
			got := make([]byte, 30)
			LookUp(got, src, w, path, kernel)
			for i, v := range got {
				// The place between its knots as a number, and its phase as the whole 128ths in it.
				piece, part := (path.Skip+i)>>path.Shift, float64((path.Skip+i)&(1<<path.Shift-1))/float64(int(1)<<path.Shift)
				between := func(v []int) float64 {
					return (float64(v[piece])*(1-part) + float64(v[piece+1])*part) / math.Pow(2, float64(path.Places))
				}
				x, y := between(path.X), between(path.Y)
				wx, wy := kernel[int(128*(x-math.Floor(x)))], kernel[int(128*(y-math.Floor(y)))]
				sum := 0.0
				for k := range KernelTaps {
					for l := range KernelTaps {
						sum += float64(wy[k]) / One * float64(wx[l]) / One * float64(src[(int(y)+k)*w+int(x)+l])
					}
				}
				require.InDelta(t, level(sum), float64(v), 0.5+0.02)
			}
		}
	})
}

// Four channels looked up at once are each looked up by itself.
func TestLookUpPixels(t *testing.T) {
	const w, h, n = 60, 40, 30
	random := rand.New(rand.NewPCG(43, 0))
	kernel := randomKernel(random)
	for range 50 {
		pixels := harsh(random, 4*(w*h+Slack))
		path := randomPath(random, w, h, n)
		got, want := make([]byte, 4*n), make([]byte, n)
		LookUpPixels(got, pixels, 4*w, path, kernel)
		for c := range 4 {
			channel := make([]byte, w*h+Slack)
			for i := range channel {
				channel[i] = pixels[4*i+c]
			}
			LookUp(want, channel, w, path, kernel)
			for i, v := range want {
				require.Equal(t, v, got[4*i+c])
			}
		}
	}
}

// randomPath is a path of n places in a picture.
func randomPath(random *rand.Rand, w, h, n int) Path {
	p := Path{Shift: uint(random.IntN(5)), Places: PhaseBits + uint(random.IntN(20))}
	p.Skip = random.IntN(1 << p.Shift)
	for range (p.Skip+n-1)>>p.Shift + 2 {
		p.X = append(p.X, random.IntN((w-KernelTaps+1)<<p.Places))
		p.Y = append(p.Y, random.IntN((h-KernelTaps+1)<<p.Places))
	}
	return p
}

// Nothing is read beyond what was given: the loops in assembly would not notice.
func TestRefusesToReadBeyond(t *testing.T) {
	taps := NewTaps(3, 5)
	taps.Set(2, 10, []int16{One})
	kernel := new(Kernel)
	path := func(skip int, xy ...int) Path {
		p := Path{Shift: 4, Places: 16, Skip: skip}
		for i := 0; i < len(xy); i += 2 {
			p.X, p.Y = append(p.X, xy[i]<<16), append(p.Y, xy[i+1]<<16)
		}
		return p
	}
	// The loop in AVX2 reads eight bytes of a row at once: two more than there are taps.
	src, wide := make([]byte, 9*20+14+8), make([]byte, 4*(9*20+14+8))
	for _, c := range []struct {
		name string
		do   func()
		fits bool
	}{
		{"down", func() { Down(make([]int16, 20), make([]byte, 3*30+20), 30, make([]int16, 4)) }, true},
		{"down: a row too short", func() { Down(make([]int16, 20), make([]byte, 3*30+19), 30, make([]int16, 4)) }, false},
		{"down: an odd number of rows", func() { Down(make([]int16, 20), make([]byte, 300), 30, make([]int16, 3)) }, false},
		{"down: rows upward", func() { Down(make([]int16, 20), make([]byte, 300), -1, make([]int16, 2)) }, false},
		{"across", func() { Across(make([]byte, 3), make([]int16, 18), taps) }, true},
		{"across: a row too short", func() { Across(make([]byte, 3), make([]int16, 17), taps) }, false},
		{"across: more places than taps", func() { Across(make([]byte, 4), make([]int16, 18), taps) }, false},
		{"across pixels", func() { AcrossPixels(make([]byte, 12), make([]int16, 72), taps) }, true},
		{"across pixels: a row too short", func() { AcrossPixels(make([]byte, 12), make([]int16, 71), taps) }, false},
		{"across pixels: less room than taps", func() { AcrossPixels(make([]byte, 11), make([]int16, 72), taps) }, false},
		{"taps before the row", func() { NewTaps(1, 1).Set(0, -1, []int16{One}) }, false},
		{"more taps than there is room for", func() { NewTaps(1, 8).Set(0, 0, make([]int16, 9)) }, false},
		{"looked up", func() { LookUp(make([]byte, 16), src, 20, path(0, 0, 0, 14, 4), kernel) }, true},
		{"looked up: past the last row", func() { LookUp(make([]byte, 16), src, 20, path(0, 0, 5, 14, 4), kernel) }, false},
		{"looked up: past the last pixel", func() { LookUp(make([]byte, 16), src, 20, path(0, 0, 4, 15, 4), kernel) }, false},
		{"looked up: from before the first", func() { LookUp(make([]byte, 2), src, 20, path(0, -1, 0, 4, 0), kernel) },
			false},
		{"looked up: to above the first", func() { LookUp(make([]byte, 2), src, 20, path(0, 1, 0, 4, -1), kernel) }, false},
		{"looked up: past the last knot", func() { LookUp(make([]byte, 17), src, 20, path(0, 0, 0, 4, 4), kernel) }, false},
		{"looked up: past the last knot, for skipping",
			func() { LookUp(make([]byte, 16), src, 20, path(1, 0, 0, 4, 4), kernel) }, false},
		{"looked up: skipping a whole piece",
			func() { LookUp(make([]byte, 2), src, 20, path(16, 0, 0, 4, 4, 4, 4), kernel) }, false},
		{"looked up: a byte too few", func() {
			LookUp(make([]byte, 16), src[:len(src)-1], 20, path(0, 0, 0, 14, 4),
				kernel)
		}, false},
		{"looked up: rows upward", func() { LookUp(make([]byte, 1), src, -1, path(0, 0, 0, 0, 0), kernel) }, false},
		{"looked up: skipping backward", func() { LookUp(make([]byte, 2), src, 20, path(-1, 4, 4, 4, 4), kernel) }, false},
		{"looked up: more places than there are bits", func() {
			LookUp(make([]byte, 1), src, 20, Path{X: make([]int, 2), Y: make([]int, 2), Places: 63}, kernel)
		}, false},
		{"pixels looked up", func() { LookUpPixels(make([]byte, 16*4), wide, 80, path(0, 0, 0, 14, 4), kernel) }, true},
		{"pixels looked up: past the last row",
			func() { LookUpPixels(make([]byte, 16*4), wide, 80, path(0, 0, 5, 14, 4), kernel) }, false},
		{"pixels looked up: past the last pixel",
			func() { LookUpPixels(make([]byte, 16*4), wide, 80, path(0, 0, 4, 15, 4), kernel) }, false},
		{"pixels looked up: part of one", func() { LookUpPixels(make([]byte, 15), wide, 80, path(0, 0, 0, 14, 4), kernel) },
			false},
		{"looked up: no room for a phase", func() {
			LookUp(make([]byte, 1), src, 20, Path{X: make([]int, 2), Y: make([]int, 2), Places: PhaseBits - 1}, kernel)
		}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.fits {
				require.NotPanics(t, c.do)
			} else {
				require.Panics(t, c.do)
			}
		})
	}
}

// Nothing is written before or after dst, however short it is.
func TestWritesNothingOutside(t *testing.T) {
	const spare, mark = 32, 77
	random := rand.New(rand.NewPCG(44, 0))
	src, kernel := harsh(random, 4*(60*40+Slack)), randomKernel(random)
	row := make([]int16, 4*100)
	for n := 1; n <= 70; n++ {
		taps, path, down := randomTaps(random, n, 8, 90), randomPath(random, 60, 40, n), randomWeights(random, 4)
		for name, c := range map[string]struct {
			bytes int
			do    func(dst []byte)
		}{
			"across":           {n, func(dst []byte) { Across(dst, row, taps) }},
			"across pixels":    {4 * n, func(dst []byte) { AcrossPixels(dst, row, taps) }},
			"looked up":        {n, func(dst []byte) { LookUp(dst, src, 60, path, kernel) }},
			"pixels looked up": {4 * n, func(dst []byte) { LookUpPixels(dst, src, 4*60, path, kernel) }},
		} {
			all := bytes.Repeat([]byte{mark}, spare+c.bytes+spare)
			c.do(all[spare:][:c.bytes])
			outside := append(all[:spare:spare], all[spare+c.bytes:]...)
			require.Equal(t, bytes.Repeat([]byte{mark}, 2*spare), outside, "%s: %d places", name, n)
		}
		middle := slices.Repeat([]int16{mark}, spare+n+spare)
		Down(middle[spare:][:n], src, 100, down)
		outside := append(middle[:spare:spare], middle[spare+n:]...)
		require.Equal(t, slices.Repeat([]int16{mark}, 2*spare), outside, "down: %d places", n)
	}
}

// Taps that are set again forget what they were.
func TestTapsSetAgain(t *testing.T) {
	taps := NewTaps(1, 4)
	taps.Set(0, 0, []int16{-One, One, One})
	taps.Set(0, 1, []int16{One})
	got := make([]byte, 1)
	Across(got, []int16{0, 9 << middleBits, 200 << middleBits, 100 << middleBits, 0, 0, 0, 0, 0}, taps)
	require.Equal(t, []byte{9}, got)
}

func BenchmarkWeigh(b *testing.B) {
	random := rand.New(rand.NewPCG(41, 0))
	src := harsh(random, 1<<20)
	row, out := make([]int16, 6000), make([]byte, 2000)
	wide, pixels := make([]int16, 4*6000), make([]byte, 4*2000)
	taps := randomTaps(random, 2000, 18, 5900)
	kernel := randomKernel(random)
	down := randomWeights(random, 18)
	path := Path{Shift: 3, Places: 19}
	for i := range len(out)/8 + 1 {
		path.X, path.Y = append(path.X, (5<<19)+i*(5<<18)), append(path.Y, 3<<19+i*77777)
	}
	for _, c := range []struct {
		name   string
		places int
		do     func()
	}{
		{"down, 18 rows", len(row), func() { Down(row, src, 6000, down) }},
		{"across, 18 taps", len(out), func() { Across(out, row, taps) }},
		{"across pixels, 18 taps", len(out), func() { AcrossPixels(pixels, wide, taps) }},
		{"looked up", len(out), func() { LookUp(out, src, 3000, path, kernel) }},
		{"pixels looked up", len(out), func() { LookUpPixels(pixels, src, 12000, path, kernel) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				c.do()
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(c.places), "ns/place")
		})
	}
}
