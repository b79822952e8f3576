package proof

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// The Airy pattern: 83.8 % of the light lies within the first dark ring and 91.0 % within the second, at 1.83
// times its radius (Born and Wolf, Principles of Optics, 8.5.2, table 8.2: radii 1.220 and 2.233).
func TestAiryShares(t *testing.T) {
	followed := airyTable[len(airyTable)-1]
	require.Greater(t, followed, 0.95)
	share := func(radius float64) float64 {
		return airyTable[int(math.Round(radius/airyReach*float64(len(airyTable)-1)))]
	}
	require.InDelta(t, 0.838, share(1), 0.001)
	require.InDelta(t, 0.910, share(2.233/1.220), 0.001)
	within := 0
	set := raySet(4096)
	for _, s := range set {
		if math.Hypot(s.airyX, s.airyY) <= 1 {
			within++
		}
	}
	require.InDelta(t, 0.838/followed, float64(within)/float64(len(set)), 0.005)
}

// A set of rays has its middle in the pixel's middle, the spread of an even pixel and an even pupil with what
// its patches add, and the same in all directions.
func TestRaySetIsEven(t *testing.T) {
	for _, n := range []int{8, 12, 24, 96} {
		t.Run(fmt.Sprint(n), func(t *testing.T) {
			set := raySet(n)
			require.Len(t, set, n)
			var pupil, pixel, airy covariance
			var x, y float64
			for _, s := range set {
				x, y = x+s.x+s.pupilX+s.airyX, y+s.y+s.pupilY+s.airyY
				pupil.add(s.pupilX, s.pupilY, 1/float64(n))
				pixel.add(s.x, s.y, 1/float64(n))
				airy.add(s.airyX, s.airyY, 1/float64(n))
			}
			require.InDelta(t, 0, x, 1e-9)
			require.InDelta(t, 0, y, 1e-9)
			for _, c := range []covariance{pupil, pixel, airy} {
				require.InDelta(t, c.xx, c.yy, 1e-9)
				require.InDelta(t, 0, c.xy, 1e-9)
			}
			require.InDelta(t, discVariance, pupil.xx+discVariance*overlap/float64(n), 0.02)
			require.InDelta(t, pixelVariance, pixel.xx+pixelVariance*overlap/float64(n), 0.02)
		})
	}
}

// striped is a picture that is white between two shares of its width and black elsewhere.
func striped(from, to float64) *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, 3000, 20))
	for y := range 20 {
		for x := int(3000 * from); x < int(3000*to); x++ {
			m.SetGray(x, y, color.Gray{255})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// profile is the light along the first row of a frame, linear, from 0 to 1.
func profile(frame *image.RGBA, from, to int) (light []float64) {
	for x := from; x < to; x++ {
		light = append(light, float64(texture.Linear(frame.RGBAAt(x, 0))[1]))
	}
	return light
}

// crossing is where a rising profile passes a level, in pixels.
func crossing(light []float64, level float64) float64 {
	for i := 1; i < len(light); i++ {
		if light[i-1] < level && light[i] >= level {
			return float64(i-1) + (level-light[i-1])/(light[i]-light[i-1])
		}
	}
	return math.NaN()
}

// An edge of the board seen past the drop is blurred to a disc of diameter (F/N) m |d - d_f| / d on the
// sensor (thin lens: Hecht, Optics, 5.2.3). Across a disc of radius r the light rises from
// 10 to 90 % within 1.374 r: (asin s + s sqrt(1 - s²))/pi = 0.4 gives s = 0.687.
func TestBlurOfAnEdgePastTheDrop(t *testing.T) {
	for _, c := range []struct {
		fNumber float64
		focus   layout.Focus
	}{{8, layout.FocusEdge}, {16, layout.FocusEdge}, {16, layout.FocusPicture}} {
		t.Run(fmt.Sprintf("f/%g %s", c.fNumber, c.focus), func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 36, 720, 2
				s.Camera.FNumber, s.Camera.Focus = c.fNumber, c.focus
			})
			// out of the way
			scene := Scene{Plan: p, Camera: p.Camera, Picture: striped(0.5, 1), Samples: 200, Drops: []layout.Point{{YMM: 30}}}
			frame, err := scene.Render(context.Background(), nil)
			require.NoError(t, err)
			light := profile(frame, 0, 720)
			width := crossing(reverseIfFalling(light), 0.9) - crossing(reverseIfFalling(light), 0.1)

			camera := p.Camera
			d := 300.0 + 200
			m := camera.LensMM / (camera.FocusMM - camera.LensMM)
			blurMM := camera.LensMM / camera.FNumber * m * math.Abs(d-camera.FocusMM) / d
			// On the sensor the frame is as wide as the sensor where m is that of the drop's plane.
			blurPx := blurMM / camera.Sensor.WidthMM * 720 * (camera.LensMM / (300 - camera.LensMM)) / m
			require.InEpsilon(t, 1.374*blurPx/2, width, 0.03)
		})
	}
}

func reverseIfFalling(light []float64) []float64 {
	if light[0] < light[len(light)-1] {
		return light
	}
	back := make([]float64, len(light))
	for i, v := range light {
		back[len(light)-1-i] = v
	}
	return back
}

