package units

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseTime(t *testing.T) {
	for _, c := range []struct {
		name, in string
		want     float64
	}{
		{"a fraction of a second", "1/24000s", 1.0 / 24000},
		{"a fraction without a unit", "1/24000", 1.0 / 24000},
		{"a fraction of a millisecond", "1/4ms", 0.00025},
		{"microseconds", "20us", 20e-6},
		{"microseconds by the micro sign", "20\u00b5s", 20e-6},
		{"microseconds by the Greek letter", "20\u03bcs", 20e-6},
		{"milliseconds", "2.5ms", 0.0025},
		{"seconds", "30s", 30},
		{"capitals and spaces", " 20 US ", 20e-6},
		{"spaces in a fraction", "1 / 50 s", 0.02},
		{"exponent", "2e-5s", 20e-6},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ParseTime(c.in)
			require.NoError(t, err)
			require.InEpsilon(t, c.want, got, 1e-12)
		})
	}
}

func TestParseTimeRefuses(t *testing.T) {
	for _, c := range []struct{ name, in, says string }{
		{"a comma for the point", "0,5ms", `"0,5ms" has a comma for the point` + "\nhint: write 0.5ms"},
		{"bare number", "20", `"20" has no unit` + "\nhint: write 20us"},
		{"empty", "", "write a fraction of a second or a number and its unit, such as 1/24000s or 20us"},
		{"only a unit", "us", "is not a time"},
		{"only a stroke", "/", "is not a time"},
		{"nothing below the stroke", "1/s", "is not a time"},
		{"two strokes", "1/2/3s", "is not a time"},
		{"unknown unit", "3min", "is not a time"},
		{"nothing", "0s", "above 0s"},
		{"below nothing", "-20us", "above 0s"},
		{"parts of nothing", "1/0s", "above 0s"},
		{"nothing in parts", "0/0s", "above 0s"},
		{"longer than any", "1e300s", "too short or too long"},
		{"NaN", "NaNs", "is not a time"},
		{"infinite", "Infs", "is not a time"},
		{"hexadecimal", "0x10us", "is not a time"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := ParseTime(c.in)
			require.ErrorContains(t, err, c.says)
		})
	}
}
