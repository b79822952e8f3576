package board

import (
	"image/color"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// A bent print hangs as the closed form has it: what is seen at a share of the visible radius lies at that
// share, over the fill, of the picture's half-height, and hangs at that share's reach on the other side.
func TestBent(t *testing.T) {
	p := bentPlan(t, nil)
	s := New(p, slope())
	middle := layout.Point{XMM: p.Backdrop.WidthMM / 2, YMM: p.Backdrop.HeightMM / 2}
	require.Equal(t, middle, s.CentreMM)
	for _, share := range []float64{-0.8, -0.5, -0.1, 0.2, 0.6, 0.84} {
		reachMM, ok := p.Sight().ReachMM(math.Abs(share))
		require.True(t, ok)
		got := s.At(middle.XMM-math.Copysign(reachMM, share), middle.YMM, Patch{})
		require.Equal(t, 1.0, got.Picture)
		require.InDelta(t, 20+200*(0.5+share/0.85/3), float64(got.Print.SRGB().G), 1, "share %g", share)
	}

	// Beyond its outline there is paper, and nothing where there is no sheet.
	reachMM, _ := p.Sight().ReachMM(0.85)
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
				require.Equal(t, Seen{Paper: 1}, s.At(x, y, Patch{}))
			} else {
				bare++
				require.Equal(t, Seen{None: 1}, s.At(x, y, Patch{}))
			}
		}
	}
	require.Greater(t, papers, 100)
	require.Greater(t, bare, 100)

	// With a background, that is printed instead on the sheets that there are.
	navy := New(bentPlan(t, func(s *layout.Setup) { s.Background = "#000080" }), slope())
	seen := navy.At(3, middle.YMM+70, Box(1, 1))
	require.Equal(t, color.RGBA{0, 0, 0x80, 255}, seen.Print.SRGB())
	require.Equal(t, 1.0, seen.Surround)
	require.Equal(t, Seen{None: 1}, navy.At(5, 5, Box(1, 1)))
}

// Half of a patch about the outline is picture and half paper: the mean of both lights.
func TestBentAtItsOutline(t *testing.T) {
	p := bentPlan(t, nil)
	s := New(p, slope()) // the board ends there too
	reachMM, _ := p.Sight().ReachMM(0.85)
	x, y := p.Backdrop.WidthMM/2-reachMM, p.Backdrop.HeightMM/2
	inside := light(s, x+1, y, Patch{})
	require.InDelta(t, (1+float64(inside[1]))/2, float64(light(s, x, y, Box(1, 1))[1]), 0.02)
}

// The outline's circle is met by a patch in its own direction: one that is long along the outline and thin
// across it counts as thin, and one that is long across it as long, wherever round the circle.
func TestBentOutlineMeetsLongPatches(t *testing.T) {
	p := bentPlan(t, nil)
	s := New(p, slope()) // the board ends at the outline too, at some of the places
	reachMM, _ := p.Sight().ReachMM(0.85)
	for _, turn := range []float64{0, 0.4, 1.1, 2, 3.9, 5.5} {
		sin, cos := math.Sincos(turn)
		const insideMM = 0.25
		x, y := s.CentreMM.XMM+(reachMM-insideMM)*cos, s.CentreMM.YMM+(reachMM-insideMM)*sin
		long := func(alongMM, acrossMM float64) Patch { // an upright box turned to have its second side across the outline
			along, across := alongMM*alongMM/12, acrossMM*acrossMM/12
			return Patch{XX: across*cos*cos + along*sin*sin, XY: (across - along) * cos * sin,
				YY: across*sin*sin + along*cos*cos}
		}
		require.InDelta(t, 1, s.AtRay(x, y, long(4, 0.4), nil).Picture, 1e-9, "turn %g", turn)
		require.InDelta(t, 0.5+insideMM/4, s.AtRay(x, y, long(0.4, 4), nil).Picture, 0.002, "turn %g", turn)
		require.InDelta(t, 0.5+insideMM/1, s.AtRay(x, y, Box(1, 1), nil).Picture, 0.002, "turn %g", turn)
	}
}

// A ray of many has what is long averaged over its narrow side only; a patch by itself over all of it.
func TestRaysAndWholePatches(t *testing.T) {
	const longPx = 18 // pixels of the artwork to a wave, which makes 2 mm
	waves := func(p layout.Plan) *Surface {
		return New(p, drawn(900, 720, func(x, _ int) uint8 {
			return texture.Light{0, float32(0.5 + 0.4*math.Sin(2*math.Pi*float64(x)/longPx)), 0}.SRGB().G
		}))
	}
	s := waves(flatPlan(layout.Stretch, flip.ReversesNone))
	swing := func(seen func(x float64) Seen) float64 {
		least, most := math.Inf(1), math.Inf(-1)
		for i := range 200 {
			v := float64(seen(90 + float64(i)/50).Print[1])
			least, most = min(least, v), max(most, v)
		}
		return most - least
	}
	over := Box(2, 0.2) // as long as a wave, a tenth as wide
	require.Less(t, swing(func(x float64) Seen { return s.At(x, 50, over) }), 0.1)
	require.Greater(t, swing(func(x float64) Seen { return s.AtRay(x, 50, over, nil) }), 0.4)
}
