package raster

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// windows are parts of a grid, of that half-width, that lie wholly on the picture, kernels included: in its
// middle, and aslant, aside and below of it.
func (s scene) windows(g Grid, half int) (all []image.Rectangle) {
	for _, at := range [][2]float64{{0.5, 0.5}, {0.3, 0.3}, {0.24, 0.5}, {0.6, 0.72}, {0.63, 0.4}} {
		r := square(int(at[0]*float64(g.WidthPx)), int(at[1]*float64(g.HeightPx)), half)
		inside := math.Inf(1)
		for _, x := range []int{r.Min.X - 8, r.Max.X + 8} {
			for _, y := range []int{r.Min.Y - 8, r.Max.Y + 8} {
				inside = min(inside, s.at(g, float64(x), float64(y)).InsideMM)
			}
		}
		if inside > 0 {
			all = append(all, r)
		}
	}
	return all
}

// The artwork is sampled from a picture that is known between its pixels too, so that the reference takes
// nothing from any kernel of ours. Where the map shrinks, ours and the reference have the same ideal and may
// differ in how they end it, where it stretches by what a kernel of six pixels misses of the picture between
// them: neither is more than a hundredth of the finest detail, which 40 dB, 2.55 levels RMS, leaves room for,
// with the rounding of artwork and result.
func TestWarpAgainstSupersampling(t *testing.T) {
	const w, h = 900, 600
	for picture, level := range map[string]func(x, y float64) float64{"harbour": harbour(w, h),
		"zone plate": zonePlate(w/2, h/2, 0.2/300)} {
		art := sampled(w, h, level)
		for name, s := range scenes() {
			for _, by := range []float64{0.7, 1, 1.5, 3} {
				g := s.shrinking(w, h, by)
				windows := s.windows(g, 14)
				require.GreaterOrEqual(t, len(windows), 3, "%s, %g to 1", name, by)
				for _, r := range windows {
					got, want := s.source(art, g).Cut(r).(*image.Gray), s.reference(level, w, h, g, r)
					square, shift := 0.0, 0.0
					for i, v := range want {
						off := float64(got.Pix[i]) - v
						square, shift = square+off*off/float64(len(want)), shift+off/float64(len(want))
					}
					psnr := 10 * math.Log10(255*255/square)
					t.Logf("%s, %s, %g to 1, %v: %.1f dB, mean off by %.3f", picture, name, by, r, psnr, shift)
					if !(psnr >= 40 && math.Abs(shift) < 0.2) {
						t.Errorf("%s, %s, %g to 1, %v: %.1f dB, mean off by %.3f", picture, name, by, r, psnr, shift)
					}
				}
			}
		}
	}
}

// Rings that the grid can't show along one of its axes at least, by half as many again as its finest: what is
// left of them are false rings, and must be 40 dB below. Nearer to what the grid can show, a filter of three
// lobes passes more.
func TestWarpedZonePlateDoesNotAlias(t *testing.T) {
	const w, h = 1200, 800
	const beyond = 1.5
	// about the middle of the left side, so that the picture's middle, which shrinks most, has fine rings
	const grows = 0.6 / w
	art := sampled(w, h, zonePlate(0, h/2, grows))
	for name, s := range scenes() {
		for _, by := range []float64{3, 4.5} {
			g := s.shrinking(w, h, by)
			all := s.source(art, g).Cut(image.Rect(0, 0, g.WidthPx, g.HeightPx)).(*image.Gray)
			n, sum, square := 0.0, 0.0, 0.0
			for y := range g.HeightPx {
				for x := range g.WidthPx {
					at := s.at(g, float64(x)+0.5, float64(y)+0.5)
					if at.InsideMM < 5*s.on.WidthMM/float64(g.WidthPx) {
						continue
					}
					// Cycles of the zone plate for an artwork pixel, and by the map's slopes for a grid pixel.
					fx, fy := grows*at.U*w, grows*(at.V*h-h/2)
					gx := math.Abs(fx*at.UX*w+fy*at.VX*h) * s.on.WidthMM / float64(g.WidthPx)
					gy := math.Abs(fx*at.UY*w+fy*at.VY*h) * s.on.HeightMM / float64(g.HeightPx)
					// What passes 0.5 cycles an artwork pixel is no ring of the artwork.
					if max(gx, gy) < beyond*0.5 || max(math.Abs(fx), math.Abs(fy)) > 0.47 {
						continue
					}
					v := float64(all.GrayAt(x, y).Y)
					n, sum, square = n+1, sum+v, square+v*v
				}
			}
			require.Greater(t, n, 500.0, "%s, %g to 1", name, by)
			mean := sum / n
			falseRings := 10 * math.Log10((square/n-mean*mean)/(100*100/2))
			t.Logf("%s, %g to 1: false rings %.1f dB, mean %.2f, of %g pixels", name, by, falseRings, mean, n)
			if falseRings > -40 || math.Abs(mean-127.5) > 0.2 {
				t.Errorf("%s, %g to 1: false rings %.1f dB, mean %.2f", name, by, falseRings, mean)
			}
		}
	}
}

