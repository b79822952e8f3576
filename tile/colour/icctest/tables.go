package icctest

import (
	"encoding/binary"
	"math"
)

// Grid lays out numbers, 0 to 1, at even steps of so many components, the last one's lying closest: of places 0 to 1
// in each, in 1 or 2 bytes.
func Grid(components, side, bytes int, at func(v []float64) [3]float64) (data []byte) {
	v := make([]float64, components)
	for n := range int(math.Pow(float64(side), float64(components))) {
		for i := components - 1; i >= 0; i-- {
			v[i] = float64(n%side) / float64(side-1)
			n /= side
		}
		for _, number := range at(v) {
			data = appendNumber(data, number, bytes)
		}
	}
	return data
}

// curvePoints lays out a curve of points.
func curvePoints(points, bytes int, curve func(v float64) float64) (data []byte) {
	for i := range points {
		data = appendNumber(data, curve(float64(i)/float64(points-1)), bytes)
	}
	return data
}

func appendNumber(data []byte, v float64, bytes int) []byte {
	v = max(0, min(v, 1))
	if bytes == 1 {
		return append(data, byte(math.Round(v*math.MaxUint8)))
	}
	return binary.BigEndian.AppendUint16(data, uint16(math.Round(v*math.MaxUint16)))
}

// Lut is a lut8Type or lut16Type (10.10 and 10.11), of numbers of 1 or 2 bytes, with the same curve for each
// component, and one for each number that comes out.
func Lut(components, side, bytes int, in, out func(v float64) float64, at func(v []float64) [3]float64) []byte {
	points := 256
	data := append([]byte("mft1\x00\x00\x00\x00"), byte(components), 3, byte(side), 0)
	data = append(data, be32(fixed(1), 0, 0, 0, fixed(1), 0, 0, 0, fixed(1))...)
	if bytes == 2 {
		points = 33
		data[3] = '2'
		data = append(data, 0, byte(points), 0, byte(points))
	}
	for range components {
		data = append(data, curvePoints(points, bytes, in)...)
	}
	data = append(data, Grid(components, side, bytes, at)...)
	for range 3 {
		data = append(data, curvePoints(points, bytes, out)...)
	}
	return data
}

// AToB is a lutAToBType (10.12) with the same curve for each component and a grid, and a curve, a matrix of a factor
// and an addition, and another curve for each number that comes out.
func AToB(components, side, bytes int, a, m, b []byte, factor, add float64, at func(v []float64) [3]float64) []byte {
	const headBytes = 32
	repeat := func(curve []byte, n int) (all []byte) {
		for range n {
			all = append(all, curve...)
			all = append(all, make([]byte, -len(curve)&3)...)
		}
		return all
	}
	grid := make([]byte, 20)
	for i := range components {
		grid[i] = byte(side)
	}
	grid[16] = byte(bytes)
	grid = append(grid, Grid(components, side, bytes, at)...)
	grid = append(grid, make([]byte, -len(grid)&3)...)
	matrix := be32(fixed(factor), 0, 0, 0, fixed(factor), 0, 0, 0, fixed(factor), fixed(add), fixed(add), fixed(add))
	head, at32 := append([]byte("mAB \x00\x00\x00\x00"), byte(components), 3, 0, 0), headBytes
	var data []byte
	for _, stage := range [][]byte{repeat(b, 3), matrix, repeat(m, 3), grid, repeat(a, components)} {
		head = append(head, be32(at32)...)
		at32 += len(stage)
		data = append(data, stage...)
	}
	return append(head, data...)
}

// Printer lays out a printer's profile for a space that connects to "XYZ " or "Lab ".
func Printer(space, connects string, version byte, tags ...Tag) []byte {
	p := Profile(space, version, tags...)
	copy(p[12:], "prtr")
	copy(p[20:], connects)
	return p
}
