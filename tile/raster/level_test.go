package raster

import (
	"image"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// levelledPlan is a board lit by lamps, its print made up for them.
func levelledPlan(tb testing.TB, lamps ...layout.Lamp) layout.Plan {
	tb.Helper()
	paper, err := layout.ParsePaper("A4")
	require.NoError(tb, err)
	p, err := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400, Fill: 0.8,
		Fit: layout.Cover, Proportions: 1.5, Paper: paper, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
		Lamps: lamps, Level: true,
	}.Plan()
	require.NoError(tb, err)
	return p
}

func flat(kind string, w, h int, level byte) image.Image {
	r := image.Rect(0, 0, w, h)
	if kind == "grey" {
		m := image.NewGray(r)
		for i := range m.Pix {
			m.Pix[i] = level
		}
		return m
	}
	m := image.NewRGBA(r)
	for i := 0; i < len(m.Pix); i += 4 {
		m.Pix[i], m.Pix[i+1], m.Pix[i+2], m.Pix[i+3] = level, level/2, level/4, 0xff
	}
	return m
}

// light is the light of a level, and level the level of light, both unrounded: the curve of IEC
// 61966-2-1:1999, 5.2, written out once more.
func light(level float64) float64 {
	if v := level / 255; v > 0.04045 {
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return level / 255 / 12.92
}

func levelOf(light float64) float64 {
	if light > 0.0031308 {
		return 255 * (1.055*math.Pow(light, 1/2.4) - 0.055)
	}
	return 255 * 12.92 * light
}

// A flat picture, levelled, is even in its lamps' light: each pixel printed is the level nearest to the one
// that would make it exactly so. The tolerance is that rounding and the gain's own steps (see gainSteps and
// knotSpan).
func TestLevelledPictureIsEvenInItsLight(t *testing.T) {
	for _, c := range []struct {
		name  string
		lamps []layout.Lamp
		w, h  int
	}{
		{"on the axis", []layout.Lamp{{XMM: 0, YMM: 0, ZMM: 600}}, 900, 600},
		{"from the side", []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}}, 900, 600},
		{"two, one of them near", []layout.Lamp{{XMM: -900, YMM: -400, ZMM: 300}, {XMM: 700, YMM: 500, ZMM: 800}}, 900, 600},
		{"pixels of a centimetre", []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}}, 90, 60},
		{"pixels of a tenth of a millimetre", []layout.Lamp{{XMM: 0, YMM: -300, ZMM: 500}}, 9000, 6},
	} {
		p := levelledPlan(t, c.lamps...)
		on, lamps := p.PictureOnBoard(), p.Light()
		for _, kind := range []string{"grey", "colour"} {
			for _, value := range []byte{255, 200, 90, 12} {
				green := rgba(flat(kind, 1, 1, value).At(0, 0)).G
				g := Grid{c.w, c.h}
				got := NewSource(&artwork.Picture{Image: flat(kind, c.w, c.h, value)}, flip.HalfTurn, g, half).Level(p.Level(),
					on).Cut(image.Rect(0, 0, c.w, c.h))
				even := math.Exp2(-p.Level().LossStops()) // of the artwork's light, all over the board
				worst := 0.0
				for y := 0; y < c.h; y += max(1, c.h/60) {
					for x := 0; x < c.w; x += max(1, c.w/200) {
						at := g.OnBoard(on, image.Rect(x, y, x+1, y+1))
						falls := lamps.At(at.XMM+at.WidthMM/2, at.YMM+at.HeightMM/2)
						pixel := rgba(got.At(x, y))
						for _, channel := range [2]struct{ got, art byte }{{pixel.R, value}, {pixel.G, green}} {
							exact := levelOf(light(float64(channel.art)) * even / falls)
							worst = max(worst, math.Abs(float64(channel.got)-exact))
							if channel.got > channel.art {
								require.LessOrEqual(t, channel.got, channel.art, "never brighter than the artwork")
							}
						}
					}
				}
				require.Less(t, worst, 0.6, "%s, %s, level %d", c.name, kind, value)
			}
		}
	}
}

