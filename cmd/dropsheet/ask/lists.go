package ask

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/job"
)

// list is a flag that adds a value each time it is given.
type list[T any] struct {
	into  *[]T
	parse func(string) (T, error)
	texts []string
	kind  string
}

func (v *list[T]) Set(s string) error {
	parsed, err := v.parse(s)
	if err == nil {
		*v.into, v.texts = append(*v.into, parsed), append(v.texts, s)
	}
	return err
}

func (v *list[T]) String() string { return "" }
func (v *list[T]) Type() string   { return v.kind }

// words are the values as they were given, in their order.
func (v *list[T]) words() []string { return v.texts }

// addList registers a flag that may be given again and again.
func addList[T any](flags *pflag.FlagSet, into *[]T, name, kind string, parse func(string) (T, error), usage string) {
	flags.Var(&list[T]{into: into, parse: parse, kind: kind}, name, usage)
}

// lampPlace reads where a lamp stands.
func lampPlace(s string) (layout.Lamp, error) {
	if strings.Count(s, ",") != 2 {
		return layout.Lamp{}, fmt.Errorf("%q is not a lamp\nhint: write three lengths, such as -60cm,-40cm,90cm", s)
	}
	mm, err := units.ParseLengths(s, 3)
	if err != nil {
		return layout.Lamp{}, err
	}
	return layout.Lamp{XMM: mm[0], YMM: mm[1], ZMM: mm[2]}, nil
}

// dropPlace reads two lengths joined by a comma.
func dropPlace(s string) (layout.Point, error) {
	x, y, err := units.ParsePlace(s)
	return layout.Point{XMM: x, YMM: y}, err
}

// lampAim reads what a lamp points at.
func lampAim(s string) (layout.Aim, error) {
	if strings.EqualFold(strings.TrimSpace(s), "drop") {
		return layout.Aim{AtDrop: true}, nil
	}
	x, y, err := units.ParsePlace(s)
	if err != nil {
		return layout.Aim{}, fmt.Errorf("%q is nothing to point a lamp at\n"+
			"hint: write drop, or two lengths from the board's "+
			"middle, right and down, such as 10cm,-5cm", s)
	}
	return layout.Aim{XMM: x, YMM: y}, nil
}

// avoided reads a place of the picture that seams shall keep out of.
func avoided(s string) (job.Avoided, error) {
	parts := strings.Split(s, ",")
	var n [3]float64
	ok := len(parts) == len(n)
	for i := 0; ok && i < len(n); i++ {
		var err error
		n[i], err = strconv.ParseFloat(strings.TrimSpace(parts[i]), 64)
		ok = err == nil && n[i] >= 0 && n[i] <= 1
	}
	if !ok || n[2] == 0 {
		return job.Avoided{}, fmt.Errorf("%q is not a place to avoid\n"+
			"hint: write X,Y,R such as 0.5,0.4,0.1, each from 0 to 1 "+
			"and R above 0", s)
	}
	return job.Avoided{X: n[0], Y: n[1], Radius: n[2]}, nil
}

// IsList tells whether a flag may be given again and again.
func IsList(f *pflag.Flag) bool {
	_, many := f.Value.(interface{ words() []string })
	return many
}
