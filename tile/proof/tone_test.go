package proof

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// exposed is a plan whose one lamp, 1 m before the board, gives its middle the lux that it needs, times a factor: at
// f/16, half life size, 1/1000 s and ISO 1600 that is 250 x 256 x 2.25 / 1.6 = 90,000 (ISO 2720).
func exposed(t *testing.T, factor float64) layout.Plan {
	return plan(t, func(s *layout.Setup) {
		s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 72, 90, 60
		s.Shooting = layout.Shooting{ISO: 1600, ShutterS: 1e-3}
		s.Lamps = []layout.Lamp{{ZMM: 1000, LuxAt1M: 90_000 * factor}}
	})
}

// A grey card, exposed as the meter says, comes out at level 118 (ISO 12232, standard output sensitivity), and a stop
// is a factor of two in the light that levels stand for (IEC 61966-2-1).
func TestGreyCardIsRecordedAsGrey(t *testing.T) {
	card := texture.Light{0.18 / 0.83, 0.18 / 0.83, 0.18 / 0.83}.SRGB().G // printed on paper that sends back 0.83
	for _, c := range []struct {
		factor float64
		want   uint8
	}{{1, 118}, {2, 162}, {0.25, 60}, {6, 255}, {0, 0}} { // by hand: 0.36, 0.045 and over 1 of the light
		p := exposed(t, c.factor)
		if c.factor == 0 {
			p.Lamps[0].LuxAt1M, p.Lamps[0].Aim = 1, layout.Aim{AtDrop: true}
			p.Lamps[0].ZMM = 100 // between board and drop, its back to the board
		}
		scene := Scene{Plan: p, Camera: p.Camera, Picture: grey(card), Sharp: true}.AsRecorded()
		require.InDelta(t, c.want, render(t, scene).RGBAAt(45, 25).G, 1, "%g times the light", c.factor)
	}
	p := exposed(t, 1)
	p.Shooting.ISO = 0
	scene := Scene{Plan: p, Camera: p.Camera, Picture: grey(card), Sharp: true}.AsRecorded()
	require.Zero(t, scene.White)
	require.Equal(t, card, render(t, scene).RGBAAt(45, 25).G, "its own level where brightness is set for it")
}

// A stop of light, of ISO, of the lens or of time is one and the same.
func TestStopsAreAlike(t *testing.T) {
	base := Scene{Plan: exposed(t, 1)}.AsRecorded()
	require.Positive(t, base.White)
	for name, change := range map[string]func(*layout.Plan){
		"ISO":     func(p *layout.Plan) { p.Shooting.ISO *= 2 },
		"shutter": func(p *layout.Plan) { p.Shooting.ShutterS *= 2 },
		"lens":    func(p *layout.Plan) { p.Camera.FNumber /= math.Sqrt2 },
		"lamps":   func(p *layout.Plan) { p.Lamps = append(p.Lamps, p.Lamps[0]) },
	} {
		p := exposed(t, 1)
		change(&p)
		wider := Scene{Plan: p}.AsRecorded()
		require.InEpsilon(t, 2*base.White, wider.White, 1e-9, name)
	}
}

func TestTones(t *testing.T) {
	frame := image.NewRGBA(image.Rect(0, 0, 10, 10))
	for i := range 100 {
		c := color.RGBA{100, 100, 100, 255}
		switch {
		case i < 7:
			c = color.RGBA{255, 3, 0, 255}
		case i < 20:
			c = color.RGBA{3, 2, 0, 255} // 1/1024 of the light is level 3.2
		case i < 50:
			c = color.RGBA{0, 0, 4, 255}
		}
		frame.SetRGBA(i%10, i/10, c)
	}
	require.Equal(t, Tones{0.07, 0.13}, TonesOf(frame))
}
