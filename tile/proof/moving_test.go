package proof

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// falling is a motion that covers so many millimetres in an exposure short enough for gravity not to matter.
func falling(smearMM float64) Motion { return Motion{SpeedMMPerS: smearMM / 1e-5, ExposureS: 1e-5} }

// upperHalf is a picture that is light above and dark below.
func upperHalf() *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, 300, 200))
	for y := range 200 {
		for x := range 300 {
			m.SetGray(x, y, color.Gray{uint8(220 - 180*(y/100))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// column is the light down a column of a frame, linear, from 0 to 1.
func column(frame *image.RGBA, x, from, to int) (light []float64) {
	for y := from; y < to; y++ {
		light = append(light, float64(texture.Linear(frame.RGBAAt(x, y))[1]))
	}
	return light
}

// The picture moves with the drop, and a little more: by the thin lens of focal length f, a place straight behind the
// drop is seen d (L/f) / (L/f - 1 - L/D) off the axis when the drop is off by d, for the ray from the pupil through
// that place leaves the lens by an angle of y/D - (y - d)/f and lands at y + L times that, which is 0. An edge across
// the motion is then drawn out by an even ramp of so many times the smear, which adds 1/12 of its square to the
// variance of the edge at rest.
func TestSmearOfThePicture(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 12, 400, 0.12 })
	l, d, f := p.Drop.DistanceMM, p.Drop.CameraMM, p.Drop.FocalLengthMM
	more := l / f / (l/f - 1 - l/d)
	for _, c := range []struct {
		smearMM float64
		sharp   bool
		samples int
	}{{0.3, true, 24}, {1, true, 96}, {0.3, false, 24}, {0.5, false, 96}, {0.5, false, 24}} {
		t.Run(fmt.Sprintf("%+v", c), func(t *testing.T) {
			scene := Scene{Plan: p, Camera: p.Camera, Picture: upperHalf(), Sharp: c.sharp, Samples: c.samples}
			still, _ := edgeSpread(column(render(t, scene), 6, 100, 300))
			scene.Motion = falling(c.smearMM)
			moving, middle := edgeSpread(column(render(t, scene), 6, 100, 300))
			smearMM := math.Sqrt(12*(moving-still)) * p.Camera.PixelMM()
			require.InEpsilon(t, more*c.smearMM, smearMM, 0.02)
			require.InDelta(t, 100, middle, 1, "about where the drop is in the exposure's middle")
		})
	}
}

// edgeSpread is the variance of the light's change about its middle, in pixels.
func edgeSpread(light []float64) (variance, middle float64) {
	var sum float64
	for i := 1; i < len(light); i++ {
		change := light[i] - light[i-1]
		sum, middle, variance = sum+change, middle+change*float64(i), variance+change*float64(i)*float64(i)
	}
	middle /= sum
	return variance/sum - middle*middle, middle
}

// A drop's upper and lower edges come out as those of a drop at rest, evenly shared out over the smear.
func TestSmearOfTheEdge(t *testing.T) {
	const smearMM = 0.2
	p := plan(t, func(s *layout.Setup) { // a strip through the drop's middle
		s.Fill, s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 0.6, 0.15, 6, 300
	})
	for _, sharp := range []bool{true, false} {
		scene := Scene{Plan: p, Camera: p.Camera, Picture: grey(255), Sharp: sharp, Samples: 96}
		rest := column(render(t, scene), 3, 0, 300)
		scene.Motion = falling(smearMM)
		got := column(render(t, scene), 3, 0, 300)

		smearPx := smearMM / p.Camera.PixelMM()
		for _, rows := range [][2]int{{25, 75}, {225, 275}} {
			off := func(share float64) (sum float64) {
				for y := rows[0]; y < rows[1]; y++ {
					d := got[y] - sharedOut(rest, float64(y), share*smearPx)
					sum += d * d
				}
				return sum
			}
			best := 0.5
			for share := 0.5; share < 1.5; share += 0.002 {
				if off(share) < off(best) {
					best = share
				}
			}
			require.InDelta(t, 1, best, 0.02, "sharp %t, rows %d to %d", sharp, rows[0], rows[1])
		}
	}
}

// The edges at a drop's sides are as sharp as at rest, and the board beside it is the same to the last bit.
func TestWhatSmearLeaves(t *testing.T) {
	const smearMM, side = 0.2, 140
	p := plan(t, func(s *layout.Setup) {
		s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 7.5, side, side
	})
	for _, sharp := range []bool{true, false} {
		scene := Scene{Plan: p, Camera: p.Camera, Picture: grey(120), Sharp: sharp}
		still := render(t, scene)
		scene.Motion = falling(smearMM)
		moving := render(t, scene)
		for x := range side / 4 {
			rest, got := texture.Linear(still.RGBAAt(x, side/2-2)), texture.Linear(moving.RGBAAt(x, side/2-2))
			require.InDelta(t, rest[1], got[1], 0.02, "sharp %t, column %d", sharp, x)
		}
		beside := 0
		for y := range side {
			for x := range side {
				at := p.Camera.At(float64(x)+0.5, float64(y)+0.5)
				blurMM := 0.3 // with what diffraction throws
				if math.Hypot(at.XMM, at.YMM) > p.Sight().ApparentRadiusMM()+smearMM/2+blurMM {
					if rest, got := still.RGBAAt(x, y), moving.RGBAAt(x, y); rest != got {
						require.Equal(t, rest, got)
					}
					beside++
				}
			}
		}
		require.Greater(t, beside, side*side/4)
	}
}

// sharedOut is the mean of values over a width about a place, which lie on straight lines between whole numbers.
func sharedOut(values []float64, at, width float64) (mean float64) {
	const steps = 200
	for k := range steps {
		x := at + width*((float64(k)+0.5)/steps-0.5)
		i := int(math.Floor(x))
		mean += (values[i] + (x-float64(i))*(values[i+1]-values[i])) / steps
	}
	return mean
}

// A frame of moving drops is the mean, in linear light, of frames of drops that stand still along their way.
func TestMovingDropsAreTheMeanOfStillOnes(t *testing.T) {
	const side = 42
	for _, c := range []struct {
		name   string
		motion Motion
		drops  []layout.Point
		change func(*layout.Setup)
		sharp  bool
		frames int
	}{
		{"through a lens", falling(0.3), []layout.Point{{XMM: 0.4, YMM: -0.3}}, nil, false, 8},
		{"sharp", falling(0.3), []layout.Point{{}}, nil, true, 8},
		{"rising", falling(-0.3), []layout.Point{{}}, nil, false, 8},
		{"a straight picture", falling(0.3), []layout.Point{{}}, straight, false, 8},
		{"out of round", falling(0.3), []layout.Point{{}}, func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.85 }, false,
			8},
		{"further than it is high", falling(6), []layout.Point{{}}, nil, false, 36},
		{"one where the other was", falling(5), []layout.Point{{YMM: -2.7}, {YMM: 2.7}}, nil, false, 36},
		// it comes to rest after a fifth of the exposure and falls back: 0.05 mm up, 0.78 down
		{"turning round", Motion{SpeedMMPerS: 25, ExposureS: 0.0158}, []layout.Point{{}}, nil, false, 16},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				if c.change != nil {
					c.change(s)
				}
				s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = side, side, 9
			})
			scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: c.sharp, SeamWidthMM: 0.3, Drops: c.drops,
				Motion: c.motion, Samples: 48}
			got := render(t, scene)
			mean := make([]texture.Light, side*side)
			for k := range c.frames {
				time := c.motion.ExposureS * ((float64(k)+0.5)/float64(c.frames) - 0.5)
				scene.Motion, scene.Drops = Motion{}, nil
				for _, drop := range c.drops {
					// Galileo: v t + g t²/2
					drop.YMM += c.motion.SpeedMMPerS*time + 9806.65/2*time*time
					scene.Drops = append(scene.Drops, drop)
				}
				still := render(t, scene)
				for i := range mean {
					mean[i] = mean[i].Add(texture.Linear(still.RGBAAt(i%side, i/side)).Scale(1 / float32(c.frames)))
				}
			}
			square := 0.0
			for i := range mean {
				d := float64(mean[i].SRGB().G) - float64(got.RGBAAt(i%side, i/side).G)
				square += d * d
			}
			require.Less(t, math.Sqrt(square/float64(len(mean))), 2.0, "root mean square, of 255 levels: noise of "+
				"few rays, see TestNoNoise")
		})
	}
}

