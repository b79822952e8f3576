package proof

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// A close-up is a part of the frame in more pixels: brought back to the frame's pixels it is what the proof has there,
// drop and surroundings, as blurred as they are.
func TestCloseUpIsThePartOfTheFrame(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"from near", func(s *layout.Setup) { s.Camera.FNumber, s.CameraMM = 16, 150 }},
		{"drawn long", func(s *layout.Setup) { s.Drop.HeightOverWidth = 1.1 }},
	} {
		p := plan(t, func(s *layout.Setup) {
			c.change(s)
			s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 240, 160, 14.4
		})
		const sidePx = 96 * 4 // four to a pixel of the frame, of which 96 lie in the middle
		_, halfHeightMM := p.Sight().OutlineMM()
		drops := 96 * p.Camera.PixelMM() / (2 * max(halfHeightMM, p.Sight().ApparentRadiusMM()))
		camera := CloseUp(p, sidePx, drops)
		require.InEpsilon(t, p.Camera.PixelMM()/4, camera.PixelMM(), 1e-9, c.name)
		require.InEpsilon(t, p.Camera.AiryPx()*4, camera.AiryPx(), 1e-9, c.name)

		frame := render(t, Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Samples: 24})
		close := render(t, Scene{Plan: p, Camera: camera, Picture: quarters(), Samples: 24})
		square := 0.0
		for j := range 96 {
			for i := range 96 {
				mean := 0.0
				for k := range 16 {
					mean += float64(texture.Linear(close.RGBAAt(4*i+k%4, 4*j+k/4))[1]) / 16
				}
				off := 255 * (math.Sqrt(mean) - math.Sqrt(float64(texture.Linear(frame.RGBAAt(72+i, 32+j))[1])))
				square += off * off / (96 * 96)
			}
		}
		t.Logf("%s: %.2f levels apart", c.name, math.Sqrt(square))
		require.Less(t, math.Sqrt(square), 3.0, c.name)
	}
}
