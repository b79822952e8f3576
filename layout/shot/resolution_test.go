package shot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Straight, every frame pixel in the drop sees the same length of picture: that of the drop's plane times the
// flat picture's scale.
func TestResolutionOfAStraightPicture(t *testing.T) {
	s := plain()
	s.Look = layout.Straight
	p := mustPlan(t, s)
	r := Of(p).Resolution()
	const widthPx, heightPx = 3000, 2000
	want := p.Camera.PixelMM() * p.Picture.MadeFor.FlatPerDrop / p.Picture.FlatHeightMM * heightPx
	centre, rim := r.ArtworkPx(widthPx, heightPx)
	require.InEpsilon(t, want, centre, 1e-6)
	require.InEpsilon(t, want, rim, 1e-6)
	require.InEpsilon(t, heightPx/want, float64(r.NeededHeightPx), 0.005)
	require.InEpsilon(t, widthPx/want, float64(r.NeededWidthPx), 0.005)
}

// How far the picture spans in the frame, by known geometry. Straight it appears as drawn: inside, its
// corners lie on the fill, so a picture of 3 to 2 is 3 parts of sqrt(13) of the fill wide. A plain one ends
// where the closed form of the fill puts its edges.
func TestSpans(t *testing.T) {
	fillPx := func(p layout.Plan) float64 { return 2 * 0.85 * p.Sight().ApparentRadiusMM() / p.Camera.PixelMM() }
	share := func(p layout.Plan, mm float64) float64 {
		u, ok := p.Sight().FillAt(mm)
		require.True(t, ok)
		return u / 0.85
	}
	diagonal := math.Sqrt(13)
	for _, c := range []struct {
		name         string
		change       func(*layout.Setup)
		across, down func(layout.Plan) float64 // of the fill's extent
	}{
		{"straight, cover", func(s *layout.Setup) { s.Look = layout.Straight }, func(layout.Plan) float64 { return 1 },
			func(layout.Plan) float64 { return 1 }},
		{"straight, inside", func(s *layout.Setup) { s.Look, s.Fit = layout.Straight, layout.Inside },
			func(layout.Plan) float64 { return 3 / diagonal }, func(layout.Plan) float64 { return 2 / diagonal }},
		{"straight, inside, a quarter turn", func(s *layout.Setup) {
			s.Look, s.Fit, s.Framing.TurnDeg = layout.Straight,
				layout.Inside, 90
		},
			func(layout.Plan) float64 { return 2 / diagonal }, func(layout.Plan) float64 { return 3 / diagonal }},
		{"straight, inside, its corner on the axis", func(s *layout.Setup) {
			s.Look, s.Fit, s.Framing.OffX,
				s.Framing.OffY = layout.Straight, layout.Inside, -0.5, -0.5
		},
			func(layout.Plan) float64 { return 1.5 / diagonal }, func(layout.Plan) float64 { return 1 / diagonal }},
		{"plain, inside", func(s *layout.Setup) { s.Fit = layout.Inside },
			func(p layout.Plan) float64 { return share(p, p.Picture.WidthMM/2) },
			func(p layout.Plan) float64 { return share(p, p.Picture.HeightMM/2) }},
		{"plain, cover", func(s *layout.Setup) {}, func(layout.Plan) float64 { return 1 },
			func(layout.Plan) float64 { return 1 }},
		{"a straight level rod: as wide as its height asks", func(s *layout.Setup) {
			s.Look, s.Drop.Body = layout.Straight,
				flip.LevelRod
		}, func(layout.Plan) float64 { return 1.5 }, func(layout.Plan) float64 { return 1 }},
		{"a straight upright rod: as high as its width asks", func(s *layout.Setup) {
			s.Look, s.Drop.Body = layout.Straight,
				flip.UprightRod
		}, func(layout.Plan) float64 { return 1 }, func(layout.Plan) float64 { return 2.0 / 3 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			c.change(&s)
			p := mustPlan(t, s)
			r := Of(p).Resolution()
			require.InEpsilon(t, c.across(p)*fillPx(p), r.AcrossPx, 1e-4)
			require.InEpsilon(t, c.down(p)*fillPx(p), r.DownPx, 1e-4)
		})
	}

	s := plain()
	s.Look, s.Drop.Body, s.Camera.LensMM, s.Camera.FrameWidthMM = layout.Straight, flip.LevelRod, 0, 6
	p := mustPlan(t, s)
	require.InDelta(t, float64(p.Camera.WidthPx), Of(p).Resolution().AcrossPx, 1e-6, "no further than the frame goes")
}

