package units

import (
	"errors"
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
	{"\"", MMPerInch},
	{"\u2033", MMPerInch}, // the double prime
	{"\u201d", MMPerInch}, // the closing quote, which word processors put for it
	{"ft", inchesPerFoot * MMPerInch},
	{"'", inchesPerFoot * MMPerInch},
	{"\u2032", inchesPerFoot * MMPerInch}, // the prime
	{"\u2019", inchesPerFoot * MMPerInch}, // the closing single quote
}

// inchesPerFoot is exact (ISO 80000-3:2006, annex C).
const inchesPerFoot = 12

// mmPerUM converts micrometres, in which only the pixels of sensors are told.
const mmPerUM = 1e-3

// Typed is a length as one types it, in millimetres or from a metre on in metres, to the micrometre.
func Typed(mm float64) string {
	unit := "mm"
	if math.Abs(mm) >= 1000 {
		mm, unit = mm/1000, "m"
	}
	return strconv.FormatFloat(math.Round(mm*1000)/1000, 'f', -1, 64) + unit
}

// UnitsTaken names the units of a length for messages and help; micrometres and feet are left out, which few need.
const UnitsTaken = "mm, cm, m or in"

// Lengths are read to the nanometre, which is far under what a rule or a sensor tells and leaves nothing of what
// binary fractions add: 24in is 609.6mm and not 609.5999999999999mm. Longer ones than a kilometre are slips.
const (
	perNM = 1e6 // nanometres in a millimetre
	// MaxLengthMM is a kilometre.
	MaxLengthMM = 1e6
)

// ParseLength reads a length with its unit, such as "4.6mm", "20cm", "1.8m", "11in", `11"` or "6'", and returns
// millimetres to the nanometre. The length may be zero or negative, to a kilometre either way; a bare number, a comma
// for the point, an unknown unit, a length that is not zero and under a nanometre, and anything not finite are
// errors.
func ParseLength(s string) (mm float64, err error) {
	text := strings.ToLower(strings.TrimSpace(s))
	for _, u := range taken {
		number, ok := strings.CutSuffix(text, u.suffix)
		if !ok {
			continue
		}
		value, err := parseNumber(number)
		if point := strings.Replace(number, ",", ".", 1); err != nil && point != number {
			if _, err := parseNumber(point); err == nil {
				return 0, fmt.Errorf("%q has a comma for the point\nhint: write %s%s", s, strings.TrimSpace(point), u.suffix)
			}
		}
		mm := math.Round(value*u.mm*perNM) / perNM
		switch {
		case err != nil:
			return 0, notALength(s)
		case !(math.Abs(mm) <= MaxLengthMM):
			return 0, fmt.Errorf("%q is too long\nhint: write 1000m or less", s)
		case mm == 0 && value != 0:
			return 0, fmt.Errorf("%q is too short\nhint: write a nanometre (0.000001mm) or more", s)
		}
		return mm, nil
	}
	if _, err := parseNumber(text); err == nil {
		return 0, fmt.Errorf("%q has no unit\nhint: write %smm, or another of %s", s, text, UnitsTaken)
	}
	return 0, notALength(s)
}

func notALength(s string) error {
	return fmt.Errorf("%q is not a length\nhint: write a number and its unit, such as 20cm (%s)", s, UnitsTaken)
}

// ParsePlace reads two lengths joined by a comma, such as "1mm,-0.5mm", and returns millimetres. One unit at the end
// serves both.
func ParsePlace(s string) (xMM, yMM float64, err error) {
	mm, err := ParseLengths(s, 2)
	if errors.Is(err, errCount) {
		return 0, 0, fmt.Errorf("%q is not a place\nhint: write two lengths, such as 0.5mm,-1mm", s)
	}
	if err != nil {
		return 0, 0, err
	}
	return mm[0], mm[1], nil
}

// errCount is of another number of lengths than was asked for.
var errCount = errors.New("another number of lengths")

// ParseLengths reads n lengths joined by commas, and returns millimetres. Those without a unit take that of the one
// after them, so that one at the end serves all.
func ParseLengths(s string, n int) ([]float64, error) {
	parts := strings.Split(s, ",")
	if len(parts) != n {
		return nil, fmt.Errorf("%w: %q has %d, and not %d", errCount, s, len(parts), n)
	}
	mm := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		if i < n-1 {
			parts[i] = withUnitOf(parts[i], parts[i+1])
		}
		var err error
		if mm[i], err = ParseLength(parts[i]); err != nil {
			return nil, err
		}
	}
	return mm, nil
}

// withUnitOf gives a bare number the unit of the length that follows it.
func withUnitOf(number, next string) string {
	if _, err := parseNumber(number); err != nil {
		return number
	}
	return strings.TrimSpace(number) + strings.TrimLeft(next, "0123456789.eE+- ")
}

// CutSides parts a width and a height at the letter between them: x, or the sign of multiplication.
func CutSides(s string) (width, height string, ok bool) {
	i := strings.IndexAny(s, "xX\u00d7")
	if i < 0 {
		return s, "", false
	}
	return s[:i], strings.TrimLeft(s[i:], "xX\u00d7"), true
}

// ParseSize reads a width and a height joined by "x", such as "36x24mm" or "1.2mx80cm", and returns millimetres.
// One unit at the end serves both. Both must be above zero.
func ParseSize(s string) (widthMM, heightMM float64, err error) {
	w, h, ok := CutSides(strings.TrimSpace(s))
	if !ok {
		return 0, 0, fmt.Errorf("%q is not a size\nhint: write width x height with a unit, such as 36x24mm", s)
	}
	heightMM, err = ParseLength(h)
	if err != nil {
		return 0, 0, err
	}
	widthMM, err = ParseLength(withUnitOf(w, h))
	if err != nil {
		return 0, 0, err
	}
	if widthMM <= 0 || heightMM <= 0 {
		return 0, 0, fmt.Errorf("%q is not a size\nhint: write two sides above zero, such as 36x24mm", s)
	}
	return widthMM, heightMM, nil
}

// parseNumber reads a plain decimal number; it refuses the words and hexadecimal forms that strconv would take.
func parseNumber(s string) (float64, error) {
	s = strings.ReplaceAll(strings.TrimSpace(s), "\u2212", "-") // the minus sign, which text that was copied has
	if strings.Trim(s, "0123456789.eE+-") != "" {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	value, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return value, nil
}
