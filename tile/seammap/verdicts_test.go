package seammap

import (
	"image/color"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/colour"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// In grey, and for eyes that confuse red and green, width and lightness tell the verdicts apart: the plainer
// the broader, and what shows is much darker than what is faint. Out of sight and hidden are as thin as each
// other, and only one is dotted.
func TestVerdictsReadInGrey(t *testing.T) {
	lightness := func(c color.RGBA) float64 { // relative luminance, IEC 61966-2-1
		l := func(v uint8) float64 { return colour.SRGBToLight(float64(v) / 255) }
		return 0.2126*l(c.R) + 0.7152*l(c.G) + 0.0722*l(c.B)
	}
	hidden, faint, shows := seamLines[seamsight.Hidden], seamLines[seamsight.Faint], seamLines[seamsight.Shows]
	require.Greater(t, faint.WidthPx, 1.5*hidden.WidthPx)
	require.Greater(t, shows.WidthPx, 1.5*faint.WidthPx)
	require.Greater(t, lightness(faint.Colour), 3*lightness(shows.Colour))
	require.NotEmpty(t, seamLines[seamsight.OutOfSight].DashPx)
	for _, line := range []ink.Line{hidden, faint, shows} {
		require.Empty(t, line.DashPx)
		// WCAG 2.2, 1.4.11: 3 to 1 between a line and what lies beside it, here the keyline.
		require.Greater(t, (lightness(line.Keyline)+0.05)/(lightness(line.Colour)+0.05), 3.0)
	}
}

// Along every seam both views are inked as the verdict there asks, but for words over them and the few pixels
// over which a change is smoothed.
func TestSeamsAreDrawnByTheirVerdicts(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 1200, 800, 7.2 })
	// Verdicts of our own, in long stretches, so that there are some of each.
	seams := seamsight.New(p, white(), seamMM).Seams()
	for i := range seams {
		for k := range seams[i].Samples {
			verdict := seamsight.Verdict((i + 2*k/len(seams[i].Samples)) % 4)
			for path := range seams[i].Samples[k].Sightings {
				seams[i].Samples[k].Sightings[path].Verdict = verdict
			}
		}
	}
	got := Draw(p, white(), seams)
	board, drop := mapOf(p)
	for _, verdict := range []seamsight.Verdict{seamsight.Hidden, seamsight.Faint, seamsight.Shows} {
		right, all := 0, 0
		for i, s := range seams {
			for half := range 2 {
				if seamsight.Verdict((i+half)%4) != verdict {
					continue
				}
				for _, share := range []float64{0.15, 0.2, 0.25, 0.3, 0.35} {
					at := s.Place(s.FromMM + (s.ToMM-s.FromMM)*(float64(half)/2+share))
					for _, spot := range []ink.Point{board.at(at), closedForm(t, p, drop, at)} {
						all++
						right += count(near(got.RGBAAt(int(spot.X), int(spot.Y)), seamLines[verdict].Colour))
					}
				}
			}
		}
		require.Greater(t, all, 50)
		require.Greater(t, float64(right), 0.8*float64(all), verdict.String())
	}
}

// near tells whether a pixel has a colour, but for the softening of its edge.
func near(a, b color.RGBA) bool {
	far := func(x, y uint8) float64 { return math.Abs(float64(x) - float64(y)) }
	return max(far(a.R, b.R), far(a.G, b.G), far(a.B, b.B)) < 70
}

// A path is cut into stretches that lie end to end and miss nothing.
func TestStepsCoverThePath(t *testing.T) {
	for _, path := range []ink.Path{
		{{X: 0, Y: 0}, {X: 100, Y: 0}},
		{{X: 0, Y: 0}, {X: 3, Y: 4}},
		{{X: 5, Y: 5}, {X: 5, Y: 6}, {X: 5, Y: 7}, {X: 60, Y: 7}, {X: 60, Y: 20}},
		{{X: 0, Y: 0}, {X: piecePx, Y: 0}},
	} {
		parts := steps(path)
		require.NotEmpty(t, parts)
		sum := 0.0
		for i, part := range parts {
			sum += part.Length()
			if i > 0 {
				require.Equal(t, parts[i-1][len(parts[i-1])-1], part[0])
			}
		}
		require.InDelta(t, path.Length(), sum, 1e-9)
		require.Equal(t, path[0], parts[0][0])
		require.Equal(t, path[len(path)-1], parts[len(parts)-1][len(parts[len(parts)-1])-1])
	}
	require.Empty(t, steps(nil))
	require.Empty(t, steps(ink.Path{{X: 1, Y: 1}}))
}
