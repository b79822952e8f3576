package jpeg

import "encoding/binary"

// coefficients are a block after the DCT: scale times S(v, u) of A.3.3. Two stand in each word, a + b<<32,
// both signed: that of an even v in a and of the next v in b. Adding words, or multiplying them by a
// constant, does so to both numbers exactly, whatever overflows on the way, as long as what comes out fits in
// 32 bits each. Only shifts must take them apart.
type coefficients [32]uint64

const (
	unit  = 10536                   // what stands for 1 in a pass
	drop  = 9                       // bits dropped between the passes
	scale = 8 * unit * unit >> drop // each pass multiplies by the root of 8, too

	pair  = 1<<32 + 1 // times a number: two of it
	first = 1<<32 - 1 // the bits of the first of two numbers
)

// place returns where the coefficient (v, u) stands: the word, and its lowest bit in that.
func place(v, u int) (word, shift uint8) {
	return uint8(v/2*8 + u), uint8(v % 2 * 32)
}

// transform makes the coefficients of a block of 8 rows of 8 pixels, each row stride after the one before.
func (c *coefficients) transform(pix []byte, stride int) {
	var rows [8]uint64
	for y := range rows {
		rows[y] = binary.LittleEndian.Uint64(pix[y*stride:])
	}

	const (
		offset = 1 << 25 // more than 255 * 8 * unit: no number is below zero when it is shifted, and none takes from the next
		round  = (offset + 1<<(drop-1)) * pair
		whole  = (1<<(32-drop) - 1) * pair
	)
	var columns [8][4]uint64 // by v, then by column: 0 with 4, 1 with 5 and so on
	for x := range 4 {
		const pixel = 0xff * pair
		s := 8 * x
		y0, y1, y2, y3, y4, y5, y6, y7 := dct8(
			rows[0]>>s&pixel, rows[1]>>s&pixel, rows[2]>>s&pixel, rows[3]>>s&pixel,
			rows[4]>>s&pixel, rows[5]>>s&pixel, rows[6]>>s&pixel, rows[7]>>s&pixel)
		columns[0][x] = (y0 + round) >> drop & whole
		columns[1][x] = (y1 + round) >> drop & whole
		columns[2][x] = (y2 + round) >> drop & whole
		columns[3][x] = (y3 + round) >> drop & whole
		columns[4][x] = (y4 + round) >> drop & whole
		columns[5][x] = (y5 + round) >> drop & whole
		columns[6][x] = (y6 + round) >> drop & whole
		columns[7][x] = (y7 + round) >> drop & whole
	}

	for i := range 4 {
		a, b := &columns[2*i], &columns[2*i+1]
		out := (*[8]uint64)(c[8*i:])
		out[0], out[1], out[2], out[3], out[4], out[5], out[6], out[7] = dct8(
			a[0]&first|b[0]<<32, a[1]&first|b[1]<<32, a[2]&first|b[2]<<32, a[3]&first|b[3]<<32,
			a[0]>>32|b[0]&^first, a[1]>>32|b[1]&^first, a[2]>>32|b[2]&^first, a[3]>>32|b[3]&^first)
		out[0] -= 8 * (offset >> drop) * unit * pair & (1<<64 - 1) // of the offsets only their sum is left
	}
	c[0] -= 8 * 128 * scale // the level shift of A.3.1
}

// ck is the root of 2 times cos(k pi/16), times unit. Unit was sought for this: of the multiples of 8 from
// 2^13 to where coefficients outgrow their 32 bits, it is the one whose six are nearest to whole numbers,
// within 0.15.
const (
	c1 = 14614
	c2 = 13766
	c3 = 12389
	c5 = 8278
	c6 = 5702
	c7 = 2907
)

// dct8 is the DCT of 8 numbers, times the root of 8 and unit: Loeffler, Ligtenberg and Moschytz, "Practical
// fast 1-D DCT algorithms with 11 multiplications" (ICASSP 1989), in the form with 12 in which no product is
// multiplied again; recalled from memory.
func dct8(x0, x1, x2, x3, x4, x5, x6, x7 uint64) (y0, y1, y2, y3, y4, y5, y6, y7 uint64) {
	x0, x7 = x0+x7, x0-x7
	x1, x6 = x1+x6, x1-x6
	x2, x5 = x2+x5, x2-x5
	x3, x4 = x3+x4, x3-x4

	x0, x3 = x0+x3, x0-x3
	x1, x2 = x1+x2, x1-x2
	y0 = (x0 + x1) * unit
	y4 = (x0 - x1) * unit
	z := (x2 + x3) * c6
	y2 = z + x3*(c2-c6)
	y6 = z - x2*(c2+c6)

	z1 := (x4 + x7) * (c3 - c7)
	z2 := (x5 + x6) * (c1 + c3)
	z3, z4 := x4+x6, x5+x7
	z5 := (z3 + z4) * c3
	z3 = z5 - z3*(c3+c5)
	z4 = z5 - z4*(c3-c5)
	y7 = x4*(c3+c5-c1-c7) - z1 + z3
	y5 = x5*(c1+c3-c5+c7) - z2 + z4
	y3 = x6*(c1+c3+c5-c7) - z2 + z3
	y1 = x7*(c1+c3-c5-c7) - z1 + z4
	return
}
