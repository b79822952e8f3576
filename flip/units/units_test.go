package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		name, in string
		want     float64
	}{
		{"millimetres", "4.6mm", 4.6},
		{"centimetres", "20cm", 200},
		{"metres", "1.8m", 1800},
		{"inches", "11in", 279.4}, // 1 in = 25.4 mm, ISO 80000-3:2006 annex C
		{"an inch by its sign", `16"`, 406.4},
		{"an inch by its double prime", "16\u2033", 406.4},
		{"an inch by a closing quote", "16\u201d", 406.4},
		{"space before inches", "16 in", 406.4},
		{"feet", "5ft", 1524}, // 12 inches, ISO 80000-3:2006 annex C
		{"feet by their sign", "5'", 1524},
		{"feet by their prime", "5\u2032", 1524},
		{"a kilometre", "1000m", 1e6},
		{"a nanometre", "1e-6mm", 1e-6},
		{"nothing", "0mm", 0},
		{"capitals", "40CM", 400},
		{"space before the unit", "20 cm", 200},
		{"exponent", "2e2mm", 200},
		{"negative", "-5mm", -5},
		{"a minus sign for the hyphen", "\u22125mm", -5},
		{"micrometres", "28um", 0.028},
		{"micrometres by the micro sign", "28\u00b5m", 0.028},
		{"micrometres by the Greek letter", "28\u03bcm", 0.028},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ParseLength(c.in)
			require.NoError(t, err)
			require.InDelta(t, c.want, got, 1e-9)
		})
	}
}

// What binary fractions add to a product would be read by people, and printed.
func TestLengthsHaveNoNoise(t *testing.T) {
	for in, want := range map[string]float64{"24in": 609.6, "1.1cm": 11, "0.57m": 570, "16.1cm": 161} {
		got, err := ParseLength(in)
		require.NoError(t, err)
		require.Equal(t, want, got, in)
	}
}

func TestTyped(t *testing.T) {
	for mm, want := range map[float64]string{5: "5mm", 609.6: "609.6mm", 4003.21: "4.003m", 0.0001: "0mm", -1500: "-1.5m",
		1.0 / 3: "0.333mm", 1e6: "1000m"} {
		require.Equal(t, want, Typed(mm))
	}
}

func TestParsePlace(t *testing.T) {
	for _, c := range []struct {
		name, in string
		x, y     float64
	}{
		{"a unit each", "1mm,-0.5cm", 1, -5},
		{"one unit for both", "0,-1.5mm", 0, -1.5},
		{"spaces", " 1 , 2 mm ", 1, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			x, y, err := ParsePlace(c.in)
			require.NoError(t, err)
			require.Equal(t, []float64{c.x, c.y}, []float64{x, y})
		})
	}
	for _, in := range []string{"", "1mm", ",", "1mm,2", "1,2", "1mm,2mm,3mm", "a,1mm"} {
		_, _, err := ParsePlace(in)
		require.Error(t, err, in)
	}
}

func TestParseLengthRefuses(t *testing.T) {
	for _, c := range []struct{ name, in, says string }{
		{"bare number", "20", "has no unit\nhint: write 20mm"},
		{"empty", "", "is not a length"},
		{"only a unit", "mm", "is not a length"},
		{"unknown unit", "3 parsec", "is not a length"},
		{"NaN", "NaNmm", "is not a length"},
		{"infinite", "Infmm", "is not a length"},
		{"overflow", "1e999mm", "is not a length"},
		{"overflow by the unit", "1e308in", "is too long\nhint: write 1000m or less"},
		{"too long", "1001m", "too long"},
		{"too far back", "-1001m", "too long"},
		{"too short", "1e-320m", "is too short\nhint: write a nanometre (0.000001mm) or more"},
		{"a comma for the point", "0,4m", `"0,4m" has a comma for the point` + "\nhint: write 0.4m"},
		{"two commas", "1,000,000m", "is not a length"},
		{"hexadecimal", "0x10mm", "is not a length"},
		{"two numbers", "1 2mm", "is not a length"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := ParseLength(c.in)
			require.ErrorContains(t, err, c.says)
		})
	}
}

func TestParseSize(t *testing.T) {
	for _, c := range []struct {
		name, in string
		w, h     float64
	}{
		{"one unit for both", "36x24mm", 36, 24},
		{"a unit each", "1.2mx80cm", 1200, 800},
		{"inches", "13x19in", 330.2, 482.6},
		{"spaces", "36 x 24 mm", 36, 24},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, h, err := ParseSize(c.in)
			require.NoError(t, err)
			require.InDelta(t, c.w, w, 1e-9)
			require.InDelta(t, c.h, h, 1e-9)
		})
	}
	for _, in := range []string{"", "x", "36", "36x24", "36mmx24", "0x24mm", "-1x24mm", "axbmm", "1x2x3mm"} {
		_, _, err := ParseSize(in)
		require.Error(t, err, in)
	}
}

// A point is 1/72 inch (ISO 32000-1, 8.3.2.3): A4 is 595.276 x 841.890 points.
func TestPoints(t *testing.T) {
	require.InDelta(t, 595.276, MMToPoints(210), 0.0005)
	require.InDelta(t, 210, PointsToMM(MMToPoints(210)), 1e-12)
}

// 300 ppi is the usual print resolution; 300/25.4 = 11.811 to the millimetre.
func TestResolution(t *testing.T) {
	require.InDelta(t, 11.811, PerInch(300).PixelsPerMM(), 0.0005)
	require.InDelta(t, 254, PerMM(10).PixelsPerInch(), 1e-9)
}

func FuzzParse(f *testing.F) {
	seeds := []string{"4.6mm", "20cm", "1.8m", "11in", "20", "", "NaNmm", "36x24mm", "1.2mx80cm", "x", "1e308in", "+-1mm"}
	if len(seeds) == 0 {
		f.Fatal("no seeds")
	}
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if mm, err := ParseLength(s); err == nil && (math.IsNaN(mm) || math.IsInf(mm, 0)) {
			t.Errorf("ParseLength(%q) = NaN", s)
		}
		if w, h, err := ParseSize(s); err == nil && !(w > 0 && h > 0) {
			t.Errorf("ParseSize(%q) = %v, %v", s, w, h)
		}
	})
}
