package colour

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// connected is how many numbers a colour has in the space that profiles connect to.
const connected = 3

// mostComponents is how many components are read: as many as CMYK has.
const mostComponents = 4

// readLut reads a lut8Type or lut16Type, of numbers of 1 or 2 bytes: a curve for each component, a grid, and a curve
// for each number that comes out. Its matrix is for XYZ alone, which no device has (ICC.1:2010, 10.10 and 10.11;
// clauses in this file are recalled from memory).
func readLut(data []byte, from, to, bytes int) (table, error) {
	headBytes, points := int64(48), [2]int64{256, 256}
	if bytes == 2 {
		headBytes = 52
	}
	if int64(len(data)) < headBytes {
		return table{}, errors.New("is cut short")
	}
	if err := refuseComponents(data, from, to); err != nil {
		return table{}, err
	}
	if bytes == 2 {
		points = [2]int64{int64(binary.BigEndian.Uint16(data[48:])), int64(binary.BigEndian.Uint16(data[50:]))}
	}
	side := int(data[10])
	sides := make([]int, from)
	for i := range sides {
		sides[i] = side
	}
	if points[0] < 2 || points[1] < 2 || points[0] > 4096 || points[1] > 4096 {
		return table{}, fmt.Errorf("has curves of %d and %d points, and 2 to 4096 are allowed", points[0], points[1])
	}
	rest := numbers{data[headBytes:], bytes}
	in, err := rest.curves(from, points[0])
	if err != nil {
		return table{}, err
	}
	g, err := rest.grid(sides, to)
	if err != nil {
		return table{}, err
	}
	out, err := rest.curves(to, points[1])
	if err != nil {
		return table{}, err
	}
	return table{in: in, sides: sides, rest: func(values []float64) []float64 { return out.of(g.at(values)) }}, nil
}

// refuseComponents says what is wrong with how many numbers go into a table and come out.
func refuseComponents(data []byte, from, to int) error {
	if got := int(data[8]); got != from {
		return fmt.Errorf("is for %d components in place of %d", got, from)
	}
	if got := int(data[9]); got != to {
		return fmt.Errorf("gives %d numbers in place of %d", got, to)
	}
	return nil
}

// curves are one for each number. Outside 0 to 1 they go on as at their ends.
type curves []func(v float64) float64

// of is what the curves make of numbers.
func (c curves) of(values []float64) []float64 {
	if c == nil {
		return values
	}
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = c[i](share(v))
	}
	return out
}

// share is a number cut off at 0 and 1; what a wild formula makes of nothing (NaN) is 0.
func share(v float64) float64 {
	if !(v > 0) {
		return 0
	}
	return min(v, 1)
}

// numbers are what is left of a table's numbers, of 1 or 2 bytes each.
type numbers struct {
	data  []byte
	bytes int
}

// take splits off the first n.
func (r *numbers) take(n int64) (numbers, error) {
	if n > int64(len(r.data)/r.bytes) {
		return numbers{}, errors.New("is cut short")
	}
	taken := numbers{r.data[:n*int64(r.bytes)], r.bytes}
	r.data = r.data[len(taken.data):]
	return taken, nil
}

// at is a number, 0 to 1.
func (r numbers) at(i int) float64 {
	if r.bytes == 1 {
		return float64(r.data[i]) / math.MaxUint8
	}
	return float64(binary.BigEndian.Uint16(r.data[2*i:])) / math.MaxUint16
}

// curves splits off curves of points with straight lines between.
func (r *numbers) curves(n int, points int64) (curves, error) {
	all := make(curves, n)
	for i := range all {
		taken, err := r.take(points)
		if err != nil {
			return nil, err
		}
		last := int(points) - 1
		all[i] = func(v float64) float64 {
			at := v * float64(last)
			k := min(int(at), last-1)
			return taken.at(k) + float64((at-float64(k))*(taken.at(k+1)-taken.at(k)))
		}
	}
	return all, nil
}
