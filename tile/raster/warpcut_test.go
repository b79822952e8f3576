package raster

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/raster/weigh"

	"github.com/stretchr/testify/require"
)

// Any rectangle of the grid is the same pixels as that part of the whole, across blocks and beyond the print.
func TestWarpedSheetsShareOneGrid(t *testing.T) {
	const seed = 36
	random := rand.New(rand.NewSource(seed))
	for _, kind := range kinds {
		art := noise(kind, 240, 160, random)
		for name, s := range scenes() {
			for _, by := range []float64{0.8, 2} {
				g := s.shrinking(240, 160, by)
				source := s.source(art, g).Surround("#20a0ff")
				all := image.Rect(-9, -9, g.WidthPx+9, g.HeightPx+9)
				whole := source.Cut(all).(*image.RGBA)
				require.True(t, whole.Opaque())
				for range 6 {
					x, y := all.Min.X+random.Intn(all.Dx()-1), all.Min.Y+random.Intn(all.Dy()-1)
					r := image.Rect(x, y, x+1+random.Intn(180), y+1+random.Intn(180)).Intersect(all)
					part := source.Cut(r).(*image.RGBA)
					require.Equal(t, image.Rect(0, 0, r.Dx(), r.Dy()), part.Rect)
					for j := range r.Dy() {
						want := whole.Pix[whole.PixOffset(r.Min.X-all.Min.X, r.Min.Y+j-all.Min.Y):][:4*r.Dx()]
						require.Equal(t, want, part.Pix[j*part.Stride:][:4*r.Dx()], "seed %d, %s, %s, %g to 1, %v row %d", seed, kind,
							name, by, r, j)
					}
				}
			}
		}
	}
}

// Well beyond the outline stands white or the surround's colour exactly, well within it the picture alone,
// and between them a share of both.
func TestWarpedOutline(t *testing.T) {
	surrounds := []struct {
		name     string
		surround layout.Surround
		beyond   color.RGBA
		gray     bool
	}{
		{"white paper", "", color.RGBA{255, 255, 255, 255}, true},
		{"a colour", "#20a0ff", color.RGBA{0x20, 0xa0, 0xff, 255}, false},
		{"a grey", "#777777", color.RGBA{0x77, 0x77, 0x77, 255}, true},
	}
	art := flat("grey", 300, 200, 40)
	for name, s := range scenes() {
		for _, by := range []float64{0.9, 3, 20} {
			g := s.shrinking(300, 200, by)
			r := image.Rect(-15, -15, g.WidthPx+15, g.HeightPx+15)
			perX, perY := g.perMM(s.on)
			var cuts []image.Image
			for _, c := range surrounds {
				m := s.source(art, g).Surround(c.surround).Cut(r)
				_, gray := m.(*image.Gray)
				require.Equal(t, c.gray, gray)
				cuts = append(cuts, m)
			}
			for y := r.Min.Y; y < r.Max.Y; y += 1 + g.HeightPx/150 {
				for x := r.Min.X; x < r.Max.X; x += 1 + g.WidthPx/150 {
					inside := s.at(g, float64(x)+0.5, float64(y)+0.5).InsideMM * math.Sqrt(perX*perY)
					share := max(0, min(1, inside+0.5))
					for i, c := range surrounds {
						got := rgba(cuts[i].At(x-r.Min.X, y-r.Min.Y))
						off := 0.0
						for _, v := range [3][2]uint8{{got.R, c.beyond.R}, {got.G, c.beyond.G}, {got.B, c.beyond.B}} {
							off = max(off, math.Abs(float64(v[0])-(40*share+float64(v[1])*(1-share))))
						}
						if !(off <= 1.5) || inside < -0.5 && got != c.beyond || inside > 0.5 && got != (color.RGBA{40, 40, 40, 255}) {
							require.Failf(t, "not as the map has it", "%s, %s, %g to 1: %v at %d,%d, %g inside, off by %g", c.name, name,
								by, got, x, y, inside, off)
						}
					}
				}
			}
		}
	}
}

