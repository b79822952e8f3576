package colour

import (
	"encoding/binary"
	"fmt"
	"math"
)

// readTone reads a profile's curve as the light of each level, 0 to 1; data is nil for a curve that is not
// there. What comes out under 0 or over 1 is cut off there. Clauses in this file are those of ICC.1:2010,
// recalled from memory.
func readTone(data []byte) (tone [256]float32, err error) {
	read := readTable
	if len(data) >= 4 && string(data[:4]) == "para" {
		read = readFormula
	}
	light, err := read(data)
	if err != nil {
		return tone, err
	}
	for level := range tone {
		tone[level] = float32(max(0, min(light(float64(level)/255), 1)))
	}
	return tone, nil
}

// readTable reads a curveType (10.5): points at even steps with straight lines between, one number that is a
// power, or nothing, which changes nothing.
func readTable(data []byte) (light func(v float64) float64, err error) {
	const headBytes = 12
	if err := refuseTag(data, "curv", headBytes); err != nil {
		return nil, err
	}
	n, points := int64(binary.BigEndian.Uint32(data[8:])), data[headBytes:]
	if 2*n > int64(len(points)) {
		return nil, fmt.Errorf("says that it has %d points, more than fit in it", n)
	}
	switch n {
	case 0:
		return func(v float64) float64 { return v }, nil
	case 1:
		power := float64(binary.BigEndian.Uint16(points)) / 256 // u8Fixed8Number
		return func(v float64) float64 { return math.Pow(v, power) }, nil
	}
	point := func(i int) float64 { return float64(binary.BigEndian.Uint16(points[2*i:])) / math.MaxUint16 }
	return func(v float64) float64 {
		at := v * float64(n-1)
		i := min(int(at), int(n)-2)
		return point(i) + (at-float64(i))*(point(i+1)-point(i))
	}, nil
}

// formulaCounts are how many numbers each function of a parametricCurveType has.
var formulaCounts = [...]int{1, 3, 4, 5, 7}

// readFormula reads a parametricCurveType (10.15). All its functions are the last with some numbers left out:
// (a v + b)^g + e from d on, c v + f below.
func readFormula(data []byte) (light func(v float64) float64, err error) {
	const headBytes = 12
	if err := refuseTag(data, "para", headBytes); err != nil {
		return nil, err
	}
	kind := binary.BigEndian.Uint16(data[8:])
	if int(kind) >= len(formulaCounts) {
		return nil, fmt.Errorf("is of the unknown function %d", kind)
	}
	if err := refuseTag(data, "para", headBytes+4*formulaCounts[kind]); err != nil {
		return nil, err
	}
	var numbers [7]float64
	for i := range formulaCounts[kind] {
		numbers[i] = fixed16(data[headBytes+4*i:])
	}
	g, a, b, c, d, e, f := numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5], numbers[6]
	switch kind {
	case 0: // v^g
		a = 1
	case 1, 2: // (a v + b)^g + c from -b/a on, c below
		if a == 0 {
			return nil, fmt.Errorf("of function %d divides by nothing", kind)
		}
		c, d, e, f = 0, -b/a, c, c
	}
	return func(v float64) float64 {
		if v < d {
			return c*v + f
		}
		return math.Pow(max(a*v+b, 0), g) + e
	}, nil
}
