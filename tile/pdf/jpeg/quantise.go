package jpeg

import "math/bits"

// quantiser divides coefficients by the steps of a table and rounds to nearest, halves away from zero (A.3.4).
type quantiser struct {
	steps  [64]step     // in zigzag order
	limits coefficients // the most that becomes zero, above sign
}

// step is the division for one coefficient, and where that stands.
type step struct {
	half        uint32 // half the divisor, rounded down
	word, shift uint8
	reciprocal  uint64 // 2^64 over the divisor, rounded up
}

// newQuantiser takes the steps in zigzag order, 1 to 255.
func newQuantiser(table *[64]uint8) *quantiser {
	q := new(quantiser)
	for z, n := range zigzag {
		// A number below 2^32 times the reciprocal comes out too great by less than 2^32. Quotients are
		// multiples of 1/divisor, which is over 2^35 in the product, the divisor being below 2^29: what is too
		// great never makes up for that, and the high word is the quotient's whole part.
		divisor := uint64(table[z]) * scale
		s := &q.steps[z]
		s.word, s.shift = place(int(n/8), int(n%8))
		s.half = uint32(divisor / 2)
		s.reciprocal = ^uint64(0)/divisor + 1
		q.limits[s.word] += ((divisor-1)/2 + sign) << s.shift
	}
	return q
}

// divide returns the size of the quotient, rounded, and -1 where the coefficient is below zero, else 0.
func (s *step) divide(c int32) (size uint32, negative int32) {
	negative = c >> 31
	high, _ := bits.Mul64(uint64(uint32(c^negative-negative)+s.half), s.reciprocal)
	return uint32(high), negative
}

const (
	sign  = 1 << 31
	signs = sign * pair
)

// coefficient returns the one that s divides.
func (s *step) coefficient(c *coefficients) int32 {
	// With both raised above zero, the first takes nothing from the second.
	return int32(uint32((c[s.word&31]+signs)>>s.shift) ^ sign)
}

// nonzero returns which quotients are not zero, as bits in zigzag order, the first lowest.
func (q *quantiser) nonzero(c *coefficients) uint64 {
	var mask uint64
	for i := range 4 {
		// Limit + c and limit - c both keep the limit's sign bit where c is within. No c and limit come to 31
		// bits together, so that no sum leaves its own 32.
		limits, c := (*[8]uint64)(q.limits[8*i:]), (*[8]uint64)(c[8*i:])
		var within uint64
		for u := range c {
			within = within>>1 | (limits[u]+c[u])&(limits[u]-c[u])&signs
		}
		mask |= inZigzag[2*i][^byte(within>>24)] | inZigzag[2*i+1][^byte(within>>56)]
	}
	return mask
}

// inZigzag has for each v, and each set of u as bits, the bits of those coefficients in zigzag order.
var inZigzag = func() (masks [8][256]uint64) {
	for z, n := range zigzag {
		for set := range 256 {
			masks[n/8][set] |= uint64(set>>(n%8)&1) << z
		}
	}
	return masks
}()
