package shot

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// The front of a ball mirrors a place of the board on the place's own side, by the law of reflection, and the further
// out the nearer the place lies to the axis: the print once more, the way up it hangs, its middle at the drop's edge.
func TestMirroredRimIsTheWayUpThePrintHangs(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	p := mustPlan(t, s)
	sight := p.Sight()
	last := 1.0
	for _, y := range []float64{10, 30, 100, p.Picture.HeightMM / 2} {
		place := flip.Vec{Y: y, Z: p.Drop.DistanceMM}
		seen := math.NaN()
		for _, g := range sight.Glints(place) {
			if g.Way == flip.ByFront {
				seen = g.YMM
			}
		}
		require.Greater(t, seen, 0.0, "%g mm below the axis", y)
		share := sight.ShareAt(0, seen)
		require.Less(t, share, last, "%g mm below the axis", y)
		last = share

		// Where a ray through that place of the drop's plane meets the ball, and how it is thrown on: in one plane.
		r, d := p.Drop.DiameterMM/2, p.Drop.CameraMM
		along := flip.Vec{Y: seen, Z: d}
		n := math.Hypot(along.Y, along.Z)
		ay, az := along.Y/n, along.Z/n
		middle := d * az // from the pupil to where the ray is nearest to the centre
		off := d * ay
		at := middle - math.Sqrt(r*r-off*off)
		hy, hz := at*ay, at*az-d
		ny, nz := hy/r, hz/r
		dot := ay*ny + az*nz
		by, bz := ay-2*dot*ny, az-2*dot*nz
		require.InDelta(t, y, hy+(p.Drop.DistanceMM-hz)*by/bz, 1e-3*y)
	}
}
