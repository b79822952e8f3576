package proof

import (
	"context"
	"image"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

func render(t *testing.T, s Scene) *image.RGBA {
	t.Helper()
	frame, err := s.Render(context.Background(), nil)
	require.NoError(t, err)
	return frame
}

// A spheroid that is round shows what the ball shows, to the rounding of a level.
func TestRoundSpheroidIsTheBall(t *testing.T) {
	for _, look := range []layout.Look{layout.Bulged, layout.Straight} {
		change := func(ratio float64) func(*layout.Setup) {
			return func(s *layout.Setup) {
				s.Look, s.Drop.HeightOverWidth, s.Camera.WidthPx, s.Camera.HeightPx = look, ratio, 120, 80
			}
		}
		ball, spheroid := plan(t, change(0)), plan(t, change(1+1e-12))
		for _, sharp := range []bool{true, false} {
			one := render(t, Scene{Plan: ball, Camera: ball.Camera, Picture: quarters(), Sharp: sharp})
			two := render(t, Scene{Plan: spheroid, Camera: spheroid.Camera, Picture: quarters(), Sharp: sharp})
			for i := range one.Pix {
				if max(one.Pix[i], two.Pix[i])-min(one.Pix[i], two.Pix[i]) > 1 { // require takes longer than to render
					require.FailNow(t, "not the ball", "look %s, sharp %t: %d and %d", look, sharp, one.Pix[i], two.Pix[i])
				}
			}
		}
	}
}

// The edge of a drop out of round is an ellipse in the frame: its dark rim against the white print beside it,
// in every direction. A line through the pupil touches the spheroid where its slope m satisfies m²(D² - a²) =
// a² to the side and b² upward, and crosses the drop's plane at mD. The board is mirrored there, whole at the edge
// itself; half of it is left where water mirrors half, at 83.6 degrees (by Fresnel's formulas), whose sine is 0.9938.
func TestEdgeOfASpheroid(t *testing.T) {
	for _, k := range []float64{0.85, 1.15} {
		p := plan(t, func(s *layout.Setup) {
			s.Drop.HeightOverWidth, s.Fill, s.Camera.FrameWidthMM = k, 0.6, 9.6 // a wide dark rim
		})
		frame := Pinhole(p, p.Camera, grey(255))
		a := 2.5 / math.Cbrt(k)
		pxPerSlope := 300 / math.Sqrt(300*300-a*a) / p.Camera.PixelMM()
		for deg := 0.0; deg < 360; deg += 7.5 {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			want := 0.9938 / math.Hypot(cos/(a*pxPerSlope), sin/(k*a*pxPerSlope))
			// Inward from outside, until half of the light is left.
			last := 1.0
			got := math.NaN()
			for r := want + 8; r > want-8; r -= 0.1 {
				x, y := 240+r*cos-0.5, 160+r*sin-0.5
				light := bilinear(frame, x, y)
				if last >= 0.5 && light < 0.5 {
					got = r
					break
				}
				last = light
			}
			require.InDelta(t, want, got, 0.5, "height over width %g, at %g degrees", k, deg)
		}
	}
}

// bilinear is the light between four pixels' centres, green.
func bilinear(frame *image.RGBA, x, y float64) float64 {
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	at := func(i, j int) float64 { return float64(texture.Linear(frame.RGBAAt(i, j))[1]) }
	return at(i, j)*(1-fx)*(1-fy) + at(i+1, j)*fx*(1-fy) + at(i, j+1)*(1-fx)*fy + at(i+1, j+1)*fx*fy
}

// Some drops in a frame are that many frames of one drop each, joined halfway between: out of focus and
// sharp, for round drops and others, and for rods.
func TestDropsAreFramesJoined(t *testing.T) {
	// the last partly beyond the frame
	at := []layout.Point{{XMM: -3.1, YMM: -1}, {XMM: 2.9, YMM: 0.4}, {XMM: 9.5, YMM: 1.5}}
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		sharp  bool
	}{
		{"sharp", func(*layout.Setup) {}, true},
		{"through a lens", func(*layout.Setup) {}, false},
		{"oblate", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.9 }, false},
		{"upright rods, a straight picture", func(s *layout.Setup) {
			s.Drop.Body, s.Look = flip.UprightRod,
				layout.Straight
		}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				c.change(s)
				s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 216, 96, 16
			})
			scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: c.sharp, SeamWidthMM: 0.3, Drops: at}
			all := render(t, scene)
			var alone []*image.RGBA
			for _, drop := range at {
				scene.Drops = []layout.Point{drop}
				alone = append(alone, render(t, scene))
			}
			halfWidthMM, halfHeightMM := p.Sight().OutlineMM()
			shown := make([]int, len(at))
			for j := range 96 {
				for i := range 216 {
					look := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
					nearest, share := 0, math.Inf(1)
					for k, drop := range at {
						if s := math.Hypot((look.XMM-drop.XMM)/halfWidthMM, (look.YMM-drop.YMM)/halfHeightMM); s < share {
							nearest, share = k, s
						}
					}
					if share < 1 {
						shown[nearest]++
					}
					if want, got := alone[nearest].RGBAAt(i, j), all.RGBAAt(i, j); want != got {
						require.Equal(t, want, got, "pixel %d, %d", i, j)
					}
				}
			}
			for k := range at {
				require.Greater(t, shown[k], 100, "drop %d is in the frame", k)
			}
		})
	}
	p := plan(t, func(s *layout.Setup) { s.Camera.WidthPx, s.Camera.HeightPx = 60, 40 })
	scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: true}
	none := render(t, scene)
	scene.Drops = []layout.Point{{}}
	require.Equal(t, render(t, scene).Pix, none.Pix, "without places there is one on the axis")
}
