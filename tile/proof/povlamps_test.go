package proof

import (
	"context"
	"image"
	"image/color"
	"math"
	"path/filepath"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// Lamps against POV-Ray, before a black board: a panel that stands near the second bow's angle, where light thrown back
// twice draws it large, and a torch behind the drop. How bright they are, of white, is worked out by hand: both give as
// much light; a face of area A that does not point at the drop gives it cos/d² of its light over A cos/d², and where
// their light is brightest on the picture both together give it the sum of cos cos/d² over pi, times 0.83.
func TestLampsAgainstPOVRay(t *testing.T) {
	figure := declared(t, "lamps")
	lamp := func(name string) layout.Lamp {
		return layout.Lamp{XMM: figure[name+"_right"], YMM: figure[name+"_down"], ZMM: figure[name+"_before"],
			SizeMM: figure[name+"_size"]}
	}
	lamps := []layout.Lamp{lamp("Panel"), lamp("Torch")}
	s := povScene(t, "lamps", "board.png", 160, func(s *layout.Setup) { s.Lamps = lamps })

	brightest := 0.0
	for x := -270.0; x <= 270; x++ {
		for y := -180.0; y <= 180; y++ {
			sum := 0.0
			for _, l := range lamps {
				d, r := math.Hypot(math.Hypot(x-l.XMM, y-l.YMM), l.ZMM), math.Hypot(math.Hypot(l.XMM, l.YMM), l.ZMM)
				sum += l.ZMM / d * ((r*r - x*l.XMM - y*l.YMM) / r / d) / d / d
			}
			brightest = max(brightest, sum)
		}
	}
	for name, l := range map[string]layout.Lamp{"Panel": lamps[0], "Torch": lamps[1]} {
		require.InEpsilon(t, 1/(math.Pi/4*l.SizeMM*l.SizeMM)*math.Pi/0.83/brightest, figure[name+"_bright"], 1e-3, name)
	}

	s.Picture = black()
	want := openPicture(t, filepath.Join(*povPictures, "lamps.png"))
	got, err := s.Render(context.Background(), nil)
	require.NoError(t, err)
	inside, rim := apart(s.Plan, got, want)
	t.Logf("inside %.2f levels, rim %.2f", inside, rim)
	require.Less(t, inside, 1.0)
	require.Less(t, rim, 3.0)

	// Each of the two mirrored lamps by itself: all its light, and where its middle is.
	for i, l := range lamps {
		for _, g := range s.Plan.Sight().Glints(flip.Vec{X: l.XMM, Y: l.YMM, Z: 200 - l.ZMM}) {
			if g.Way != flip.ByFront {
				continue
			}
			at := s.Camera.Pixel(layout.Point{XMM: g.XMM, YMM: g.YMM})
			sum, x, y := spotOf(got, at, 9)
			wantSum, wantX, wantY := spotOf(want, at, 9)
			t.Logf("lamp %d: light %.2f, POV-Ray %.2f; at %.2f, %.2f, POV-Ray %.2f, %.2f", i+1, sum, wantSum, x, y, wantX, wantY)
			require.InEpsilon(t, wantSum, sum, 0.02)
			require.InDelta(t, wantX, x, 0.1)
			require.InDelta(t, wantY, y, 0.1)
		}
	}
}

// black is an artwork without light.
func black() *texture.Texture {
	return texture.New(&artwork.Picture{Image: image.NewGray(image.Rect(0, 0, 30, 20))})
}

// spotOf is the light about a place of a frame, not counting the room's, and its middle.
func spotOf(frame *image.RGBA, at layout.FramePoint, reachPx float64) (sum, xPx, yPx float64) {
	for j := range frame.Rect.Dy() {
		for i := range frame.Rect.Dx() {
			x, y := float64(i)+0.5, float64(j)+0.5
			light := float64(texture.Linear(color.RGBA(frame.RGBAAt(i, j)))[1])
			if light > 0.01 && math.Hypot(x-at.XPx, y-at.YPx) < reachPx {
				sum, xPx, yPx = sum+light, xPx+light*x, yPx+light*y
			}
		}
	}
	return sum, xPx / sum, yPx / sum
}
