package gauge

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Steps of grey come out at the levels that stand below them, and nothing on the page has a colour.
func TestGreysAreTrue(t *testing.T) {
	s := printed(t, "A4")
	p := composed(s.paper)
	x, y := s.pxPerMM()
	seen := map[int]bool{}
	for _, f := range p.fills {
		if f.WidthMM > 50 {
			continue // the ground of the reversed lines
		}
		got := s.image.RGBAAt(int((f.XMM+f.WidthMM/2)*x), int((f.YMM+f.HeightMM/2)*y))
		require.InDelta(t, f.level, int(got.R), 1)
		seen[f.level] = true
	}
	for _, level := range []int{0, 4, 128, 251, 255} {
		require.True(t, seen[level], level)
	}
	for i := 0; i < len(s.image.Pix); i += 4 {
		if pix := s.image.Pix[i : i+3]; pix[0] != pix[1] || pix[1] != pix[2] {
			t.Fatalf("pixel %d has a colour: %v", i/4, pix)
		}
	}
}

// Three lines of each width are three times that width of ink, and white on black as much bare paper.
func TestLinesAreAsWideAsTheySay(t *testing.T) {
	for _, name := range []string{"A4", "A5"} {
		s := printed(t, name)
		p := composed(s.paper)
		var top, high float64
		for _, f := range p.fills {
			if f.WidthMM > 50 {
				top, high = f.YMM, f.HeightMM
			}
		}
		require.Positive(t, high)
		perMM, _ := s.pxPerMM()
		column := p.middle.WidthMM / 10
		for i := range 10 {
			from, to := p.middle.XMM+float64(i)*column+0.3, p.middle.XMM+float64(i+1)*column-0.3
			black, _ := s.profile(true, top-high/2, from, to)
			reversed, _ := s.profile(true, top+high/2, from, to)
			sum, bare := 0.0, 0.0
			for k := range black {
				sum += black[k]
				bare += 1 - reversed[k]
			}
			want := 3 * float64(i+1) / 10
			require.InDelta(t, want, sum/perMM, nearMM, "%s: black lines of %.1f mm", name, want/3)
			require.InDelta(t, want, bare/perMM, nearMM, "%s: white lines of %.1f mm", name, want/3)
			if i == 0 {
				continue // a gap of 0.1 mm is not a whole pixel
			}
			require.Len(t, s.lines(true, top-high/2, from, to), 3, "%s: gaps of %.1f mm", name, want/3)
		}
	}
}
