package proof

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"

	"github.com/stretchr/testify/require"
)

// lampAt is a lamp far off from a drop that hangs that far before the board, at an angle at the drop from the camera.
func lampAt(degrees, turnDegrees, farMM, dropMM, sizeMM float64) layout.Lamp {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	up, across := math.Sincos(turnDegrees * math.Pi / 180)
	return layout.Lamp{XMM: farMM * sin * across, YMM: farMM * sin * up, ZMM: dropMM + farMM*cos, SizeMM: sizeMM,
		Aim: layout.Aim{AtDrop: true}}
}

// A far lamp of 2 m a kilometre off is mirrored at R sin(theta/2) with Fresnel's share at theta/2, and all its light
// is E R²/4 over white's E0 rho/pi (van de Hulst, Light Scattering by Small Particles, 1957, 12.44); thrown back
// once it is where 4r - 2i = theta, and its light that with T² R and b db/(sin theta dtheta) in place of R²/4. So
// it is to 2 %, in focus, through a lens, and for a drop that hangs off the axis.
func TestHighlightsAgainstClosedForms(t *testing.T) {
	const farMM, radiusMM, index, white = 800_000, 2.5, 1.333, 0.83
	for _, c := range []struct {
		name    string
		degrees float64
		turn    float64
		sharp   bool
		drop    layout.Point
	}{
		{"to the right", 60, 0, true, layout.Point{}},
		{"up to the left", 60, 215, true, layout.Point{}},
		{"to the side", 80, 180, true, layout.Point{}},
		{"through a lens", 30, 30, false, layout.Point{}},
		{"a rainbow's glints", 25, 180, true, layout.Point{}},
		{"beside the axis", 70, -20, true, layout.Point{XMM: 0.7, YMM: -0.4}},
	} {
		t.Run(c.name, func(t *testing.T) {
			lamp := lampAt(c.degrees, c.turn, farMM, 200, 20_000)
			p := plan(t, func(s *layout.Setup) { s.Lamps, s.CameraMM, s.Camera.FNumber = []layout.Lamp{lamp}, 100_000, 8 })
			// On the board it falls aslant, all over alike.
			onBoard := math.Cos(c.degrees * math.Pi / 180)
			view := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: c.sharp, Drops: []layout.Point{c.drop}}.view()

			back := func(i float64) (across, in float64) {
				r := math.Asin(math.Sin(i) / index)
				return math.Pow(math.Sin(i-r)/math.Sin(i+r), 2), math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
			}
			theta := c.degrees * math.Pi / 180
			pixelMM2 := math.Pow(p.Camera.PixelMM(), 2)
			unit := math.Pi / white / onBoard / pixelMM2
			across, in := back(theta / 2)
			type spot struct {
				way           int
				awayMM, light float64
			}
			want := []spot{{flip.ByFront, radiusMM * math.Sin(theta/2), (across + in) / 2 * radiusMM * radiusMM / 4 * unit}}
			for _, side := range []float64{1, -1} { // of Descartes's angle
				from, to := 1.0368, 0.0
				if side < 0 {
					to = math.Pi / 2
				}
				turned := func(i float64) float64 { return 4*math.Asin(math.Sin(i)/index) - 2*i }
				if theta > turned(from) || side < 0 && theta < turned(to) {
					continue
				}
				for range 60 {
					if middle := (from + to) / 2; turned(middle) > theta {
						from = middle
					} else {
						to = middle
					}
				}
				i := from
				slope := 4*math.Cos(i)/math.Sqrt(index*index-math.Pow(math.Sin(i), 2)) - 2
				area := radiusMM * math.Sin(i) * radiusMM * math.Cos(i) / math.Sin(theta) / math.Abs(slope)
				across, in := back(i)
				want = append(want, spot{flip.OnceInside, radiusMM * math.Sin(i),
					((1-across)*(1-across)*across + (1-in)*(1-in)*in) / 2 * area * unit})
			}
			sin, cos := math.Sincos(c.turn * math.Pi / 180)
			face := newFace(lamp, 200)
			gives, cosOff := p.Light().Facing(0, flip.Vec{Z: 200})
			aside := flip.Vec{X: c.drop.XMM, Y: c.drop.YMM}
			for _, w := range want {
				found := 0
				for _, g := range view.sight.Glints(face.middle.Sub(aside)) {
					if away := math.Hypot(g.XMM, g.YMM); g.Way != w.way || math.Abs(away-w.awayMM) > 0.02*radiusMM {
						continue
					}
					found++
					lit := &glints{light: map[int]float32{}}
					view.shine(lit, g, face, aside, gives*math.Pi/layout.WhiteReflects, cosOff)
					var sum, x, y float64
					for n, light := range lit.light {
						px, py := float64(n%480)+0.5-240, float64(n/480)+0.5-160
						sum, x, y = sum+float64(light), x+float64(light)*px, y+float64(light)*py
					}
					x, y = x/sum*p.Camera.PixelMM()-c.drop.XMM, y/sum*p.Camera.PixelMM()-c.drop.YMM
					require.InDelta(t, w.awayMM, math.Hypot(x, y), 0.02*radiusMM)
					require.InDelta(t, 0, x*sin-y*cos, 0.02*radiusMM, "on the line toward the lamp")
					require.InEpsilon(t, w.light, sum, 0.02)
					if w.way == flip.ByFront {
						require.Positive(t, x*cos+y*sin, "on the lamp's side")
					}
				}
				require.Equal(t, 1, found, "way %d", w.way)
			}
		})
	}
}

