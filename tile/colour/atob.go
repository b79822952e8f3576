package colour

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// readAToB reads a lutAToBType (ICC.1:2010, 10.12, recalled from memory): A curves, a grid, M curves, a matrix and B
// curves, of which all but the last may be left out.
func readAToB(data []byte, from, to int) (table, error) {
	const headBytes = 32
	if len(data) < headBytes {
		return table{}, errors.New("is cut short")
	}
	if err := refuseComponents(data, from, to); err != nil {
		return table{}, err
	}
	// part is what a stage begins with; nil for one that is left out.
	part := func(at int) ([]byte, error) {
		offset := int64(binary.BigEndian.Uint32(data[at:]))
		switch {
		case offset == 0:
			return nil, nil
		case offset < headBytes || offset >= int64(len(data)):
			return nil, errors.New("has a stage outside it")
		}
		return data[offset:], nil
	}
	var parts [5][]byte // B curves, matrix, M curves, grid, A curves
	for i := range parts {
		var err error
		if parts[i], err = part(12 + 4*i); err != nil {
			return table{}, err
		}
	}
	b, err := readCurves(parts[0], connected)
	if err != nil {
		return table{}, err
	}
	if b == nil {
		return table{}, errors.New("has no B curves")
	}
	m, err := readCurves(parts[2], connected)
	if err != nil {
		return table{}, err
	}
	a, err := readCurves(parts[4], from)
	if err != nil {
		return table{}, err
	}
	matrix, err := readMatrix(parts[1])
	if err != nil {
		return table{}, err
	}
	if parts[3] == nil {
		if from != to {
			return table{}, errors.New("has no grid")
		}
		return table{in: a, rest: func(values []float64) []float64 { return b.of(matrix(m.of(values))) }}, nil
	}
	g, err := readGrid(parts[3], from, to)
	if err != nil {
		return table{}, err
	}
	return table{in: a, sides: g.sides, rest: func(values []float64) []float64 {
		return b.of(matrix(m.of(g.at(values))))
	}}, nil
}

// readCurves reads curves that follow one another, each from a multiple of four bytes on; nil for none.
func readCurves(data []byte, n int) (curves, error) {
	if data == nil {
		return nil, nil
	}
	all := make(curves, n)
	for i := range all {
		read, bytes := readTable, int64(0)
		if len(data) >= 12 {
			bytes = 12 + 2*int64(binary.BigEndian.Uint32(data[8:]))
			if string(data[:4]) == "para" {
				kind := min(int(binary.BigEndian.Uint16(data[8:])), len(formulaCounts)-1)
				read, bytes = readFormula, 12+4*int64(formulaCounts[kind])
			}
		}
		curve, err := read(data)
		if err != nil {
			return nil, fmt.Errorf("has a curve that %w", err)
		}
		all[i] = curve
		data = data[min((bytes+3)&^3, int64(len(data))):]
	}
	return all, nil
}

// readMatrix reads a matrix and what is added to what comes of it; nil stands for one that changes nothing.
func readMatrix(data []byte) (stage, error) {
	if data == nil {
		return func(values []float64) []float64 { return values }, nil
	}
	var m matrix
	var add [3]float64
	if len(data) < 4*(9+3) {
		return nil, errors.New("has a matrix that is cut short")
	}
	for i := range 9 {
		m[i/3][i%3] = fixed16(data[4*i:])
	}
	for i := range add {
		add[i] = fixed16(data[4*(9+i):])
	}
	return func(values []float64) []float64 {
		out := m.times([3]float64{values[0], values[1], values[2]})
		return []float64{out[0] + add[0], out[1] + add[1], out[2] + add[2]}
	}, nil
}

// readGrid reads a grid: how many points each component has, how many bytes a number, and the numbers.
func readGrid(data []byte, from, to int) (grid, error) {
	const headBytes = 20
	if len(data) < headBytes {
		return grid{}, errors.New("has a grid that is cut short")
	}
	sides := make([]int, from)
	for i := range sides {
		sides[i] = int(data[i])
	}
	bytes := int(data[16])
	if bytes != 1 && bytes != 2 {
		return grid{}, fmt.Errorf("has a grid of numbers of %d bytes", bytes)
	}
	rest := numbers{data[headBytes:], bytes}
	return rest.grid(sides, to)
}
