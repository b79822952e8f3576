package jpeg

import "math/bits"

// code is a Huffman code and what follows it: its bits, up to 26, and from bit 27 on how many they are.
type code uint32

const (
	lengthAt     = 27
	numberOfCode = 1<<lengthAt - 1
)

// codes has the code of each symbol with zeros in the place of the number that follows it, whose bits are as
// many as the symbol's lowest 4 bits say.
type codes [256]code

// The symbols after which no number comes (F.1.2.2).
const (
	allZero = 0x00 // only zeros are left
	zeros16 = 0xf0 // 16 zeros and more to come
)

// newCodes makes the codes of a table (C.2).
func newCodes(h huffman) *codes {
	c := new(codes)
	next, symbols := code(0), h.symbols
	for i, n := range h.lengths {
		for _, symbol := range symbols[:n] {
			follow := code(symbol & 15)
			c[symbol] = (code(i)+1+follow)<<lengthAt | next<<follow
			next++
		}
		next, symbols = next<<1, symbols[n:]
	}
	return c
}

// of returns the code of a number after zeros, up to 15. A number below zero, for which negative is -1, is
// told as that above zero with all bits inverted (F.1.2.1).
func (c *codes) of(zeros int, size uint32, negative int32) code {
	category := bits.Len32(size)
	return c[(zeros<<4|category)&255] | code((size^uint32(negative))&(1<<category-1))
}
