package ask

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// value is a flag that is read by a function, so that a wrong word is refused before anything else happens.
type value[T any] struct {
	into  *T
	parse func(string) (T, error)
	text  string
	kind  string
}

func (v *value[T]) Set(s string) error {
	parsed, err := v.parse(s)
	if err != nil {
		return err
	}
	*v.into, v.text = parsed, s
	return nil
}

func (v *value[T]) String() string { return v.text }
func (v *value[T]) Type() string   { return v.kind }

// add registers a flag. An empty fallback leaves *into as it is.
func add[T any](flags *pflag.FlagSet, into *T, name, kind, fallback string, parse func(string) (T, error),
	usage string) {
	v := &value[T]{into: into, parse: parse, kind: kind}
	if fallback != "" {
		if err := v.Set(fallback); err != nil {
			panic(fmt.Sprintf("default of --%s: %v", name, err)) // a slip in this program, found by any test
		}
	}
	flags.Var(v, name, usage)
}

// aboveZero reads a length above 0.
func aboveZero(s string) (float64, error) {
	mm, err := units.ParseLength(s)
	if err == nil && mm <= 0 {
		err = fmt.Errorf("%q is too small\nhint: write a length above 0mm", s)
	}
	return mm, err
}

// zeroOrMore reads a length of 0 or more.
func zeroOrMore(s string) (float64, error) {
	mm, err := units.ParseLength(s)
	if err == nil && mm < 0 {
		err = fmt.Errorf("%q is too small\nhint: write 0mm or more", s)
	}
	return mm, err
}

// sizeMM reads a width and a height.
func sizeMM(s string) (layout.Size, error) {
	w, h, err := units.ParseSize(s)
	return layout.Size{WidthMM: w, HeightMM: h}, err
}

// sizeOrWidthMM reads a width and a height, or a width alone, whose height is then 0.
func sizeOrWidthMM(s string) (layout.Size, error) {
	if _, _, both := units.CutSides(s); both {
		return sizeMM(s)
	}
	w, err := aboveZero(s)
	return layout.Size{WidthMM: w}, err
}

// thousands is a number whose thousands are parted by commas.
var thousands = regexp.MustCompile(`^[0-9]{1,3}(,[0-9]{3})+$`)

// plain reads a number that has no unit. Of one with a comma it says what may have been meant.
func plain(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err == nil {
		return v, nil
	}
	point, without := strings.Replace(s, ",", ".", 1), strings.ReplaceAll(s, ",", "")
	_, isPoint := strconv.ParseFloat(point, 64)
	switch {
	case thousands.MatchString(s) && isPoint == nil:
		return 0, fmt.Errorf("%q has a comma\nhint: write %s, or %s if it stands for the point", s, without, point)
	case thousands.MatchString(s):
		return 0, fmt.Errorf("%q has commas\nhint: write %s", s, without)
	case point != s && isPoint == nil:
		return 0, fmt.Errorf("%q has a comma for the point\nhint: write %s", s, point)
	}
	return 0, errNoNumber
}

// errNoNumber is of what is no number, whatever was meant.
var errNoNumber = errors.New("not a number")

// long is a bound as it is told: in full.
func long(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// number reads a plain number within bounds, both excluded.
func number(above, below float64) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := plain(s)
		switch {
		case err != nil && err != errNoNumber:
			return 0, err
		case err != nil || math.IsNaN(v) || v <= above || v >= below:
			return 0, fmt.Errorf("%q can't be taken\nhint: write a plain number above %s and below %s", s, long(above),
				long(below))
		}
		return v, nil
	}
}

// within reads a plain number between bounds, both included.
func within(least, most float64) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := plain(s)
		switch {
		case err != nil && err != errNoNumber:
			return 0, err
		case err != nil || !(v >= least && v <= most):
			return 0, fmt.Errorf("%q can't be taken\nhint: write a plain number from %g to %g", s, least, most)
		}
		return v, nil
	}
}

// wholeFromOne reads a whole number of 1 or more.
func wholeFromOne(s string) (int, error) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 1 {
		return 0, fmt.Errorf("%q is out of range\nhint: take a whole number, 1 or more", s)
	}
	return n, nil
}

// pair is two whole numbers joined by x.
type pair struct{ w, h int }

func pixels(s string) (pair, error) {
	left, right, ok := units.CutSides(s)
	w, errW := strconv.Atoi(left)
	h, errH := strconv.Atoi(right)
	if !ok || errW != nil || errH != nil || w < 1 || h < 1 {
		return pair{}, fmt.Errorf("%q is not a number of pixels\nhint: write width x height, such as 1920x1080", s)
	}
	return pair{w, h}, nil
}

// proportions reads a width to height such as 3:2.
func proportions(s string) (float64, error) {
	left, right, ok := strings.Cut(s, ":")
	w, errW := strconv.ParseFloat(left, 64)
	h, errH := strconv.ParseFloat(right, 64)
	if v := w / h; ok && errW == nil && errH == nil && w > 0 && h > 0 && !math.IsInf(v, 0) && v > 0 {
		return v, nil
	}
	return 0, fmt.Errorf("%q is not a proportion\nhint: write width:height, such as 3:2", s)
}

// fNumber reads a stop such as f/16, as it is also written: f16, F16 or the bare 16.
func fNumber(s string) (float64, error) {
	bare := strings.TrimPrefix(strings.ToLower(strings.TrimSpace(s)), "f")
	n, err := plain(strings.TrimPrefix(bare, "/"))
	switch {
	case err != nil && err != errNoNumber:
		return 0, err
	case err != nil || !(n > 0 && n < 1e6):
		return 0, fmt.Errorf("%q is not a stop\nhint: write f/16 or the like", s)
	}
	return n, nil
}

// named reads a name, which an empty one is not.
func named(s string) (string, error) {
	if strings.TrimSpace(s) == "" {
		return "", errors.New("\"\" is no name\nhint: write one, or leave the flag out")
	}
	return s, nil
}

// pixelSize reads the width of a sensor's pixel.
func pixelSize(s string) (float64, error) {
	const mostMM = 1.0 // some hundred times what there is
	mm, err := units.ParseLength(s)
	if err != nil || !(mm > 0 && mm < mostMM) {
		return 0, fmt.Errorf("%q is not the size of a sensor's pixel\n"+
			"hint: write a number and its unit, above 0 and below 1mm, "+
			"such as 28um", s)
	}
	return mm, nil
}
