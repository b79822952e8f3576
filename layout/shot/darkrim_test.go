package shot

import (
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

func TestDarkRimAndSensitivity(t *testing.T) {
	p := mustPlan(t, plain())
	rim := Of(p).DarkRim()
	require.InDelta(t, 1-layout.DefaultFill, rim.DownShare, 1e-9, "the picture is wider than high, so its top and bottom "+
		"set the fill")
	require.Less(t, rim.AcrossShare, rim.DownShare)
	require.Less(t, rim.CornerShare, rim.AcrossShare)

	// The print hardly depends on the drop's size. From a far camera the ray at a fill leaves a drop of any size at the
	// same angle phi; L tan phi + b/cos phi then differs by b alone, which is no more than the radius, 2.5 mm against a
	// reach of 150. So ten per cent on the drop must move the fill by far less.
	s := Of(p).Sensitivity()
	require.InDelta(t, layout.DefaultFill, s.DropLargerFill, 0.005)
	require.InDelta(t, layout.DefaultFill, s.DropSmallerFill, 0.005)
	require.Greater(t, s.NearerFill, layout.DefaultFill, "nearer, the same print fills more")
	require.Less(t, s.FurtherFill, layout.DefaultFill)

	// Each is the fill of the same print in a setup that is off by that much.
	off := func(diameterMM, distanceMM float64) float64 {
		s := plain()
		s.Drop.DiameterMM, s.DistanceMM, s.Print = diameterMM, distanceMM,
			p.Picture.Print()
		return mustPlan(t, s).Picture.Fill
	}
	for _, c := range []struct{ got, want float64 }{
		{s.DropSmallerFill, off(4.5, 200)}, {s.DropLargerFill, off(5.5, 200)}, {s.NearerFill, off(5, 190)},
		{s.FurtherFill, off(5, 210)},
	} {
		require.InDelta(t, c.want, c.got, 1e-9)
	}
	near := plain()
	near.DistanceMM, near.Fill = 12, 0.9
	require.Zero(t, Of(mustPlan(t, near)).Sensitivity().NearerFill, "10 mm nearer the drop does not turn it over")
}

// A rod's rim is what the picture's side across it leaves.
func TestDarkRimOfARod(t *testing.T) {
	for _, fit := range []layout.Fit{layout.Cover, layout.Inside} {
		for _, proportions := range []float64{0.6, 1.5} {
			s := plain()
			s.Fit, s.Proportions = fit, proportions
			s.Drop.Body = flip.UprightRod
			require.InEpsilon(t, 1-layout.DefaultFill, Of(mustPlan(t, s)).DarkRim().AcrossShare, 1e-9, "%s, %g", fit,
				proportions)
			s.Drop.Body = flip.LevelRod
			require.InEpsilon(t, 1-layout.DefaultFill, Of(mustPlan(t, s)).DarkRim().DownShare, 1e-9, "%s, %g", fit, proportions)
		}
	}
}

// About a bent picture the rim starts where the outline does: widest where that is nearest to the axis.
func TestDarkRimOfABentPicture(t *testing.T) {
	for name, setup := range bentSetups() {
		if setup.Drop.Body != flip.Ball {
			continue
		}
		t.Run(name, func(t *testing.T) {
			p := mustPlan(t, setup)
			furthest, nearest := 0.0, 1.0
			for _, e := range p.BentOutline() {
				furthest, nearest = max(furthest, e.DropShare), min(nearest, e.DropShare)
			}
			rim := Of(p).DarkRim()
			require.InDelta(t, 1-nearest, rim.AcrossShare, 1e-6)
			require.InDelta(t, 1-furthest, rim.CornerShare, 1e-6)
		})
	}
}

// In a surround the rim starts at the board's edge.
func TestDarkRimOfASurround(t *testing.T) {
	s := wide()
	without := Of(mustPlan(t, s)).DarkRim()
	s.Surround, s.SurroundSize = "#203040", layout.Size{WidthMM: 1300, HeightMM: 900}
	require.Less(t, Of(mustPlan(t, s)).DarkRim().DownShare, without.DownShare)
	s.SurroundSize = layout.Size{}
	require.Less(t, Of(mustPlan(t, s)).DarkRim().DownShare, without.DownShare)
}
