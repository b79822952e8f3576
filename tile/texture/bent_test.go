package texture

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// bentPlan is a straight print on small sheets, so that corners of the board have none.
func bentPlan(t *testing.T, background layout.Surround) layout.Plan {
	t.Helper()
	a6, err := layout.ParsePaper("A6")
	require.NoError(t, err)
	p, err := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 600,
		Look: layout.Straight, Background: background,
		Fit: layout.Cover, Proportions: 1.5, Paper: a6, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 480, HeightPx: 320,
			FrameWidthMM: 7.2, FNumber: 16, Focus: layout.FocusBest},
	}.Plan()
	require.NoError(t, err)
	return p
}

// slope is a picture that grows lighter to the right, by level.
func slope() *Texture {
	m := image.NewGray(image.Rect(0, 0, 600, 400))
	for y := range 400 {
		for x := range 600 {
			m.SetGray(x, y, color.Gray{uint8(20 + x*200/600)})
		}
	}
	return New(&artwork.Picture{Image: m})
}

// A bent print hangs as the closed form has it: what is seen at a share of the visible radius lies at that
// share, over the fill, of the picture's half-height, and hangs at that share's reach on the other side.
func TestBentHung(t *testing.T) {
	p := bentPlan(t, "")
	h := Hang(p, slope())
	middle := layout.Point{XMM: p.Backdrop.WidthMM / 2, YMM: p.Backdrop.HeightMM / 2}
	for _, share := range []float64{-0.8, -0.5, -0.1, 0.2, 0.6, 0.84} {
		reachMM, ok := p.Sight().ReachMM(math.Abs(share))
		require.True(t, ok)
		got := h.At(middle.XMM-math.Copysign(reachMM, share), middle.YMM, 0).SRGB()
		require.InDelta(t, 20+200*(0.5+share/0.85/3), float64(got.G), 1, "share %g", share)
	}

	// Beyond its outline there is paper, and nothing where there is no sheet.
	reachMM, _ := p.Sight().ReachMM(0.85)
	white := color.RGBA{255, 255, 255, 255}
	papers, bare := 0, 0
	for x := 4.0; x < p.Backdrop.WidthMM; x += 5 {
		for y := 4.0; y < p.Backdrop.HeightMM; y += 5 {
			if math.Hypot(x-middle.XMM, y-middle.YMM) < reachMM+0.5 {
				continue
			}
			onSheet := false
			for _, s := range p.Sheets {
				onSheet = onSheet || x >= s.Cell.XMM && x < s.Cell.RightMM() && y >= s.Cell.YMM && y < s.Cell.BottomMM()
			}
			if onSheet {
				papers++
				require.Equal(t, white, h.At(x, y, 0).SRGB())
			} else {
				bare++
				require.Equal(t, Room, h.At(x, y, 0))
			}
		}
	}
	require.Greater(t, papers, 100)
	require.Greater(t, bare, 100)

	// With a background, that is printed instead on the sheets that there are.
	navy := Hang(bentPlan(t, "#000080"), slope())
	require.Equal(t, color.RGBA{0, 0, 0x80, 255}, navy.At(3, middle.YMM+70, 1).SRGB())
	require.Equal(t, Room, navy.At(5, 5, 1))
}

// Half of a patch about the outline is picture and half paper: the mean of both lights.
func TestBentHungAtItsOutline(t *testing.T) {
	p := bentPlan(t, "")
	h := Hang(p, slope())
	reachMM, _ := p.Sight().ReachMM(0.85)
	x, y := p.Backdrop.WidthMM/2-reachMM, p.Backdrop.HeightMM/2
	inside := h.At(x+1, y, 0)
	require.InDelta(t, (1+float64(inside[1]))/2, float64(h.At(x, y, 1)[1]), 0.02)
}

// A parallelogram's mean against thousands of places of it: of a picture of waves, which are lost where it is
// longer than they are and kept where it is narrower.
func TestSkewed(t *testing.T) {
	const seed = 3
	random := rand.New(rand.NewSource(seed))
	m := image.NewGray(image.Rect(0, 0, 600, 400))
	for y := range 400 {
		for x := range 600 {
			m.SetGray(x, y, color.Gray{uint8(128 + 60*math.Sin(float64(x)/9)*math.Cos(float64(y)/13))})
		}
	}
	picture := New(&artwork.Picture{Image: m})
	for _, c := range []struct {
		name           string
		ux, uy, vx, vy float64 // in pixels
	}{
		{"a square", 6, 0, 0, 6}, {"long across", 40, 0, 0, 5}, {"long down", 4, 0, 0, 30},
		{"long and aslant", 20, 3, 20, -3}, {"a point", 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			square := 0.0
			const places = 60
			for range places {
				u, v := 0.2+0.6*random.Float64(), 0.2+0.6*random.Float64()
				got := float64(picture.Skewed(u, v, c.ux/600, c.uy/600, c.vx/400, c.vy/400)[1])
				want, n := 0.0, 0.0
				for a := -0.5 + 1.0/80; a < 0.5; a += 1.0 / 40 {
					for b := -0.5 + 1.0/80; b < 0.5; b += 1.0 / 40 {
						want, n = want+float64(picture.At(u+(a*c.ux+b*c.uy)/600, v+(a*c.vx+b*c.vy)/400, 0)[1]), n+1
					}
				}
				square += (got - want/n) * (got - want/n)
			}
			require.Less(t, math.Sqrt(square/places), 0.012, "seed %d: of waves that swing by 0.2", seed)
		})
	}
}
