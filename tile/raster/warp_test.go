package raster

import (
	"image"
	"image/color"
	"math"
	"sync"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// bentPlan is a picture of those proportions that is bent or framed.
func bentPlan(tb testing.TB, proportions float64, change func(*layout.Setup)) layout.Plan {
	tb.Helper()
	paper, err := layout.ParsePaper("A4")
	require.NoError(tb, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 300, Fill: 0.85,
		Fit: layout.Cover, Proportions: proportions, Paper: paper, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
	}
	change(&s)
	p, err := s.Plan()
	require.NoError(tb, err)
	require.False(tb, p.Picture.Plain())
	return p
}

// scene is a picture of 3:2 that hangs bent.
type scene struct {
	h  *layout.Hanging
	on layout.Rect
}

func newScene(tb testing.TB, change func(*layout.Setup)) scene {
	p := bentPlan(tb, 1.5, change)
	return scene{p.Hang(), p.PictureOnBoard()}
}

var scenes = sync.OnceValue(func() map[string]scene {
	t := &testing.T{}
	return map[string]scene{
		"straight":   newScene(t, func(s *layout.Setup) { s.Look = layout.Straight }),
		"turned 20°": newScene(t, func(s *layout.Setup) { s.Framing.TurnDeg = 20 }),
		"rod, off its middle": newScene(t, func(s *layout.Setup) {
			s.Drop.Body, s.Look, s.Framing = flip.UprightRod, 0.5, layout.Framing{OffX: 0.1, OffY: -0.2, TurnDeg: -30}
		}),
	}
})

// shrinking is the grid that shows that many artwork pixels on one of its own where they lie densest.
func (s scene) shrinking(artW, artH int, by float64) Grid {
	own := NewBentGrid(s.h, s.on, artW, artH, units.PerMM(1e9))
	return Grid{int(float64(own.WidthPx) / by), int(float64(own.HeightPx) / by)}
}

func (s scene) source(art image.Image, g Grid) *Source { return s.sourceIn(art, g, half) }

func (s scene) sourceIn(art image.Image, g Grid, chroma image.YCbCrSubsampleRatio) *Source {
	return NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, g, chroma).Hang(s.h, s.on)
}

// at is what a grid coordinate shows.
func (s scene) at(g Grid, x, y float64) layout.Shown {
	return s.h.At(s.on.XMM+x*s.on.WidthMM/float64(g.WidthPx), s.on.YMM+y*s.on.HeightMM/float64(g.HeightPx))
}

// sampled is an artwork of levels 0 to 255, taken at its pixels' centres.
func sampled(w, h int, level func(x, y float64) float64) *image.Gray {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{uint8(math.Round(level(float64(x)+0.5, float64(y)+0.5)))})
		}
	}
	return m
}

// harbour is the like of a photograph: a sky that darkens, a soft sun, masts, a hull's soft edge, and ripples
// of all fineness down to 4 pixels, the finer the fainter.
func harbour(w, h int) func(x, y float64) float64 {
	return func(x, y float64) float64 {
		u, v := x/float64(w), y/float64(h)
		edge := func(d float64) float64 { return 0.5 + 0.5*math.Tanh(d/1.5) } // of d pixels
		level := 150 - 60*v + 25*math.Exp(-60*((u-0.7)*(u-0.7)+(v-0.3)*(v-0.3)))
		level -= 45 * edge(6-math.Abs(x-0.4*float64(w)-0.1*y))
		level -= 35 * edge(0.02*float64(h)*math.Sin(9*u)+y-0.7*float64(h))
		for i := 2.0; i <= 64; i *= 2 {
			level += 0.4 * i * math.Sin(2*math.Pi*(x*math.Cos(i)+y*math.Sin(i))/(2*i)+i) * math.Cos(3*u+2*v*i/8)
		}
		return max(0, min(255, level))
	}
}

// zonePlate has rings about a point, of a frequency that grows by so many cycles a pixel with every pixel away from it.
func zonePlate(cx, cy, grows float64) func(x, y float64) float64 {
	return func(x, y float64) float64 {
		return 127.5 + 100*math.Cos(math.Pi*grows*((x-cx)*(x-cx)+(y-cy)*(y-cy)))
	}
}

// reference is a window of the grid as it should come out: the picture itself, not its pixels, looked up
// through the exact map at 8 x 8 places a grid pixel, and each pixel their mean weighted by the ideal kernel
// for the grid cut off at three pixels, sinc(x) sinc(x/3) along both axes, by its definition in float64.
func (s scene) reference(level func(x, y float64) float64, w, h int, g Grid, r image.Rectangle) []float64 {
	const n = 8
	kernel := func(d float64) float64 {
		sinc := func(x float64) float64 {
			if x == 0 {
				return 1
			}
			return math.Sin(math.Pi*x) / (math.Pi * x)
		}
		return sinc(d) * sinc(d/3)
	}
	var weights [6 * n]float64
	sum := 0.0
	for k := range weights {
		weights[k] = kernel((float64(k)+0.5)/n - 3)
		sum += weights[k]
	}
	wide := (r.Dx() + 5) * n // from 2.5 pixels before the first pixel on
	across := make([][]float64, (r.Dy()+5)*n)
	for j := range across {
		row := make([]float64, wide)
		for i := range row {
			at := s.at(g, float64(r.Min.X)-2.5+(float64(i)+0.5)/n, float64(r.Min.Y)-2.5+(float64(j)+0.5)/n)
			row[i] = level(at.U*float64(w), at.V*float64(h))
		}
		across[j] = make([]float64, r.Dx())
		for i := range across[j] {
			for k, weight := range weights {
				across[j][i] += row[i*n+k] * weight / sum
			}
		}
	}
	all := make([]float64, r.Dx()*r.Dy())
	for j := range r.Dy() {
		for i := range r.Dx() {
			for k, weight := range weights {
				all[j*r.Dx()+i] += across[j*n+k][i] * weight / sum
			}
		}
	}
	return all
}

func square(cx, cy, half int) image.Rectangle { return image.Rect(cx-half, cy-half, cx+half, cy+half) }

// By how much maps stretch at most, by hand: along an axis, turned, mirrored, and slanted, for which the
// golden ratio is the larger singular value of a shear by one (its square is that of [[1, 1], [1, 2]], half
// of 3 + √5).
func TestLongest(t *testing.T) {
	sin, cos := math.Sincos(0.7)
	for _, c := range []struct {
		name           string
		ux, uy, vx, vy float64
		want           float64
	}{
		{"nothing", 0, 0, 0, 0, 0},
		{"as it is", 1, 0, 0, 1, 1},
		{"wider", 3, 0, 0, 2, 3},
		{"higher, mirrored", 2, 0, 0, -5, 5},
		{"turned by a quarter", 0, -2, 2, 0, 2},
		{"turned", 1.5 * cos, -1.5 * sin, 1.5 * sin, 1.5 * cos, 1.5},
		{"slanted", 1, 1, 0, 1, math.Phi},
		{"flattened", 3, 4, 0, 0, 5},
	} {
		require.InDelta(t, c.want, longest(c.ux, c.uy, c.vx, c.vy), 1e-12, c.name)
	}
}