// Along a rod light meets parallel faces, as of a plate 2R thick: a ray at angle a to the axis lands (D - R)
// tan a + 2R tan a' + (L - R) tan a away, with sin a = n sin a' (Snell), and shows D tan a away in the drop's
// plane. Across it the near-axis scale of the thin lens holds in the middle.
func TestResolutionOfARod(t *testing.T) {
	for _, body := range []flip.Body{flip.UprightRod, flip.LevelRod} {
		s := plain()
		s.Drop.Body, s.Proportions = body, 1
		s.Camera.LensMM, s.Camera.FrameWidthMM = 0, 400
		p := mustPlan(t, s)
		r := Of(p).Resolution()
		along := r.DownPx
		if body == flip.LevelRod {
			along = r.AcrossPx
		}
		d, l, radius := p.Drop.CameraMM, p.Drop.DistanceMM, p.Drop.DiameterMM/2
		lands := func(throughMM float64) float64 {
			a := math.Atan(throughMM / d)
			return (d+l-2*radius)*math.Tan(a) + 2*radius*math.Tan(math.Asin(math.Sin(a)/p.Drop.Index))
		}
		require.InEpsilon(t, p.Picture.HeightMM/2, lands(along/2*p.Camera.PixelMM()), 1e-6, body)
		require.InEpsilon(t, lands(p.Camera.PixelMM()), r.CentreAlongMM, 1e-4, body)

		s.CameraMM = 100_000
		p = mustPlan(t, s)
		r = Of(p).Resolution()
		f := p.Drop.FocalLengthMM
		across := (p.Drop.DistanceMM - f) / f * p.Camera.PixelMM()
		require.InEpsilon(t, across, r.CentreMM, 0.01, body)
		require.Greater(t, r.RimMM, r.CentreMM)
		require.InEpsilon(t, units.PerMM(2/across).PixelsPerInch(), r.NeededPPI, 0.05, "across it alone")
		require.InEpsilon(t, p.Picture.WidthMM/across, float64(r.NeededWidthPx), 0.05, "across it alone")
	}
	ball := Of(mustPlan(t, plain())).Resolution()
	require.Zero(t, ball.CentreAlongMM)
	require.Zero(t, ball.RimAlongMM)
}

// Bulged, the middle follows the near-axis scale (thin lens) and the rim is where the drop squeezes: there a
// frame pixel sees more.
func TestResolutionOfABulgedPicture(t *testing.T) {
	s := plain()
	s.CameraMM = 100_000 // far off, where the thin lens is simple
	s.Camera.FrameWidthMM = 20
	p := mustPlan(t, s)
	r := Of(p).Resolution()
	f := p.Drop.FocalLengthMM
	require.InEpsilon(t, (p.Drop.DistanceMM-f)/f*p.Camera.PixelMM(), r.CentreMM, 0.01)
	require.Greater(t, r.RimMM, r.CentreMM)
	// Near the fill, at 0.98 of it, by the closed form: the drop squeezes more toward its rim than round it, so what
	// counts is how far the board's place lies from the axis against the point of the drop's plane that shows it.
	out := 0.98 * p.Picture.Fill
	heightMM, ok := p.Sight().ReachMM(out)
	require.True(t, ok)
	require.InEpsilon(t, heightMM/(out*p.Sight().ApparentRadiusMM())*p.Camera.PixelMM(), r.RimMM, 1e-3)
	require.InDelta(t, math.Ceil(units.PerMM(2/r.CentreMM).PixelsPerInch()), r.NeededPPI, 1)
	centre, _ := r.ArtworkPx(1500, 1000)
	require.InEpsilon(t, r.CentreMM/p.Picture.WidthMM*1500, centre, 1e-6)
}

func TestLeast2(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b layout.Point
		want float64
	}{
		{"even", layout.Point{XMM: 2, YMM: 0}, layout.Point{XMM: 0, YMM: 2}, 2},
		{"stretched", layout.Point{XMM: 5, YMM: 0}, layout.Point{XMM: 0, YMM: 2}, 2},
		{"mirrored", layout.Point{XMM: -5, YMM: 0}, layout.Point{XMM: 0, YMM: 2}, 2},
		{"turned by 30 degrees and stretched", layout.Point{XMM: 3 * math.Cos(math.Pi/6), YMM: 3 * math.Sin(math.Pi/6)},
			layout.Point{XMM: -7 * math.Sin(math.Pi/6), YMM: 7 * math.Cos(math.Pi/6)}, 3},
		{"flat", layout.Point{XMM: 1, YMM: 1}, layout.Point{XMM: 2, YMM: 2}, 0},
	} {
		t.Run(c.name, func(t *testing.T) { require.InDelta(t, c.want, least2(c.a, c.b), 1e-12) })
	}
}
