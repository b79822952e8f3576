package proof

import (
	"context"
	"image"
	"math"
	"math/rand"
	"testing"

	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// What rays past the drop see read from a plane, against each of them looked up: to a fraction of a level,
// with strong edges on the board, seams and its end in sight.
func TestPlaneAgainstEachRay(t *testing.T) {
	const seed = 63
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		worst  float64
	}{
		{"plain", func(*layout.Setup) {}, 0.75},
		{"straight", func(s *layout.Setup) { s.Look = layout.Straight }, 0.75},
		{"wide open", func(s *layout.Setup) { s.Camera.FNumber = 5.6 }, 0.75},
		// Beyond it is a dark room, where levels are steep.
		{"board's end in sight", func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 170, 2 }, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				s.Camera.WidthPx, s.Camera.HeightPx = 1500, 1000
				c.change(s)
			})
			v := Scene{Plan: p, Camera: p.Camera, Picture: patches(seed, 20), SeamWidthMM: 0.3}.view()
			b := v.newBeside(context.Background())
			require.Greater(t, b.step, 1)
			set := v.lens.aim(raySet(48))
			plane := v.newPlane(context.Background(), image.Rect(0, 0, (b.across-1)*b.step, (b.down-1)*b.step), set)
			require.NotNil(t, plane)
			random := rand.New(rand.NewSource(seed))
			const places = 400
			square, worst := 0.0, 0.0
			for range places {
				i, j := random.Intn(b.across*b.step-b.step), random.Intn(b.down*b.step-b.step)
				off := math.Abs(level(plane.mean(v.pastMiddle(i, j))) - level(v.pastPixel(i, j, set)))
				square, worst = square+off*off, max(worst, off)
			}
			t.Logf("off by %.3f levels RMS, %.2f at worst, seed %d", math.Sqrt(square/places), worst, seed)
			require.Less(t, math.Sqrt(square/places), 0.25)
			require.Less(t, worst, c.worst)
		})
	}
}
