package shot

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// In the level plane a spheroid is a ball of its width, so what the picture's width becomes follows from the
// closed form of a ball that is wider by the cube root.
func TestSwing(t *testing.T) {
	p := mustPlan(t, plain())
	s, ok := Of(p).Swing()
	require.True(t, ok)
	require.InDelta(t, 0.9, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1/0.9, s.Long.HeightOverWidth, 1e-12)
	require.Zero(t, s.PerSecond, "of an unnamed liquid")
	for _, swung := range []SwungPicture{s.Flat, s.Long} {
		wider := p.Sight()
		wider.Drop.DiameterMM /= math.Cbrt(swung.HeightOverWidth)
		fill, ok := wider.FillAt(p.Picture.ReachMM)
		require.True(t, ok)
		require.InDelta(t, fill*wider.ApparentRadiusMM()/(p.Picture.Fill*p.Sight().ApparentRadiusMM()), swung.WidthShare,
			1e-7)
	}
	require.Greater(t, s.Flat.WidthShare, s.Flat.HeightShare)
	require.Less(t, s.Long.WidthShare, s.Long.HeightShare)

	oblate := plain()
	oblate.Drop.HeightOverWidth, oblate.Material = 0.85, "water"
	q := mustPlan(t, oblate)
	s, ok = Of(q).Swing()
	require.True(t, ok)
	require.InDelta(t, 0.85, s.Flat.HeightOverWidth, 1e-12)
	require.InDelta(t, 1, s.Flat.WidthShare, 1e-9, "as planned")
	require.InDelta(t, 1, s.Flat.HeightShare, 1e-9)
	// Of the frequency there is no second source at hand; that it goes with the size as Rayleigh has it, to
	// the power of -3/2, is all that is tested.
	require.InEpsilon(t, math.Pow(2, 1.5), swingsPerSecond(2)/swingsPerSecond(4), 1e-9)
	require.InDelta(t, 31, swingsPerSecond(5), 1)

	rod := plain()
	rod.Drop.Body = flip.LevelRod
	_, ok = Of(mustPlan(t, rod)).Swing()
	require.False(t, ok)
}
