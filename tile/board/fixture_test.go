package board

import (
	"image"
	"image/color"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// flatPlan is a picture of 100 by 80 mm in the middle of a board of 200 by 100 mm.
func flatPlan(surround layout.Surround, reverses flip.Reversal) layout.Plan {
	return layout.Plan{
		Drop:     layout.Drop{Reverses: reverses},
		Picture:  layout.Picture{WidthMM: 100, HeightMM: 80},
		Backdrop: layout.Backdrop{WidthMM: 200, HeightMM: 100, Surround: surround},
	}
}

// bentPlan is a straight print on small sheets, so that corners of the board have none.
func bentPlan(t *testing.T, change func(*layout.Setup)) layout.Plan {
	t.Helper()
	a6, err := layout.ParsePaper("A6")
	require.NoError(t, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 600,
		Look: layout.Straight,
		Fit:  layout.Cover, Proportions: 1.5, Paper: a6, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 480, HeightPx: 320,
			FrameWidthMM: 7.2, FNumber: 16, Focus: layout.FocusBest},
	}
	if change != nil {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// drawn is a grey picture by its levels.
func drawn(w, h int, level func(x, y int) uint8) *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{level(x, y)})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// quarters are four flat ones: level 50 and 100 over 150 and 200.
func quarters() *texture.Texture {
	return drawn(100, 80, func(x, y int) uint8 { return uint8(50 + 50*(2*(y/40)+x/50)) })
}

// slope grows lighter to the right, by level.
func slope() *texture.Texture {
	return drawn(600, 400, func(x, _ int) uint8 { return uint8(20 + x*200/600) })
}

// Lights for what is not printed, in the tests.
var (
	white  = texture.Light{1, 1, 1}
	nobody = texture.Light{0, 1, 0}
)

// light is what a patch shows under even light on white paper.
func light(s *Surface, xMM, yMM float64, over Patch) texture.Light {
	seen := s.At(xMM, yMM, over)
	return seen.Under(1, white, nobody)
}
