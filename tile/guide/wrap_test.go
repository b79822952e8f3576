package guide

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// testBook is a book to measure text with.
func testBook(t testing.TB) *book {
	p, err := usual().Plan()
	require.NoError(t, err)
	b := newBook(Job{Plan: p}, found{})
	b.newPage()
	return b
}

func TestWrap(t *testing.T) {
	b := testBook(t)
	m := b.width(bodyStyle, "m")
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
		{"bold does not show as letters", strong("mm") + " mm", 10 * m, []string{"mm mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, l := range b.wrap(bodyStyle, c.widthMM, c.text) {
				got = append(got, l.text())
			}
			require.Equal(t, c.want, got)
		})
	}
	lines := b.wrap(bodyStyle, 100, "plain "+strong("bold")+" plain")
	require.Equal(t, []line{{{"plain ", false, "Helvetica"}, {"bold ", true, "Helvetica"},
		{"plain", false, "Helvetica"}}}, lines)
}

// A text whose letters need a stand-in is set and measured in it as a whole, its lines without such letters too.
func TestWrapKeepsToOneFont(t *testing.T) {
	b := testBook(t)
	text := strings.Repeat("Illimm ", 20) + strong("Гавань") + " Wim"
	lines := b.wrap(bodyStyle, 40, text)
	require.Greater(t, len(lines), 2)
	for _, l := range lines {
		require.LessOrEqual(t, b.runsWidth(bodyStyle, l), 40.0)
		for _, r := range l {
			require.Equal(t, "go", r.font)
		}
	}
	require.Len(t, b.wrap(bodyStyle, 1000, "Гавань "+strong("II"))[0], 2)
	for _, r := range b.wrap(bodyStyle, 1000, "Port "+strong("Größe"))[0] {
		require.Equal(t, "Helvetica", r.font)
	}

	// What is cut off takes its font along: the rest keeps it.
	s := bodyStyle.holding("Гавань")
	require.NotEqual(t, b.width(bodyStyle, "Will"), b.width(s, "Will"))
	cut := b.fit(bodyStyle, b.width(s, "Will\u2026")+0.01, "Willow – Гавань")
	require.Equal(t, "Will\u2026", cut)
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
		b := testBook(t)
		clean := b.clean(text)
		s := bodyStyle.holding(clean)
		encoded := s.face().Encode(clean)
		letters := len(encoded) // of a core font a byte each
		if s != bodyStyle {
			letters = utf8.RuneCountInString(encoded)
		}
		require.Equal(t, utf8.RuneCountInString(clean), letters)
		require.False(t, strings.ContainsFunc(encoded, func(r rune) bool { return r < ' ' || r == 0x7f }), "%q", encoded)
		var kept strings.Builder
		for _, l := range b.wrap(bodyStyle, widthMM, clean) {
			require.LessOrEqual(t, b.runsWidth(bodyStyle, l), widthMM+1e-9)
			kept.WriteString(l.text())
		}
		require.Equal(t, strings.ReplaceAll(clean, " ", ""), strings.ReplaceAll(kept.String(), " ", ""))
		short := b.fit(bodyStyle, widthMM, clean)
		require.LessOrEqual(t, b.width(s, short), widthMM+1e-9)
		b.putFit(bodyStyle, 10, 10, widthMM, clean)
		require.NoError(t, b.doc.Err())
	})
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"tenth", tenth(177.84), "177.8"},
		{"tenth of a whole", tenth(5), "5.0"},
		{"no minus zero", tenth(-0.04), "0.0"},
		{"length", length(889.23), "889.2\u00a0mm"},
		{"whole length", length(400), "400\u00a0mm"},
		{"long", length(2350.04), "2350\u00a0mm"},
		{"far", far(2093.44), "2093.4\u00a0mm (2.09\u00a0m)"},
		{"not so far", far(1999.9), "1999.9\u00a0mm"},
		{"size", size(889.23, 592.8), "889.2\u00a0×\u00a0592.8\u00a0mm"},
		{"percent", percent(0.0675), "6.8\u00a0%"},
		{"short keeps what counts", short(1.3330, 4), "1.333"},
		{"short does not eat tens", short(100, 1), "100"},
		{"one", count(1, "sheet", "sheets"), "1\u00a0sheet"},
		{"many", count(15, "sheet", "sheets"), "15\u00a0sheets"},
		{"round up", whole(roundUp(931, 10)), "940\u00a0mm"},
		{"round up a whole", whole(roundUp(930, 10)), "930\u00a0mm"},
	} {
		require.Equal(t, c.want, c.got, c.name)
	}
}

func TestFit(t *testing.T) {
	b := testBook(t)
	m, dots := b.width(bodyStyle, "m"), b.width(bodyStyle, "\u2026")
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
		require.Equal(t, c.want, b.fit(bodyStyle, c.widthMM, "mmmm"), c.name)
	}
}
