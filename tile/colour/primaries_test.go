package colour

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Lindbloom, "RGB/XYZ Matrices", XYZ to sRGB with the white D50 (Bradford), recalled from memory. He takes
// D65 and D50 from ASTM E308, not from the chromaticity of IEC 61966-2-1 and the ICC header, which moves the
// figures by up to 0.001.
func TestXYZToSRGBLightAgainstPublishedFigures(t *testing.T) {
	want := matrix{
		{3.1338561, -1.6168667, -0.4906146},
		{-0.9787684, 1.9161415, 0.0334540},
		{0.0719453, -0.2289914, 1.4052427},
	}
	got := xyzToSRGBLight()
	for i := range want {
		require.InDeltaSlice(t, want[i][:], got[i][:], 0.001)
	}
	white := got.times(d50)
	require.InDeltaSlice(t, []float64{1, 1, 1}, white[:], 1e-12, "the white of the one is the white of the other")
}
