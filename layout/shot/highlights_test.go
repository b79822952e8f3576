package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// planned is the usual plan at 200 mm with a change.
func planned(t *testing.T, change func(*layout.Setup)) layout.Plan {
	s := plain()
	s.DistanceMM = 200
	change(&s)
	return mustPlan(t, s)
}

// farLamp is a lamp 100 m from the drop, at an angle from the camera, and as far from the board's middle but for the
// drop's distance.
func farLamp(degrees, sizeMM float64) layout.Lamp {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return layout.Lamp{XMM: 100_000 * sin, ZMM: 100_000 * cos, SizeMM: sizeMM}
}

// A far lamp is mirrored at sin(theta/2) of the radius, and its face there has the share at theta/2 of its
// brightness: over white that is R pi/(0.83 Omega cos), Omega the solid angle of the face and cos the slant of its
// light on the board. Of one so small that the lens blurs it, the light is that of all of it.
func TestHighlightsOfAFarLamp(t *testing.T) {
	for _, degrees := range []float64{30, 60, 80} {
		const sizeMM = 30_000
		p := planned(t, func(s *layout.Setup) {
			s.Lamps, s.CameraMM, s.Camera.FrameWidthMM = []layout.Lamp{farLamp(degrees, sizeMM)}, 20_000, 6
			s.Camera.FNumber = 22
		})
		all := Of(p).Highlights()
		require.NotEmpty(t, all)
		h := all[0]
		require.Equal(t, Mirrored, h.Way)
		half := degrees / 2 * math.Pi / 180
		require.InDelta(t, math.Sin(half), h.XShare, 0.003, "%g degrees", degrees)
		require.InDelta(t, 0, h.YShare, 1e-6)
		r := math.Asin(math.Sin(half) / p.Drop.Index)
		back := (math.Pow(math.Sin(half-r)/math.Sin(half+r), 2) + math.Pow(math.Tan(half-r)/math.Tan(half+r), 2)) / 2
		steradians := math.Pi / 4 * sizeMM * sizeMM / 1e10
		want := back * math.Pi / 0.83 / steradians / math.Cos(degrees*math.Pi/180)
		require.InEpsilon(t, want, h.OverWhite, 0.02, "%g degrees", degrees)
		require.Equal(t, want > 1, h.BlowsOut)
	}
}

// What blows out does so no more with a face as wide as told.
func TestWiderFaceHoldsAHighlight(t *testing.T) {
	lamp := layout.Lamp{XMM: -500, YMM: -200, ZMM: 600, SizeMM: 80}
	lit := func() Highlight {
		return Of(planned(t, func(s *layout.Setup) { s.Lamps = []layout.Lamp{lamp} })).Highlights()[0]
	}
	small := lit()
	require.True(t, small.BlowsOut)
	require.Greater(t, small.HeldFaceMM, lamp.SizeMM)
	lamp.SizeMM = small.HeldFaceMM * 1.001
	require.False(t, lit().BlowsOut)
	lamp.SizeMM = small.HeldFaceMM * 0.95
	require.True(t, lit().BlowsOut)
}

// Without a lamp's size its brightness is not known, only where it shows; a lamp that has the drop in its back shows
// nowhere, and without lamps there is nothing to show.
func TestHighlightsThatAreNotKnown(t *testing.T) {
	lamp := layout.Lamp{XMM: -500, YMM: -200, ZMM: 600}
	of := func(lamps ...layout.Lamp) []Highlight {
		return Of(planned(t, func(s *layout.Setup) { s.Lamps = lamps })).Highlights()
	}
	require.NotEmpty(t, of(lamp))
	require.Zero(t, of(lamp)[0].OverWhite)
	require.Negative(t, of(lamp)[0].XShare)
	require.Negative(t, of(lamp)[0].YShare)
	require.Empty(t, of(layout.Lamp{XMM: 500, ZMM: 50, BeamDeg: 20, Aim: layout.Aim{XMM: 900}}))
	require.Empty(t, of())
}

// The rim mirrors the picture from where a far camera would have it: a ray that meets the front at i is turned by
// 180 degrees less 2i toward the board's plane, and so the middle of a side that lies h off is mirrored at
// sin((180 - atan(h/L))/2) of the radius; a dark surround must reach as far as the drop sees through that place.
func TestMirroredRim(t *testing.T) {
	p := planned(t, func(s *layout.Setup) { s.CameraMM = 50_000 })
	m := Of(p).MirroredRim()
	for _, c := range []struct{ halfMM, share, needsMM float64 }{
		{p.Picture.WidthMM / 2, m.AcrossFromShare, m.DarkSurround.WidthMM},
		{p.Picture.HeightMM / 2, m.DownFromShare, m.DarkSurround.HeightMM},
	} {
		want := math.Sin((math.Pi - math.Atan(c.halfMM/p.Drop.DistanceMM)) / 2)
		require.InDelta(t, want, c.share, 0.002)
		reachMM, ok := p.Sight().ReachMM(c.share)
		require.True(t, ok)
		require.InEpsilon(t, 2*max(c.halfMM, reachMM), c.needsMM, 1e-6)
	}
	rod := Of(planned(t, func(s *layout.Setup) { s.Drop.Body = flip.UprightRod })).MirroredRim()
	require.Zero(t, rod.DownFromShare)
	require.Positive(t, rod.AcrossFromShare)
}
