package proof

import (
	"context"
	"image"
	"math"
	"testing"

	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// A draft, whose rays land by slopes, is about as near to the proof as the same few rays traced, when both are
// shrunk to a quarter: on and off the axis, out of round, of a bent picture, and wide open as well as stopped down.
func TestDraftIsTheProofRoughly(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		drops  []layout.Point
	}{
		{"ball", func(*layout.Setup) {}, nil},
		{"off the axis", func(*layout.Setup) {}, []layout.Point{{XMM: 1.5, YMM: -0.7}}},
		{"pressed flat", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.88 }, nil},
		{"straight", straight, nil},
		{"open", func(s *layout.Setup) { s.Camera.FNumber = 5.6 }, nil},
		{"glass", func(s *layout.Setup) { s.Drop.Index = 1.5 }, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 240, 160, 9
				c.change(s)
			})
			scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Drops: c.drops}
			fine, err := scene.Render(context.Background(), nil)
			require.NoError(t, err)
			scene.Samples = 1
			v := scene.view()
			require.True(t, v.draft)
			draft, err := v.render(context.Background(), nil, nil)
			require.NoError(t, err)
			v.draft = false
			traced, err := v.render(context.Background(), nil, nil)
			require.NoError(t, err)
			t.Logf("levels, root mean square: draft %.2f, traced %.2f", quarterRMS(fine, draft), quarterRMS(fine, traced))
			require.NotEqual(t, traced.Pix, draft.Pix)
			require.Less(t, quarterRMS(fine, draft), 1.1*quarterRMS(fine, traced)+0.5)
		})
	}
}

// quarterRMS is how much two frames differ, each shrunk to means of 4 x 4 pixels.
func quarterRMS(a, b *image.RGBA) float64 {
	sum, n := 0.0, 0
	for y := 0; y+4 <= a.Rect.Dy(); y += 4 {
		for x := 0; x+4 <= a.Rect.Dx(); x += 4 {
			for channel := range 3 {
				off := 0.0
				for k := range 16 {
					at := a.PixOffset(x+k%4, y+k/4) + channel
					off += float64(a.Pix[at]) - float64(b.Pix[at])
				}
				sum, n = sum+off*off/256, n+1
			}
		}
	}
	return math.Sqrt(sum / float64(n))
}
