package units

import (
	"fmt"
	"strings"
)

// inSecond are the units of a time and how many make a second, those first that end in another.
var inSecond = []struct {
	suffix string
	n      float64
}{
	{"us", 1e6},
	{"\u00b5s", 1e6}, // the micro sign
	{"\u03bcs", 1e6}, // the Greek letter
	{"ms", 1e3},
	{"s", 1},
}

// commaForPoint tells whether a text would be a number with a point for its comma.
func commaForPoint(text string) bool {
	_, err := parseNumber(strings.Replace(text, ",", ".", 1))
	return err == nil && strings.Contains(text, ",")
}

// ParseTime reads a time with its unit, or a fraction of a second as cameras show it, such as "20us", "1/24000s" or
// "1/24000", and returns seconds. It is above zero.
func ParseTime(s string) (seconds float64, err error) {
	text, unit := strings.ToLower(strings.TrimSpace(s)), 0.0
	for _, u := range inSecond {
		if number, ok := strings.CutSuffix(text, u.suffix); ok {
			text, unit = number, u.n
			break
		}
	}
	over, under, fraction := strings.Cut(text, "/")
	v, err := parseNumber(over)
	parts := 1.0
	if err == nil && fraction {
		parts, err = parseNumber(under)
	}
	switch {
	case err == nil && unit == 0 && !fraction:
		return 0, fmt.Errorf("%q has no unit\nhint: write %sus, or another of us, ms or s, or a fraction such as 1/24000s", s,
			text)
	case err != nil && commaForPoint(text):
		return 0, fmt.Errorf("%q has a comma for the point\nhint: write %s", s,
			strings.Replace(strings.TrimSpace(s), ",", ".", 1))
	case err != nil:
		return 0, fmt.Errorf("%q is not a time\n"+
			"hint: write a fraction of a second or a number and its unit, such as 1/24000s "+
			"or 20us (us, ms, s)", s)
	case unit == 0:
		unit = 1 // 1/24000 can be seconds only
	}
	const longestS = 1e9 // thirty years
	if seconds = v / (parts * unit); !(seconds > 0 && seconds <= longestS) {
		return 0, fmt.Errorf("%q is too short or too long a time\nhint: write one above 0s, such as 1/24000s", s)
	}
	return seconds, nil
}