// A picture turned by next to nothing comes out as the flat one does, on its own pixels to a level or so: no
// pixel lies off by more than a thousandth.
func TestWarpOfNextToNothing(t *testing.T) {
	const w, h = 600, 400
	s := newScene(t, func(s *layout.Setup) { s.Framing.TurnDeg = 0.0001 })
	flatPlan := bentPlan(t, 1.5, func(s *layout.Setup) { s.Framing.TurnDeg = 0.0001 })
	// The whole flat picture, of which the drop sees a circle, on a grid of its own pixels; the bent print's
	// grid is a part of that.
	perMM := w / flatPlan.Picture.FlatWidthMM
	g := Grid{int(math.Round(s.on.WidthMM * perMM)), int(math.Round(s.on.HeightMM * perMM))}
	on := layout.Rect{
		XMM: s.on.XMM + s.on.WidthMM/2 - float64(g.WidthPx)/perMM/2, YMM: s.on.YMM + s.on.HeightMM/2 -
			float64(g.HeightPx)/perMM/2,
		WidthMM: float64(g.WidthPx) / perMM, HeightMM: float64(g.HeightPx) / perMM,
	}
	for _, kind := range kinds {
		art := noise(kind, w, h, rand.New(rand.NewSource(37)))
		if kind == "grey" {
			art = sampled(w, h, harbour(w, h))
		}
		flatSource := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{w, h}, half)
		bent := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, g, half).Hang(s.h, on)
		r := square(g.WidthPx/2, g.HeightPx/2, 100)
		got := bent.Cut(r)
		want := flatSource.Cut(r.Add(image.Pt((w-g.WidthPx)/2, (h-g.HeightPx)/2)))
		worst := 0.0
		for y := range r.Dy() {
			for x := range r.Dx() {
				a, b := rgba(got.At(x, y)), rgba(want.At(x, y))
				worst = max(worst, math.Abs(float64(a.R)-float64(b.R)), math.Abs(float64(a.G)-float64(b.G)),
					math.Abs(float64(a.B)-float64(b.B)))
			}
		}
		t.Logf("%s: %g levels at most", kind, worst)
		require.LessOrEqual(t, worst, 2.0, kind)
	}
}

// Where pixels are looked up, against the exact map: within 0.02 pixels of the artwork or of the grid,
// whichever are coarser there.
func TestWarpKnowsWherePixelsAre(t *testing.T) {
	for name, s := range scenes() {
		for _, px := range []int{60, 300, 1500, 6000} {
			for _, by := range []float64{1, 3} {
				g := s.shrinking(px, px*2/3, by)
				w := s.source(image.NewGray(image.Rect(0, 0, px, px*2/3)), g).warp
				worst, n := 0.0, 0
				for _, corner := range []image.Point{{}, {g.WidthPx / 4 &^ 127, g.HeightPx / 3 &^ 127},
					{g.WidthPx / 2 &^ 127, g.HeightPx / 2 &^ 127}, {g.WidthPx / 2 &^ 127, 0}, {0, g.HeightPx / 2 &^ 127}} {
					b := w.block(corner)
					if !b.shows() {
						continue
					}
					size := Grid{px, px * 2 / 3} // not shrunk, so that places are the artwork's
					r := b.patchRect(size, b.rect())
					p, first := b.patch(size, r), r.Min
					for y := range 128 {
						for x := range 128 {
							at := w.at(float64(corner.X+x)+0.5, float64(corner.Y+y)+0.5, 0)
							if at.inside < 0 {
								continue
							}
							path := b.path(p, x, y, 1, 0, 0)
							place := func(knots []int) float64 {
								at := (knots[0]<<path.Shift + (knots[1]-knots[0])*path.Skip) >> (path.Places + path.Shift - weigh.PhaseBits)
								return float64(at)/(1<<weigh.PhaseBits) - kernelFirst + 0.5
							}
							gotX, gotY := place(path.X)+float64(first.X), place(path.Y)+float64(first.Y)
							off := math.Hypot(gotX-at.u*float64(px), gotY-at.v*float64(px*2/3))
							worst, n = max(worst, off/max(1, longest(at.ux, at.uy, at.vx, at.vy))), n+1
						}
					}
				}
				require.Greater(t, n, 100)
				t.Logf("%s, %d px, %g to 1, knots %d apart: off by %.4f", name, px, by, 1<<w.shift, worst)
				require.Less(t, worst, 0.02, "%s, %d px, %g to 1, knots %d apart", name, px, by, 1<<w.shift)
			}
		}
	}
}

