package icctest

import (
	"bytes"
	"math"
)

// PressLab is L*, a* and b* of a press that never was, for cyan, magenta, yellow and black, 0 to 1: sixteen solid
// prints of inks over one another, invented, mixed by the shares of paper that Demichel's equations give them
// (Neugebauer), in reflectances of the power 1/2 (Yule and Nielsen), with a dot that gains.
func PressLab(v []float64) [3]float64 {
	var mixed [3]float64
	for solid := range 16 {
		share := 1.0
		for i := range 4 {
			dot := v[i] + 0.6*v[i]*(1-v[i])*(1-0.5*v[i]) // at 0.5 an eighth more
			if solid>>i&1 == 0 {
				dot = 1 - dot
			}
			share *= dot
		}
		for i, xyz := range labToXYZ(pressSolids[solid]) {
			mixed[i] += share * math.Sqrt(max(0, xyz/D50[i]))
		}
	}
	f := func(v float64) float64 { // CIE 15:2004, 8.2.1
		if v > 216.0/24389 {
			return math.Cbrt(v)
		}
		return (24389.0/27*v + 16) / 116
	}
	x, y, z := f(mixed[0]*mixed[0]), f(mixed[1]*mixed[1]), f(mixed[2]*mixed[2])
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

// pressSolids are the solid prints: cyan counts 1, magenta 2, yellow 4 and black 8.
var pressSolids = [16][3]float64{
	{96, 0, -2}, {56, -38, -48}, {49, 73, -4}, {26, 20, -45}, {89, -6, 91}, {51, -66, 26}, {48, 67, 46}, {25, 2, 1},
	{18, 1, 1}, {12, -6, -8}, {12, 10, 0}, {8, 3, -6}, {17, -1, 10}, {10, -7, 3}, {10, 7, 5}, {6, 0, 0},
}

func labToXYZ(lab [3]float64) (xyz [3]float64) {
	y := (lab[0] + 16) / 116
	for i, f := range [3]float64{y + lab[1]/500, y, y - lab[2]/200} {
		if xyz[i] = D50[i] * f * f * f; f <= 6.0/29 {
			xyz[i] = D50[i] * (116*f - 16) * 27 / 24389
		}
	}
	return xyz
}

// EncodedLab is how profiles write L*, a* and b* as numbers from 0 to 1 (6.3.4.2); Legacy how those of 16 bits in
// version 2 do (10.10).
func EncodedLab(lab [3]float64) [3]float64 {
	return [3]float64{lab[0] / 100, (lab[1] + 128) / 255, (lab[2] + 128) / 255}
}

// Legacy is EncodedLab for lut16Type.
func Legacy(lab [3]float64) (v [3]float64) {
	for i, number := range EncodedLab(lab) {
		v[i] = number * 65280 / 65535
	}
	return v
}

// Press is the profile of that press: a grid of 16 bits by Lab, of version 2.
func Press() []byte {
	plain := func(v float64) float64 { return v }
	return Printer("CMYK", "Lab ", 2, Tag{"A2B0", Lut(4, 9, 2, plain, plain, func(v []float64) [3]float64 {
		return Legacy(PressLab(v))
	})}, Tag{"B2A0", PressInks()})
}

// PressInks is a lut16Type from Lab to inks that says no more than what the press prints for black, by a grid of two
// points a side: paper where L* is 100, and less than all of the inks where it is 0.
func PressInks() []byte {
	data := append([]byte("mft2\x00\x00\x00\x00"), 3, 4, 2, 0)
	data = append(data, be32(fixed(1), 0, 0, 0, fixed(1), 0, 0, 0, fixed(1))...)
	data = append(data, 0, 2, 0, 2)
	straight := []byte{0, 0, 255, 255}
	for range 3 {
		data = append(data, straight...)
	}
	for corner := range 8 { // L* goes slowest
		for _, ink := range []float64{0.7, 0.6, 0.6, 0.9} {
			if corner >= 4 {
				ink = 0
			}
			data = appendNumber(data, ink, 2)
		}
	}
	for range 4 {
		data = append(data, straight...)
	}
	return data
}

// CoarsePress is the profile of that press by XYZ: a grid of five points a side, of version 4, and a table the other
// way with a matrix before its curves, which spreads XYZ up to the white over all of its grid (10.10), five points too.
func CoarsePress() []byte {
	const mostXYZ = 1 + 32767.0/32768 // 6.3.4.2
	plain := func(v float64) float64 { return v }
	inks := append([]byte("mft2\x00\x00\x00\x00"), 3, 4, 5, 0)
	inks = append(inks, be32(fixed(mostXYZ/D50[0]), 0, 0, 0, fixed(mostXYZ/D50[1]), 0, 0, 0, fixed(mostXYZ/D50[2]))...)
	straight := []byte{0, 0, 255, 255}
	inks = append(inks, 0, 2, 0, 2)
	inks = append(inks, bytes.Repeat(straight, 3)...)
	for n := range 5 * 5 * 5 { // X goes slowest
		cyan, magenta, yellow := 1-float64(n/25)/4, 1-float64(n/5%5)/4, 1-float64(n%5)/4
		black := min(cyan, magenta, yellow)
		for _, ink := range []float64{cyan - black, magenta - black, yellow - black, black} {
			inks = appendNumber(inks, ink, 2)
		}
	}
	inks = append(inks, bytes.Repeat(straight, 4)...)
	return Printer("CMYK", "XYZ ", 4, Tag{"A2B0", Lut(4, 5, 2, plain, plain, func(v []float64) [3]float64 {
		xyz := labToXYZ(PressLab(v))
		return [3]float64{xyz[0] / mostXYZ, xyz[1] / mostXYZ, xyz[2] / mostXYZ}
	})}, Tag{"B2A0", inks})
}
