package raster

import (
	"image"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// outlineHolds looks at every pixel about a flat picture's outline, which must stand where the map has it:
// the picture within, white paper beyond, a share of both between.
func outlineHolds(t *testing.T, s scene, g Grid, bleed int) {
	t.Helper()
	perX, perY := g.perMM(s.on)
	r := image.Rect(-bleed, -bleed, g.WidthPx+bleed, g.HeightPx+bleed)
	m := s.source(flat("grey", 60, 40, 40), g).Cut(r).(*image.Gray)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			inside := s.at(g, float64(x)+0.5, float64(y)+0.5).InsideMM * math.Sqrt(perX*perY)
			share := max(0, min(1, inside+0.5))
			got, want := float64(m.GrayAt(x-r.Min.X, y-r.Min.Y).Y), 40*share+255*(1-share)
			if math.Abs(got-want) > 1.5 {
				require.InDelta(t, want, got, 1.5, "%v: %d,%d, %g inside", g, x, y, inside)
			}
		}
	}
}

// A picture's corners stand out between posts, none of which need lie within.
func TestWarpedCorners(t *testing.T) {
	for _, turn := range []float64{10, 30, 45} {
		for _, look := range []layout.Look{layout.Bulged, 0.5, layout.Straight} {
			s := newScene(t, func(s *layout.Setup) { s.Fit, s.Look, s.Framing.TurnDeg = layout.Inside, look, turn })
			for _, px := range []int{260, 700} {
				outlineHolds(t, s, Grid{px, int(float64(px) * s.on.HeightMM / s.on.WidthMM)}, 0)
			}
		}
	}
}

// A rod takes far fewer pixels one way than the other: the outline is where it is all the same.
func TestWarpedOutlineOfLongPixels(t *testing.T) {
	for _, body := range []flip.Body{flip.UprightRod, flip.LevelRod} {
		s := newScene(t, func(s *layout.Setup) {
			s.Drop.Body, s.Look, s.Framing = body, 0.5, layout.Framing{OffX: 0.1, OffY: -0.2, TurnDeg: -30}
		})
		outlineHolds(t, s, NewBentGrid(s.h, s.on, 600, 400, units.PerInch(300)), 15)
	}
}

// A row that begins where the drop looks nowhere may still come upon the picture.
func TestWarpedOutlineBesideNowhere(t *testing.T) {
	s := newScene(t, func(s *layout.Setup) { s.Fit, s.Look, s.Framing.TurnDeg = layout.Inside, layout.Straight, 45 })
	outlineHolds(t, s, Grid{90, 90}, 0)
	s = newScene(t, func(s *layout.Setup) { s.Fit, s.Look, s.Framing.TurnDeg = layout.Inside, layout.Bulged, 10 })
	outlineHolds(t, s, Grid{700, 528}, 15)
}
