package layout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParsePaper(t *testing.T) {
	for _, c := range []struct {
		name, source string
		w, h         float64
	}{
		// ISO 216:2007, table 1 and table 2 (recalled from memory, in whole millimetres).
		{"A0", "ISO 216", 841, 1189}, {"A1", "ISO 216", 594, 841}, {"A2", "ISO 216", 420, 594}, {"A3", "ISO 216", 297, 420},
		{"A4", "ISO 216", 210, 297}, {"A5", "ISO 216", 148, 210}, {"A6", "ISO 216", 105, 148}, {"A7", "ISO 216", 74, 105},
		{"A8", "ISO 216", 52, 74}, {"A9", "ISO 216", 37, 52}, {"A10", "ISO 216", 26, 37},
		{"B0", "ISO 216", 1000, 1414}, {"B1", "ISO 216", 707, 1000}, {"B2", "ISO 216", 500, 707}, {"B3", "ISO 216", 353, 500},
		{"B4", "ISO 216", 250, 353}, {"B5", "ISO 216", 176, 250}, {"B10", "ISO 216", 31, 44},
		// JIS P 0138 (recalled from memory).
		{"JIS-B0", "JIS P 0138", 1030, 1456}, {"jis-b4", "JIS P 0138", 257, 364}, {"JIS-B5", "JIS P 0138", 182, 257},
		// ANSI/ASME Y14.1 sizes A and B, and US legal, in inches of 25.4 mm.
		{"letter", "ANSI A", 215.9, 279.4}, {"legal", "8.5 x 14 in", 215.9, 355.6}, {"Tabloid", "ANSI B", 279.4, 431.8},
		{"13x19in", "its name", 330.2, 482.6}, {"400x300mm", "its name, turned upright", 300, 400},
		{"6x4in", "its name, turned upright", 101.6, 152.4}, {`8.5x11"`, "its name", 215.9, 279.4},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := ParsePaper(c.name)
			require.NoError(t, err)
			require.InDelta(t, c.w, p.WidthMM, 1e-9, c.source)
			require.InDelta(t, c.h, p.HeightMM, 1e-9, c.source)
			again, err := ParsePaper(p.Name)
			require.NoError(t, err)
			require.Equal(t, p, again, "a paper's name reads back")
		})
	}
	for _, bad := range []string{"", "A11", "A-1", "A4x", "foolscap", "0x10mm", "10x10mm", "NaNxNaNmm", "300x400",
		"1x1000m"} {
		_, err := ParsePaper(bad)
		require.ErrorContains(t, err, "is not a paper", bad)
	}
}

// A paper's name is as it was given, and one in inches stays so.
func TestPapersInInches(t *testing.T) {
	for _, c := range []struct {
		given, name string
		inches      bool
	}{
		{"4x6in", "4x6in", true}, {"6inx4in", "4x6in", true}, {`8.5x11"`, "8.5x11in", true},
		{"5.83x8.27in", "5.83x8.27in", true},
		{"letter", "letter", true}, {"13x19in", "13x19in", true}, {"A4", "A4", false},
		{"101.6x152.4mm", "101.6x152.4mm", false},
		{"10x15cm", "100x150mm", false}, {"10cmx6in", "100x152.4mm", false},
	} {
		p, err := ParsePaper(c.given)
		require.NoError(t, err, c.given)
		require.Equal(t, c.name, p.Name)
		require.Equal(t, c.inches, p.InInches(), c.given)
	}
}

// ISO 216: A0 has an area of one square metre and sides as 1 to √2; B0 a side of a metre.
func TestSeriesRule(t *testing.T) {
	a0, _ := ParsePaper("A0")
	require.InDelta(t, 1e6, a0.WidthMM*a0.HeightMM, 500)
	b0, _ := ParsePaper("B0")
	for _, p := range []Paper{a0, b0} {
		require.InDelta(t, math.Sqrt2, p.HeightMM/p.WidthMM, 0.001)
	}
}
