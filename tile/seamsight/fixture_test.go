package seamsight_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/srgb"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// seamMM is how wide seams are in these tests.
const seamMM = 0.3

// usual is a setup with the usual figures: 15 sheets of A4, and a frame close round the drop.
func usual() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10, LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{
			Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 600, HeightPx: 400, FrameWidthMM: 7.8, FNumber: 16, Focus: layout.FocusBest, SharpToPx: 2,
		},
	}
}

// rod is a glass of liquid, wide enough to show some of the board along its axis.
func rod(body flip.Body) func(*layout.Setup) {
	return func(s *layout.Setup) {
		s.Drop.Body, s.Drop.DiameterMM, s.DistanceMM, s.CameraMM, s.Camera.FrameWidthMM = body, 60, 300, 800, 100
	}
}

// plan makes a plan of the usual setup with changes.
func plan(t testing.TB, changes ...func(*layout.Setup)) layout.Plan {
	t.Helper()
	s := usual()
	for _, change := range changes {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// drawn is a grey picture, 1.5 times as wide as high, by its light at picture coordinates.
func drawn(light func(u, v float64) float64) *texture.Texture {
	const w, h = 1500, 1000
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			l := light((float64(x)+0.5)/w, (float64(y)+0.5)/h)
			m.SetGray(x, y, color.Gray{Y: uint8(math.Round(255 * srgb.Encoded(max(0, min(l, 1)))))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// even is a picture of one light.
func even(light float64) *texture.Texture {
	return drawn(func(_, _ float64) float64 { return light })
}

// scenery has an even sky that darkens upward, hills of soft and of hard detail, a dark foreground and lit windows in it.
func scenery(u, v float64) float64 {
	switch {
	case v < 0.4:
		return 0.15 + 1.2*v
	case v < 0.55:
		return 0.25 + 0.1*math.Sin(60*u+4*math.Sin(40*v))
	case v < 0.75:
		return 0.3 * (1 + 0.8*math.Sin(500*u)*math.Sin(330*v)) * (0.3 + u)
	case math.Mod(u*9, 1) < 0.25 && math.Mod(v*14, 1) < 0.4:
		return 0.9
	default:
		return 0.02 + 0.03*u
	}
}

// worst is how many times over its threshold a path shows a seam at the most.
func worst(s seamsight.Seam, path seamsight.Path) float64 {
	sample, _ := s.Worst(path)
	return sample.Sightings[path].OverThreshold()
}
