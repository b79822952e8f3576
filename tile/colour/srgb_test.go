package colour

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Worked values of the curve: its two ends, and middle grey of 18 %, which encodes as level 118 (recalled
// from memory: 117.6).
func TestCurve(t *testing.T) {
	require.Zero(t, SRGBToLight(0))
	require.Equal(t, 1.0, SRGBToLight(1))
	require.Equal(t, 118.0, math.Round(255*LightToSRGB(0.18)))
	require.InDelta(t, 0.2140, SRGBToLight(0.5), 5e-5)
	for i := range 1001 {
		v := float64(i) / 1000
		require.InDelta(t, v, LightToSRGB(SRGBToLight(v)), 3e-5, "the standard's rounded constants "+
			"leave a step where its two parts meet")
	}
}