// Levelled sheets share one grid, bleed and surround included.
func TestLevelledSheetsShareOneGrid(t *testing.T) {
	const seed = 34
	random := rand.New(rand.NewSource(seed))
	p := levelledPlan(t, layout.Lamp{XMM: -600, YMM: -400, ZMM: 900}, layout.Lamp{XMM: 500, YMM: 0, ZMM: 300})
	for _, kind := range kinds {
		for _, g := range []Grid{{310, 205}, {130, 86}} { // the artwork's own pixels, and filtered
			for _, surround := range []layout.Surround{"", "#c08040"} {
				s := NewSource(&artwork.Picture{Image: noise(kind, 310, 205, random)}, flip.HalfTurn,
					g, half).Surround(surround).Level(p.Level(), p.PictureOnBoard())
				all := image.Rect(-70, -70, g.WidthPx+70, g.HeightPx+70)
				whole := s.Cut(all)
				for range 12 {
					x, y := all.Min.X+random.Intn(all.Dx()-1), all.Min.Y+random.Intn(all.Dy()-1)
					r := image.Rect(x, y, x+1+random.Intn(all.Max.X-x), y+1+random.Intn(all.Max.Y-y))
					part := s.Cut(r)
					for j := range r.Dy() {
						for i := range r.Dx() {
							// A sheet wholly on a grey picture may be grey where the whole is not.
							if want, got := rgba(whole.At(x+i-all.Min.X, y+j-all.Min.Y)), rgba(part.At(i, j)); want != got {
								require.Equal(t, want, got, "seed %d %s %v", seed, kind, r)
							}
						}
					}
				}
			}
		}
	}
}

func TestLevelLeavesAlone(t *testing.T) {
	art := noise("colour", 80, 50, rand.New(rand.NewSource(35)))
	plain := func() *Source {
		return NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{80, 50}, half)
	}
	r := image.Rect(-5, -5, 85, 55)
	t.Run("a print that is not levelled", func(t *testing.T) {
		p := levelledPlan(t, layout.Lamp{ZMM: 900})
		p.LevelledFor = nil
		require.Equal(t, plain().Cut(r), plain().Level(p.Level(), p.PictureOnBoard()).Cut(r))
	})
	t.Run("the darkest place", func(t *testing.T) {
		p := levelledPlan(t, layout.Lamp{XMM: -600, YMM: 0, ZMM: 900})
		got := plain().Level(p.Level(), p.PictureOnBoard()).Cut(r)
		// The right-hand corners are furthest from the lamp; beyond them nothing is taken away.
		for _, at := range []image.Point{{84, 2}, {84, 57}} {
			require.Equal(t, plain().Cut(r).At(at.X, at.Y), got.At(at.X, at.Y))
		}
		require.NotEqual(t, plain().Cut(r).(*image.RGBA).Pix, got.(*image.RGBA).Pix)
	})
	t.Run("opaque stays opaque", func(t *testing.T) {
		p := levelledPlan(t, layout.Lamp{ZMM: 500})
		require.True(t, plain().Level(p.Level(), p.PictureOnBoard()).Cut(r).(*image.RGBA).Opaque())
	})
}

func BenchmarkLevel(b *testing.B) {
	p := levelledPlan(b, layout.Lamp{XMM: -600, YMM: -400, ZMM: 900}, layout.Lamp{XMM: 600, YMM: -400, ZMM: 900})
	for _, kind := range []string{"grey", "colour"} {
		b.Run(kind, func(b *testing.B) {
			const w, h = 12000, 8000
			r := image.Rect(4000, 3000, 6000, 6000) // about a sheet of A4 at 300 pixels to the inch
			art := noise(kind, 64, 64, rand.New(rand.NewSource(1)))
			s := NewSource(&artwork.Picture{Image: art}, flip.Turn{}, Grid{w, h}, half).Level(p.Level(), p.PictureOnBoard())
			var m image.Image = image.NewGray(image.Rect(0, 0, r.Dx(), r.Dy()))
			if kind == "colour" {
				m = image.NewRGBA(m.Bounds())
			}
			b.SetBytes(int64(r.Dx() * r.Dy()))
			for b.Loop() {
				s.level.apply(m, r)
			}
		})
	}
}