// Round spots come out where Board, the map the other way, has them. The map bends within a spot, so that the
// middle of what it covers is not where its own middle lies: each pixel's ink, times the area of the artwork
// that it shows, is weighed where in the picture it lies, and the place of the mean held against the place of
// the spot.
func TestWarpedDotsStayInPlace(t *testing.T) {
	const w, h, apart = 900, 600, 100
	art := sampled(w, h, func(x, y float64) float64 {
		dx, dy := math.Mod(x, apart)-apart/2, math.Mod(y, apart)-apart/2
		return 250 - 240*math.Exp(-(dx*dx+dy*dy)/(2*3*3))
	})
	for name, s := range scenes() {
		for _, by := range []float64{0.6, 1, 1.7, 2.6} {
			g := s.shrinking(w, h, by)
			source := s.source(art, g)
			perX, perY := g.perMM(s.on)
			place := func(u, v float64) (x, y float64, inside bool) {
				at, ok := s.h.Board(u, v)
				inside = ok && s.h.At(at.XMM, at.YMM).InsideMM > 0
				return (at.XMM - s.on.XMM) * perX, (at.YMM - s.on.YMM) * perY, inside
			}
			worst, n := 0.0, 0 // in pixels of the grid or of the artwork, whichever are coarser there
			for v := apart / 2; v < h; v += apart {
				for u := apart / 2; u < w; u += apart {
					wantX, wantY, inside := place(float64(u)/w, float64(v)/h)
					if !inside {
						continue
					}
					var part image.Rectangle // about the spot
					for _, off := range [][2]float64{{-1, -1}, {0, -1}, {1, -1}, {-1, 0}, {1, 0}, {-1, 1}, {0, 1}, {1, 1}} {
						x, y, _ := place((float64(u)+18*off[0])/w, (float64(v)+18*off[1])/h)
						part = part.Union(square(int(x), int(y), 2))
					}
					m := source.Cut(part).(*image.Gray)
					sum, meanU, meanV, nearest := 0.0, 0.0, 0.0, math.Inf(1)
					for j := range part.Dy() {
						for i := range part.Dx() {
							shown := s.at(g, float64(part.Min.X+i)+0.5, float64(part.Min.Y+j)+0.5)
							if math.Hypot(shown.U*w-float64(u), shown.V*h-float64(v)) > 16 {
								continue
							}
							nearest = min(nearest, shown.InsideMM*min(perX, perY))
							ink := (250 - float64(m.GrayAt(i, j).Y)) * math.Abs(shown.UX*shown.VY-shown.UY*shown.VX)
							sum, meanU, meanV = sum+ink, meanU+ink*shown.U, meanV+ink*shown.V
						}
					}
					if nearest < 4 {
						continue // the print ends within the spot
					}
					x, y, _ := place(meanU/sum, meanV/sum)
					offArt := math.Hypot(meanU/sum*w-float64(u), meanV/sum*h-float64(v))
					worst, n = max(worst, min(offArt, math.Hypot(x-wantX, y-wantY))), n+1
				}
			}
			t.Logf("%s, %g to 1: %d spots, off by %.3f pixels at most", name, by, n, worst)
			require.GreaterOrEqual(t, n, 6)
			require.Less(t, worst, 0.02, "%s, %g to 1", name, by)
		}
	}
}