// The brightest pixel of a mirrored lamp is as bright as told, to a fifth: told is the lamp's image or its blur,
// whichever is larger, and the lens makes both of it.
func TestHighlightsAreAsBrightAsTold(t *testing.T) {
	for _, c := range []struct {
		name    string
		lamp    layout.Lamp
		fNumber float64
	}{
		{"a panel", layout.Lamp{XMM: -400, YMM: -300, ZMM: 500, SizeMM: 300}, 16},
		{"a torch", layout.Lamp{XMM: -400, YMM: -300, ZMM: 500, SizeMM: 30, BeamDeg: 40}, 16},
		{"a torch, wide open", layout.Lamp{XMM: 500, YMM: 0, ZMM: 300, SizeMM: 30}, 4},
		{"on the drop", layout.Lamp{YMM: -500, ZMM: 400, SizeMM: 100, BeamDeg: 60, Aim: layout.Aim{AtDrop: true}}, 11},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) { s.Lamps, s.Camera.FNumber = []layout.Lamp{c.lamp}, c.fNumber })
			v := Scene{Plan: p, Camera: p.Camera, Picture: quarters()}.view()
			lamp := newFace(c.lamp, p.Drop.DistanceMM)
			gives, cosOff := p.Light().Facing(0, flip.Vec{Z: p.Drop.DistanceMM})
			told := shot.Of(p).Highlights()[0]
			require.Equal(t, shot.Mirrored, told.Way)
			g := v.sight.Glints(lamp.middle)[0]
			require.InDelta(t, g.XMM, told.XShare*v.outline.WidthMM, 1e-9)
			require.InDelta(t, g.YMM, told.YShare*v.outline.HeightMM, 1e-9)
			lit := &glints{light: map[int]float32{}}
			v.shine(lit, g, lamp, flip.Vec{}, gives*math.Pi/layout.WhiteReflects, cosOff)
			brightest := 0.0
			for _, light := range lit.light {
				brightest = max(brightest, float64(light))
			}
			require.InEpsilon(t, told.OverWhite, brightest, 0.2)
		})
	}
}

// A narrow beam that points at one of two drops leaves the other as much less light as its beam has there: half at
// half its angle, so the cosine to the power of ln 0.5 / ln cos(2 degrees), over that of a lamp without a beam, whose
// power is 1. The share that the drops' fronts throw to the camera is the same for both lamps and falls out.
func TestNarrowBeamsAreNarrowOffTheAxis(t *testing.T) {
	lamp := layout.Lamp{XMM: -300, YMM: -200, ZMM: 400, SizeMM: 20, Aim: layout.Aim{XMM: 312, YMM: 200}}
	drops := []layout.Point{{XMM: -6}, {XMM: 6}}
	leftOfRight := func(beamDeg float64) float64 {
		lamp := lamp
		lamp.BeamDeg = beamDeg
		p := plan(t, func(s *layout.Setup) {
			s.Lamps, s.Drop.DiameterMM, s.Camera.FrameWidthMM = []layout.Lamp{lamp}, 3, 20
		})
		v := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Drops: drops, Sharp: true}.view()
		var left, right float64
		for n, light := range v.newGlints(t.Context(), p.Lamps).light {
			if n%p.Camera.WidthPx < p.Camera.WidthPx/2 {
				left += float64(light)
			} else {
				right += float64(light)
			}
		}
		require.Positive(t, right)
		return left / right
	}
	cosBetween := func(to flip.Vec) float64 { // the lamp's ways to a drop and to where it points
		from := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: 200 - lamp.ZMM}
		return to.Sub(from).Unit().Dot(flip.Vec{X: lamp.Aim.XMM, Y: lamp.Aim.YMM, Z: 200}.Sub(from).Unit())
	}
	require.InDelta(t, 1, cosBetween(flip.Vec{X: 6}), 1e-12)
	power := math.Log(0.5)/math.Log(math.Cos(2*math.Pi/180)) - 1
	require.InEpsilon(t, math.Pow(cosBetween(flip.Vec{X: -6}), power), leftOfRight(4)/leftOfRight(0), 0.02)
}
