package proof

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"
)

// airyQuantiles are how far diffraction throws rays, in radii of the first dark ring, all of its tail included: of n
// equal shares of the light, within v of which there is 1 - J0²(v) - J1²(v) (Rayleigh; Born and Wolf, Principles of
// Optics, 8.5.2), the middles, found by halving.
func airyQuantiles(n int) []float64 {
	out := make([]float64, n)
	for k := range out {
		low, high := 0.0, 1e5
		for high-low > 1e-4 {
			if v := (low + high) / 2; 1-math.J0(v)*math.J0(v)-math.J1(v)*math.J1(v) < (float64(k)+0.5)/float64(n) {
				low = v
			} else {
				high = v
			}
		}
		out[k] = low / 3.8317059702075125
	}
	return out
}

// A bright dot on a dark board, seen near the drop's rim at f/22, where it is hardly wider than what one ray of a
// hundred stands for: against many rays at random, which share nothing with a set but the trace through the drop.
// What is left is the chance of few rays, and 3 % at the peak since diffraction's tail is shared out over its
// middle. Sets in which pupil, pixel and diffraction go together (those of 48 rays once did so by 0.7) are off by
// twice as much.
func TestBrightDotNearTheRim(t *testing.T) {
	const (
		seed, rays, aroundPx, sidePx = 22, 1000, 8, 2000
		dotMM                        = 10.0
	)
	random, thrown := rand.New(rand.NewSource(seed)), airyQuantiles(4096)
	rms, peaks, n := map[int]float64{}, map[int]float64{}, 0.0
	for _, fill := range []float64{0.87, 0.92} {
		for _, aside := range []float64{0, 0.5, 1.1, math.Pi / 2} {
			p := plan(t, func(s *layout.Setup) {
				s.Camera.FNumber, s.Fill, s.Proportions = 22, 0.97, 1
				s.Camera.WidthPx, s.Camera.HeightPx = 960, 640
			})
			sin, cos := math.Sincos(aside)
			reachMM, ok := p.Sight().ReachMM(fill)
			require.True(t, ok)
			// The picture lies turned by half a turn on the board.
			m := image.NewGray(image.Rect(0, 0, sidePx, sidePx))
			pxMM := p.Picture.WidthMM / sidePx
			away := func(x, y int) float64 {
				return math.Hypot((float64(x)+0.5-sidePx/2)*pxMM+reachMM*cos, (float64(y)+0.5-sidePx/2)*pxMM+reachMM*sin)
			}
			reachPx := int(dotMM/2/pxMM) + 2 // rounded up, and as the middle is rounded
			dotX, dotY := sidePx/2-int(reachMM*cos/pxMM), sidePx/2-int(reachMM*sin/pxMM)
			for y := dotY - reachPx; y <= dotY+reachPx; y++ {
				for x := dotX - reachPx; x <= dotX+reachPx; x++ {
					if away(x, y) < dotMM/2 {
						m.SetGray(x, y, color.Gray{255})
					}
				}
			}
			picture := texture.New(&artwork.Picture{Image: m})
			v := Scene{Plan: p, Camera: p.Camera, Picture: picture}.view()
			atPx := p.Sight().ApparentRadiusMM() * fill / p.Camera.PixelMM()
			left, top := int(480-atPx*cos)-aroundPx, int(320-atPx*sin)-aroundPx
			tracer := p.Sight().Tracer()
			var want [2*aroundPx + 1][2*aroundPx + 1]float64
			for j := range want {
				for i := range want[j] {
					for range rays {
						turn, airyPx := 2*math.Pi*random.Float64(), thrown[random.Intn(len(thrown))]*p.Camera.AiryPx()/2
						on, outMM := 2*math.Pi*random.Float64(), math.Sqrt(random.Float64())*p.Camera.PupilMM()/2
						l, ok := tracer.Trace(v.lens.ray(left+i, top+j, &aim{
							xPx: random.Float64() - 0.5 + airyPx*math.Cos(turn), yPx: random.Float64() - 0.5 + airyPx*math.Sin(turn),
							pupilXMM: outMM * math.Cos(on), pupilYMM: outMM * math.Sin(on),
						}))
						if ok && l.Through && math.Hypot(l.XMM-reachMM*cos, l.YMM-reachMM*sin) < dotMM/2 {
							want[j][i] += l.Transmittance / rays
						}
					}
				}
			}
			n++
			for _, samples := range []int{48, 96} {
				v := Scene{Plan: p, Camera: p.Camera, Picture: picture, Samples: samples}.view()
				v.lattice.step, v.beside.step = 1, 1 // each pixel by itself
				var off, all, peak, wantPeak float64
				for j := range want {
					for i := range want[j] {
						got := float64(v.pixel(left+i, top+j)[1])
						off, all = off+(got-want[j][i])*(got-want[j][i]), all+want[j][i]*want[j][i]
						peak, wantPeak = max(peak, got), max(wantPeak, want[j][i])
					}
				}
				rms[samples] += math.Sqrt(off / all)
				peaks[samples] += (peak/wantPeak - 1) * (peak/wantPeak - 1)
			}
		}
	}
	for _, c := range []struct {
		samples   int
		rms, peak float64
	}{{48, 0.15, 0.1}, {96, 0.14, 0.09}} {
		t.Logf("seed %d: with %d rays off by %.3f of the dot, its peak by %.3f", seed, c.samples, rms[c.samples]/n,
			math.Sqrt(peaks[c.samples]/n))
		require.Less(t, rms[c.samples]/n, c.rms, "%d rays", c.samples)
		require.Less(t, math.Sqrt(peaks[c.samples]/n), c.peak, "%d rays", c.samples)
	}
}
