package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// taken lists the length units, longest suffix first where one ends in another ("mm" before "m").
var taken = []struct {
	suffix string
	mm     float64
}{
	{"mm", 1},
	{"cm", 10},
	{"um", mmPerUM},
	{"\u00b5m", mmPerUM}, // the micro sign
	{"\u03bcm", mmPerUM}, // the Greek letter
	{"m", 1000},
	{"in", MMPerInch},
}

// mmPerUM converts micrometres, in which only the pixels of sensors are told.
const mmPerUM = 1e-3

// UnitsTaken names the units of a length for messages and help; micrometres are left out, which few need.
const UnitsTaken = "mm, cm, m or in"

// ParseLength reads a length with its unit, such as "4.6mm", "20cm", "1.8m" or "11in", and returns millimetres.
// The length may be zero or negative; a bare number, an unknown unit and anything not finite are errors.
func ParseLength(s string) (mm float64, err error) {
	text := strings.ToLower(strings.TrimSpace(s))
	for _, u := range taken {
		if number, ok := strings.CutSuffix(text, u.suffix); ok {
			value, err := parseNumber(number)
			if err != nil || math.IsInf(value*u.mm, 0) {
				return 0, fmt.Errorf("%q is not a length: write a number and its unit, such as 20cm (%s)", s, UnitsTaken)
			}
			return value * u.mm, nil
		}
	}
	if _, err := parseNumber(text); err == nil {
		return 0, fmt.Errorf("%q has no unit: write %smm, or another of %s", s, text, UnitsTaken)
	}
	return 0, fmt.Errorf("%q is not a length: write a number and its unit, such as 20cm (%s)", s, UnitsTaken)
}

// ParseSize reads a width and a height joined by "x", such as "36x24mm" or "1.2mx80cm", and returns millimetres.
// One unit at the end serves both. Both must be above zero.
func ParseSize(s string) (widthMM, heightMM float64, err error) {
	w, h, ok := strings.Cut(strings.TrimSpace(s), "x")
	if !ok {
		return 0, 0, fmt.Errorf("%q is not a size: write width x height with a unit, such as 36x24mm", s)
	}
	heightMM, err = ParseLength(h)
	if err != nil {
		return 0, 0, err
	}
	if _, bare := parseNumber(w); bare == nil {
		w = strings.TrimSpace(w) + strings.TrimLeft(h, "0123456789.eE+- ")
	}
	widthMM, err = ParseLength(w)
	if err != nil {
		return 0, 0, err
	}
	if widthMM <= 0 || heightMM <= 0 {
		return 0, 0, fmt.Errorf("%q is not a size: both sides must be above zero", s)
	}
	return widthMM, heightMM, nil
}

// parseNumber reads a plain decimal number; it refuses the words and hexadecimal forms that strconv would take.
func parseNumber(s string) (float64, error) {
	s = strings.TrimSpace(s)
	if strings.Trim(s, "0123456789.eE+-") != "" {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	value, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return value, nil
}
