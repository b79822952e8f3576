package ask

import (
	"fmt"
	"strconv"
	"strings"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/job"
)

// lampsValue is a flag that adds a lamp each time it is given.
type lampsValue struct{ lamps *[]layout.Lamp }

func (v *lampsValue) Set(s string) error {
	parts := strings.Split(s, ",")
	if len(parts) != 3 {
		return fmt.Errorf("%q is not a lamp: write three lengths, such as -60cm,-40cm,90cm", s)
	}
	var mm [3]float64
	for i, part := range parts {
		var err error
		if mm[i], err = units.ParseLength(part); err != nil {
			return err
		}
	}
	*v.lamps = append(*v.lamps, layout.Lamp{XMM: mm[0], YMM: mm[1], ZMM: mm[2]})
	return nil
}

func (v *lampsValue) String() string { return "" }
func (v *lampsValue) Type() string   { return "X,Y,Z" }

// placesValue is a flag that adds a place each time it is given.
type placesValue struct{ places *[]layout.Point }

func (v *placesValue) Set(s string) error {
	at, err := dropPlace(s)
	if err == nil {
		*v.places = append(*v.places, at)
	}
	return err
}

func (v *placesValue) String() string { return "" }
func (v *placesValue) Type() string   { return "X,Y" }

// dropPlace reads two lengths joined by a comma.
func dropPlace(s string) (layout.Point, error) {
	left, right, ok := strings.Cut(s, ",")
	x, errX := units.ParseLength(left)
	y, errY := units.ParseLength(right)
	if !ok || errX != nil || errY != nil {
		return layout.Point{}, fmt.Errorf("%q is not a place: write two lengths, such as 0.5mm,-1mm", s)
	}
	return layout.Point{XMM: x, YMM: y}, nil
}

// avoidValue is a flag that adds a place each time it is given.
type avoidValue struct{ places *[]job.Avoided }

func (v *avoidValue) Set(s string) error {
	parts := strings.Split(s, ",")
	var n [3]float64
	ok := len(parts) == len(n)
	for i := 0; ok && i < len(n); i++ {
		var err error
		n[i], err = strconv.ParseFloat(strings.TrimSpace(parts[i]), 64)
		ok = err == nil && n[i] >= 0 && n[i] <= 1
	}
	if !ok || n[2] == 0 {
		return fmt.Errorf("%q is not a place to avoid: write X,Y,R such as 0.5,0.4,0.1, each from 0 to 1 and R above 0", s)
	}
	*v.places = append(*v.places, job.Avoided{X: n[0], Y: n[1], Radius: n[2]})
	return nil
}

func (v *avoidValue) String() string { return "" }
func (v *avoidValue) Type() string   { return "X,Y,R" }