// A lamp in the skin is drawn out as the drop moves, its light all there: by 1/12 of the square of the smear more
// variance down, and no more across. For a lamp so far off it stays in its place of the drop.
func TestSmearOfHighlights(t *testing.T) {
	lamp := lampAt(60, 0, 800_000, 200, 0)
	p := plan(t, func(s *layout.Setup) { s.Lamps, s.CameraMM = []layout.Lamp{lamp}, 100_000 })
	for _, sharp := range []bool{true, false} {
		for _, smearMM := range []float64{0.1, 1} {
			scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: sharp}
			spread := func(s Scene) (across, down, all float64) {
				v := s.view()
				var x, y, xx, yy float64
				for n, light := range v.newGlints(t.Context(), p.Lamps).light {
					i, j, l := float64(n%p.Camera.WidthPx), float64(n/p.Camera.WidthPx), float64(light)
					all, x, y, xx, yy = all+l, x+l*i, y+l*j, xx+l*i*i, yy+l*j*j
				}
				return xx/all - x*x/all/all, yy/all - y*y/all/all, all
			}
			restAcross, restDown, rest := spread(scene)
			scene.Motion = falling(smearMM)
			across, down, all := spread(scene)
			require.InEpsilon(t, rest, all, 0.02)
			require.InEpsilon(t, smearMM, math.Sqrt(12*(down-restDown))*p.Camera.PixelMM(), 0.02, "sharp %t", sharp)
			require.InDelta(t, math.Sqrt(restAcross), math.Sqrt(across), 0.02*math.Sqrt(restAcross)+0.05)
		}
	}
}
