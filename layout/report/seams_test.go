package report

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What hides a seam is told way by way, and never rounded to what does not.
func TestSeamRemediesAreTold(t *testing.T) {
	for _, c := range []struct {
		name   string
		remedy SeamRemedy
		want   string
	}{
		{"pencil alone", SeamRemedy{TouchUpLevel: 99}, "hide it with dark grey pencil (99) on its edge"},
		{"white", SeamRemedy{TouchUpLevel: 230}, "hide it with white pencil (230) on its edge"},
		{"every way", SeamRemedy{TouchUpLevel: 0, SeamMM: 0.159, OpenTo: 8, CloseTo: 22.627417, FurtherTimes: 1.83},
			"hide it with black pencil (0) on its edge, a gap under 0.15 mm, f/8, f/22, " +
				"or 1.9 times the print's size and distance"},
	} {
		require.Equal(t, c.want, c.remedy.Text().String(), c.name)
	}
	require.Equal(t, "there are none: one sheet holds the whole backdrop", SeamCount{}.Summary().String())
	require.Equal(t, "2 of 12 show in the frame, 3 more faintly; 4 hidden, 3 out of the frame's sight",
		SeamCount{Shows: 2, Faint: 3, Hidden: 4, OutOfSight: 3}.Summary().String())
}
