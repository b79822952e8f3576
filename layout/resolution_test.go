package layout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/flip/units"
)

// Straight, every frame pixel in the drop sees the same length of picture: that of the drop's plane times the flat picture's scale.
func TestResolutionOfAStraightPicture(t *testing.T) {
	s := plain()
	s.Look = Straight
	p := mustPlan(t, s)
	r := p.Resolution()
	const widthPx, heightPx = 3000, 2000
	want := p.Camera.PixelMM() * p.Picture.MadeFor.FlatPerDrop / p.Picture.FlatHeightMM * heightPx
	centre, rim := r.ArtworkPx(widthPx, heightPx)
	require.InEpsilon(t, want, centre, 1e-6)
	require.InEpsilon(t, want, rim, 1e-6)
	require.InEpsilon(t, heightPx/want, float64(r.NeededHeightPx), 0.005)
	require.InEpsilon(t, widthPx/want, float64(r.NeededWidthPx), 0.005)
	require.InEpsilon(t, 2*0.85*p.Sight().ApparentRadiusMM()/p.Camera.PixelMM(), r.AcrossPx, 1e-9)
}

// Bulged, the middle follows the near-axis scale (thin lens) and the rim is where the drop squeezes: there a frame pixel sees more.
func TestResolutionOfABulgedPicture(t *testing.T) {
	s := plain()
	s.CameraMM = 100_000 // far off, where the thin lens is simple
	s.Camera.FrameWidthMM = 20
	p := mustPlan(t, s)
	r := p.Resolution()
	f := p.Drop.FocalLengthMM
	require.InEpsilon(t, (p.Drop.DistanceMM-f)/f*p.Camera.PixelMM(), r.CentreMM, 0.01)
	require.Greater(t, r.RimMM, r.CentreMM)
	require.InDelta(t, math.Ceil(units.PerMM(2/r.CentreMM).PixelsPerInch()), r.NeededPPI, 1)
	centre, _ := r.ArtworkPx(1500, 1000)
	require.InEpsilon(t, r.CentreMM/p.Picture.WidthMM*1500, centre, 1e-6)
}

func TestLeast2(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b Point
		want float64
	}{
		{"even", Point{2, 0}, Point{0, 2}, 2},
		{"stretched", Point{5, 0}, Point{0, 2}, 2},
		{"mirrored", Point{-5, 0}, Point{0, 2}, 2},
		{"turned by 30 degrees and stretched", Point{3 * math.Cos(math.Pi/6), 3 * math.Sin(math.Pi/6)}, Point{-7 * math.Sin(math.Pi/6), 7 * math.Cos(math.Pi/6)}, 3},
		{"flat", Point{1, 1}, Point{2, 2}, 0},
	} {
		t.Run(c.name, func(t *testing.T) { require.InDelta(t, c.want, least2(c.a, c.b), 1e-12) })
	}
}

// In the level plane a spheroid is a ball of its width, so what the picture's width becomes follows from the closed form of a ball that is wider by the cube root.
func TestSwing(t *testing.T) {
	p := mustPlan(t, plain())
	s, ok := p.Swing()
	require.True(t, ok)
	require.InDelta(t, 0.9, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1/0.9, s.Long.HeightOverWidth, 1e-12)
	require.Zero(t, s.PerSecond, "of an unnamed liquid")
	for _, swung := range []SwungPicture{s.Flat, s.Long} {
		wider := p.Sight()
		wider.Drop.DiameterMM /= math.Cbrt(swung.HeightOverWidth)
		fill, ok := wider.FillAt(p.Picture.ReachMM)
		require.True(t, ok)
		require.InDelta(t, fill*wider.ApparentRadiusMM()/(p.Picture.Fill*p.Sight().ApparentRadiusMM()), swung.WidthShare, 1e-7)
	}
	require.Greater(t, s.Flat.WidthShare, s.Flat.HeightShare)
	require.Less(t, s.Long.WidthShare, s.Long.HeightShare)

	oblate := plain()
	oblate.Drop.HeightOverWidth, oblate.Material = 0.85, "water"
	q := mustPlan(t, oblate)
	s, ok = q.Swing()
	require.True(t, ok)
	require.InDelta(t, 0.85, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1, s.Flat.WidthShare, 1e-9, "as planned")
	require.InDelta(t, 1, s.Flat.HeightShare, 1e-9)
	// Of the frequency there is no second source at hand; that it goes with the size as Rayleigh has it, to the power of -3/2, is all that is tested.
	require.InEpsilon(t, math.Pow(2, 1.5), swingsPerSecond(2)/swingsPerSecond(4), 1e-9)
	require.InDelta(t, 31, swingsPerSecond(5), 1)

	rod := plain()
	rod.Drop.Body = flip.LevelRod
	_, ok = mustPlan(t, rod).Swing()
	require.False(t, ok)
}
