package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// Which rays of a row meet the body, against the clearance of rays just within and just beyond, with the point they
// pass before the body and behind it.
func TestMeetingAgainstClearance(t *testing.T) {
	const seed, farMM = 150, 100
	random := rand.New(rand.NewSource(seed))
	for _, d := range []Drop{
		{Body: Ball, DiameterMM: 3}, {Body: Ball, DiameterMM: 3, HeightOverWidth: 0.8},
		{Body: UprightRod, DiameterMM: 3}, {Body: LevelRod, DiameterMM: 3},
	} {
		ends, open := 0, 0
		for range 1000 {
			from := Vec{0, 10 * (random.Float64() - 0.5), -150}
			through := Vec{4 * (random.Float64() - 0.5), 4 * (random.Float64() - 0.5), 5 * (random.Float64() - 0.5)}
			along := Vec{X: 1}
			if d.Body == LevelRod {
				from, along = Vec{from.Y, 0, -150}, Vec{Y: 1}
			}
			clearance := func(t float64) float64 {
				start := from.Add(along.Scale(t))
				return d.ClearanceMM(Ray{start, through.Sub(start).Unit()})
			}
			low, high, ok := d.Meeting(from, along, through)
			const hair = 1e-3
			if !ok {
				low, high = farMM, farMM // where nothing is looked at
			}
			for _, end := range [2]struct{ at, outward float64 }{{low, -1}, {high, 1}} {
				if math.Abs(end.at) >= farMM {
					open++
					continue
				}
				ends++
				require.Positive(t, clearance(end.at+hair*end.outward), "seed %d, %v, %v", seed, d, through)
				require.Negative(t, clearance(end.at-hair*end.outward), "seed %d, %v, %v", seed, d, through)
			}
			for at := -farMM + 0.5; at < farMM; at += 5 {
				switch {
				case at > low && at < high:
					require.Negative(t, clearance(at), "seed %d, %v, %v from %g", seed, d, through, at)
				case clearance(at) < 0: // on the other side, which is no nearer
					require.Greater(t, math.Abs(at), min(math.Abs(low), math.Abs(high)), "seed %d, %v, %v", seed, d, through)
					require.True(t, math.IsInf(low, -1) || math.IsInf(high, 1), "seed %d, %v, %v", seed, d, through)
				}
			}
		}
		require.Greater(t, ends, 300, "%v", d)
		require.Greater(t, open, 50, "%v", d)
	}
}
