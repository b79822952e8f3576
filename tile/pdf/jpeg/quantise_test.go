package jpeg

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// rounded is c over the divisor, to nearest, halves away from zero.
func rounded(c, divisor int64) int64 {
	if c < 0 {
		return -rounded(-c, divisor)
	}
	return (c + divisor/2) / divisor
}

func (s *step) quotient(c int32) int64 {
	size, negative := s.divide(c)
	if negative < 0 {
		return -int64(size)
	}
	return int64(size)
}

// The quotient never falls as a number grows (it is the high word of a product), so where it is right on both
// sides of each of its steps, it is right everywhere.
func TestDivideRoundsToNearest(t *testing.T) {
	for n := 1; n <= 255; n++ {
		var table [64]uint8
		for z := range table {
			table[z] = uint8(n)
		}
		s := &newQuantiser(&table).steps[0]
		divisor := int64(n) * scale
		for quotient := int64(0); ; quotient++ {
			edge := quotient*divisor + (divisor+1)/2 // the first that is nearer to the next, or halfway
			if edge > math.MaxInt32 {
				break
			}
			for _, c := range []int64{edge - 1, edge, -edge, 1 - edge} {
				require.Equal(t, rounded(c, divisor), s.quotient(int32(c)), "%d over %d", c, divisor)
			}
		}
		for _, c := range []int64{math.MinInt32 + 1, 0, math.MaxInt32} {
			require.Equal(t, rounded(c, divisor), s.quotient(int32(c)), "%d over %d", c, divisor)
		}
	}
}

// What stands beside a coefficient in its word never changes whether it counts as zero.
func TestNonzeroIsWhatDivideSays(t *testing.T) {
	const seed = 2
	rng := rand.New(rand.NewPCG(seed, 0))
	for range 2000 {
		var table [64]uint8
		for z := range table {
			table[z] = uint8(1 + rng.IntN(255)>>rng.IntN(8))
		}
		q := newQuantiser(&table)
		var c coefficients
		for z := range q.steps {
			half := int32(q.steps[z].half)
			const most = 1024 * scale // of coefficients
			n := []int32{0, 1, half - 1, half, half + 1, most, rng.Int32N(most)}[rng.IntN(7)]
			if rng.IntN(2) == 0 {
				n = -n
			}
			c[q.steps[z].word] += uint64(int64(n)) << q.steps[z].shift
		}
		mask := q.nonzero(&c)
		for z := range q.steps {
			s := &q.steps[z]
			require.Equal(t, s.quotient(s.coefficient(&c)) != 0, mask>>z&1 == 1, "seed %d: %d over 2 * %d", seed,
				s.coefficient(&c), s.half)
		}
	}
}
