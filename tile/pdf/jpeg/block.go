package jpeg

import "math/bits"

// component is what the blocks of one component are coded with.
type component struct {
	quantiser *quantiser
	dc, ac    *codes
	before    int32 // the first coefficient of the block before, from which the next one's is told
}

// newComponent takes the tables of luma (0) or chroma (1), quantisation in zigzag order.
func newComponent(kind int, quantisation *[64]uint8) *component {
	return &component{quantiser: newQuantiser(quantisation), dc: newCodes(dcTables[kind]), ac: newCodes(acTables[kind])}
}

// block appends a component's next block (F.1.2). There is a code for every number: pixels at most 255 apart
// give coefficients up to 1020, in 10 bits, and first ones up to 2040 apart, in 11.
func (s *bitStream) block(c *coefficients, k *component) {
	out, word, pending := s.out, s.word, s.pending
	q := k.quantiser

	size, negative := q.steps[0].divide(q.steps[0].coefficient(c))
	dc := int32(size) ^ negative - negative
	difference := dc - k.before
	k.before = dc
	negative = difference >> 31
	out, word, pending = put(out, word, pending, k.dc.of(0, uint32(difference^negative-negative), negative))

	last := 0
	for mask := q.nonzero(c) &^ 1; mask != 0; mask &= mask - 1 {
		z := bits.TrailingZeros64(mask)
		zeros := z - last - 1
		last = z
		for ; zeros > 15; zeros -= 16 {
			out, word, pending = put(out, word, pending, k.ac[zeros16])
		}
		step := &q.steps[z&63]
		size, negative := step.divide(step.coefficient(c))
		out, word, pending = put(out, word, pending, k.ac.of(zeros, size, negative))
	}
	if last != 63 {
		out, word, pending = put(out, word, pending, k.ac[allZero])
	}
	s.out, s.word, s.pending = out, word, pending
}