// The drop's own edge: in focus on it the light falls within about the Airy disc; focused on the picture it
// spreads over the blur disc of the edge.
func TestBlurOfTheDropsEdge(t *testing.T) {
	// White where the camera looks past the drop's edge, and black where the drop's outer half looks.
	picture := striped(0.41, 0.59)
	width := func(focus layout.Focus) (gotPx float64, p layout.Plan) {
		p = plan(t, func(s *layout.Setup) {
			s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 900, 2, 9
			s.Camera.FNumber, s.Camera.Focus = 11, focus
		})
		frame, err := Scene{Plan: p, Camera: p.Camera, Picture: picture, Samples: 100}.Render(context.Background(), nil)
		require.NoError(t, err)
		light := profile(frame, 450+200, 900) // outward through the edge, 250 pixels from the middle
		return crossing(light, 0.9) - crossing(light, 0.1), p
	}
	sharp, p := width(layout.FocusEdge)
	require.Less(t, sharp, 1.1*p.Camera.AiryPx()+1.5)
	soft, p := width(layout.FocusPicture)
	blurPx := p.Camera.PupilMM() * (p.EdgeMM() -
		p.Camera.FocusMM) / p.Camera.FocusMM * (300 / p.EdgeMM()) / p.Camera.PixelMM()
	require.InEpsilon(t, 1.374*blurPx/2, soft, 0.12, "blur disc %.2f px; diffraction and the drop's curve widen "+
		"it a little", blurPx)
}

// Off the axis, against the trace of a drop that stays where it is while everything else moves: what a
// pinhole sees through a drop at (X, Y) is what it sees, from -X, -Y, through a centred one.
func TestDropOffTheAxis(t *testing.T) {
	const seed = 40
	random := rand.New(rand.NewSource(seed))
	p := plan(t, nil)
	v := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: true,
		Drops: []layout.Point{{XMM: 0.8, YMM: -0.5}}}.view()
	for range 200 {
		angle, fill := 2*math.Pi*random.Float64(), 0.9*random.Float64()
		at := layout.Point{XMM: 0.8 + fill*2.5*math.Cos(angle), YMM: -0.5 + fill*2.5*math.Sin(angle)}
		got, ok := v.sight.Trace(fromDrop(v.lens.pupilRay(at, 0, 0), v.drops[0]))
		require.True(t, ok && got.Through)
		eye := flip.Vec{X: -0.8, Y: 0.5, Z: -300}
		want, ok := p.Sight().Trace(flip.Ray{From: eye, Dir: flip.Vec{X: at.XMM - 0.8, Y: at.YMM + 0.5}.Sub(eye).Unit()})
		require.True(t, ok)
		require.InDelta(t, want.XMM, got.XMM, 1e-9, "seed %d", seed)
		require.InDelta(t, want.YMM, got.YMM, 1e-9, "seed %d", seed)
	}
}

// Same bytes every run, and more rays change the picture by little: what noise there is lies under what can be seen.
func TestNoNoise(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.WidthPx, s.Camera.HeightPx = 180, 120 })
	scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), SeamWidthMM: 0.3}
	one, err := scene.Render(context.Background(), nil)
	require.NoError(t, err)
	two, err := scene.Render(context.Background(), nil)
	require.NoError(t, err)
	require.Equal(t, one.Pix, two.Pix)

	scene.Samples = 10 * DefaultSamples
	fine, err := scene.Render(context.Background(), nil)
	require.NoError(t, err)
	square := 0.0
	for i := range one.Pix {
		d := float64(one.Pix[i]) - float64(fine.Pix[i])
		square += d * d
	}
	require.Less(t, math.Sqrt(square/float64(len(one.Pix))), 2.5, "levels of 255; 2.5 is one per cent")
}

// Lamps: the board beside the drop is as bright as the plan's light says; bare seams and the print alike.
func TestLampsLightTheBoard(t *testing.T) {
	p := plan(t, func(s *layout.Setup) {
		s.Lamps = []layout.Lamp{{XMM: -200, YMM: -100, ZMM: 300}}
		s.Camera.FrameWidthMM = 60
	})
	m := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range m.Pix {
		m.Pix[i] = 188
	}
	frame := Pinhole(p, p.Camera, texture.New(&artwork.Picture{Image: m}))
	base := float64(texture.Linear(color.RGBA{188, 188, 188, 255})[1])
	for _, px := range []image.Point{{20, 20}, {460, 20}, {20, 300}, {460, 300}} {
		at := p.Camera.At(float64(px.X)+0.5, float64(px.Y)+0.5)
		far := 500.0 / 300
		want := base * p.Light().At(at.XMM*far+p.Backdrop.WidthMM/2, at.YMM*far+p.Backdrop.HeightMM/2)
		require.InEpsilon(t, want, float64(texture.Linear(frame.RGBAAt(px.X, px.Y))[1]), 0.02, "%v", px)
	}
}

func TestRenderStops(t *testing.T) {
	p := plan(t, nil)
	ctx, stop := context.WithCancel(context.Background())
	stop()
	_, err := Scene{Plan: p, Camera: p.Camera, Picture: quarters()}.Render(ctx, nil)
	require.ErrorIs(t, err, context.Canceled)
}
