package pdf

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// bodyStyle is a style to measure text in.
var bodyStyle = Sans(10)

func TestWrap(t *testing.T) {
	m := bodyStyle.Width("m")
	for _, c := range []struct {
		name    string
		text    string
		widthMM float64
		want    []string
	}{
		{"nothing", "", 10 * m, []string{""}},
		{"fits", "mm mm", 10 * m, []string{"mm mm"}},
		{"breaks at spaces", "mmm mmm mmm", 7.5 * m, []string{"mmm mmm", "mmm"}},
		{"no-break space holds", "mmm mm\u00a0mm", 7.5 * m, []string{"mmm", "mm\u00a0mm"}},
		{"a long word is broken", "mmmmmmm", 3.2 * m, []string{"mmm", "mmm", "m"}},
		{"a letter wider than the line", "mm", 0.5 * m, []string{"m", "m"}},
		{"bold does not show as letters", Strong("mm") + " mm", 10 * m, []string{"mm mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, l := range bodyStyle.Wrap(c.widthMM, c.text) {
				got = append(got, l.Text())
			}
			require.Equal(t, c.want, got)
		})
	}
	lines := bodyStyle.Wrap(100, "plain "+Strong("bold")+" plain")
	require.Equal(t, []TextLine{{{"plain ", false}, {"bold ", true}, {"plain", false}}}, lines)
}

// Whatever a name holds: it is set without control bytes, in as many letters as it has, and in lines no wider
// than asked.
func FuzzAnyTextCanBeSet(f *testing.F) {
	seeds := []string{"Harbour at dusk", "", "港", "a\xffb", "bell\a", strings.Repeat("w", 300), "\x01\x02 \x01",
		"\u2026\u2013\u201c\u00a0", "e\u0301 😀", "(\\)", "Гавань в сумерках",
		"Will r\u030ciditel Ωω 港 7"}
	if len(seeds) == 0 {
		f.Fatal("no seeds")
	}
	for _, s := range seeds {
		f.Add(s, 40.0)
	}
	f.Fuzz(func(t *testing.T, text string, widthMM float64) {
		if !(widthMM >= 5 && widthMM <= 500) || len(text) > 2000 {
			return
		}
		clean, _ := Printed(text)
		require.Equal(t, clean, printable(clean))
		require.False(t, strings.ContainsFunc(clean, func(r rune) bool { return r < ' ' || r == 0x7f }), "%q", clean)
		var kept strings.Builder
		for _, l := range bodyStyle.Wrap(widthMM, clean) {
			require.LessOrEqual(t, bodyStyle.runsWidth(l), widthMM+1e-9)
			kept.WriteString(l.Text())
		}
		require.Equal(t, strings.ReplaceAll(clean, " ", ""), strings.ReplaceAll(kept.String(), " ", ""))
		short := bodyStyle.Fit(widthMM, clean)
		require.LessOrEqual(t, bodyStyle.Width(short), widthMM+1e-9)
		d := New("any")
		d.AddPage(100, 100)
		d.PutFit(bodyStyle, 10, 10, widthMM, clean)
		require.NoError(t, d.Err())
	})
}

func TestFit(t *testing.T) {
	m, dots := bodyStyle.Width("m"), bodyStyle.Width("\u2026")
	for _, c := range []struct {
		name    string
		widthMM float64
		want    string
	}{
		{"whole", 4.01 * m, "mmmm"},
		{"shortened", 3.99 * m, "mm\u2026"},
		{"only the ellipsis", dots + 0.01, "\u2026"},
		{"nothing", dots - 0.01, ""},
	} {
		require.Equal(t, c.want, bodyStyle.Fit(c.widthMM, "mmmm"), c.name)
	}
}