// Grids and artworks that no one would ask for, but a job file may.
func TestWarpTakesAnyGrid(t *testing.T) {
	for name, s := range scenes() {
		for _, size := range []image.Point{{1, 1}, {3, 2}, {300, 1}, {1, 200}, {300, 200}} {
			for _, g := range []Grid{{1, 1}, {2, 150}, {300, 1}, {100, 70}} {
				art := flat("colour", size.X, size.Y, 120)
				r := image.Rect(-70, -10, g.WidthPx+10, g.HeightPx+70)
				m := s.source(art, g).Cut(r).(*image.RGBA)
				require.True(t, m.Opaque(), name)
				middle := rgba(m.At(g.WidthPx/2+70, g.HeightPx/2+10))
				if s.at(g, float64(g.WidthPx/2)+0.5, float64(g.HeightPx/2)+0.5).InsideMM > s.on.WidthMM/float64(g.WidthPx)+
					s.on.HeightMM/float64(g.HeightPx) {
					require.Equal(t, color.RGBA{120, 60, 30, 255}, middle, "%s, %v on %v", name, size, g)
				}
			}
		}
	}
}

func TestNewBentGrid(t *testing.T) {
	p := bentPlan(t, 1.5, func(s *layout.Setup) { s.Framing.TurnDeg = 20 })
	turned := scenes()["turned 20°"]
	own := 900 / p.Picture.FlatWidthMM // artwork pixels to a millimetre, everywhere and every way
	for _, c := range []struct {
		name      string
		finest    float64 // to a millimetre
		wantPerMM float64
	}{
		{"finer than the artwork: its own pixels", own * 2, own},
		{"coarser: as asked", own / 3, own / 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := NewBentGrid(turned.h, turned.on, 900, 600, units.PerMM(c.finest))
			require.InDelta(t, turned.on.WidthMM*c.wantPerMM, float64(g.WidthPx), 1)
			require.InDelta(t, turned.on.HeightMM*c.wantPerMM, float64(g.HeightPx), 1)
		})
	}
	t.Run("straight: as dense as in the middle", func(t *testing.T) {
		s := scenes()["straight"]
		g := NewBentGrid(s.h, s.on, 900, 600, units.PerMM(1e9))
		// By the inverse map: an artwork pixel in the picture's middle is one grid pixel.
		a, _ := s.h.Board(0.5-1.0/900, 0.5)
		b, _ := s.h.Board(0.5+1.0/900, 0.5)
		require.InEpsilon(t, 2/math.Abs(b.XMM-a.XMM), g.Resolution(s.on).PixelsPerMM(), 0.005)
	})
	t.Run("nothing of it can be no pixel", func(t *testing.T) {
		require.Equal(t, Grid{2, 2}, NewBentGrid(turned.h, turned.on, 1, 1, units.PerMM(1e-6)))
	})
}

// A part of a larger picture is that part, wherever it begins.
func TestCutReadsAPartOfAPicture(t *testing.T) {
	const seed = 39
	random := rand.New(rand.NewSource(seed))
	for _, kind := range kinds {
		for _, offset := range []image.Point{{0, 0}, {3, 5}, {4, 2}, {7, 6}} {
			r := image.Rectangle{offset, offset.Add(image.Pt(31, 21))}
			whole := noise(kind, 50, 40, random)
			part := whole.(interface {
				SubImage(image.Rectangle) image.Image
			}).SubImage(r)
			for _, turn := range turns {
				w, h := turn.Size(31, 21)
				got := NewSource(&artwork.Picture{Image: part}, turn, Grid{w, h}, half).Cut(image.Rect(-3, -2, w+4, h+2))
				for y := range got.Bounds().Dy() {
					for x := range got.Bounds().Dx() {
						ax, ay := turn.Source(min(max(x-3, 0), w-1), min(max(y-2, 0), h-1), 31, 21)
						if want, got := rgba(whole.At(offset.X+ax, offset.Y+ay)), rgba(got.At(x, y)); want != got {
							require.Equal(t, want, got, "seed %d, %s from %v, %+v", seed, kind, offset, turn)
						}
					}
				}
			}
		}
	}
}
