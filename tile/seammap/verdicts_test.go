package seammap

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/colour"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// In grey, and for eyes that confuse red and green, the lines' build tells the verdicts apart: drawn on light, middling
// and dark ground and taken the colour away, what shows is one broad dark band, what is faint two with a light gap
// between them, and what is hidden a single thin one. Out of sight is as thin, and dotted.
func TestVerdictsReadInGrey(t *testing.T) {
	lightness := func(c color.RGBA) float64 { // relative luminance, IEC 61966-2-1
		l := func(v uint8) float64 { return colour.SRGBToLight(float64(v) / 255) }
		return 0.2126*l(c.R) + 0.7152*l(c.G) + 0.0722*l(c.B)
	}
	// bands are how wide each dark stretch across an upright line is, inside its keyline.
	bands := func(line ink.Line, ground uint8) (widths []int) {
		const side, middle = 60, 30
		picture := image.NewRGBA(image.Rect(0, 0, side, side))
		grey := image.NewUniform(color.RGBA{ground, ground, ground, 0xff})
		draw.Draw(picture, picture.Bounds(), grey, image.Point{}, draw.Src)
		ink.On(picture).Draw(ink.Stroke{Path: ink.Path{{X: middle, Y: -9}, {X: middle, Y: side + 9}}, Line: line})
		half, was := int(line.WidthPx/2+line.KeylinePx/2), false
		for x := middle - half; x <= middle+half; x++ {
			is := lightness(picture.RGBAAt(x, middle)) < 0.4
			switch {
			case is && !was:
				widths = append(widths, 1)
			case is:
				widths[len(widths)-1]++
			}
			was = is
		}
		return widths
	}
	for _, ground := range []uint8{0, 128, 255} {
		hidden, faint, shows := bands(seamLines[seamsight.Hidden], ground), bands(seamLines[seamsight.Faint], ground),
			bands(seamLines[seamsight.Shows], ground)
		require.Len(t, hidden, 1)
		require.Len(t, faint, 2)
		require.Len(t, shows, 1)
		require.Greater(t, shows[0], 2*hidden[0])
		require.Greater(t, shows[0], 2*faint[0])
	}
	require.NotEmpty(t, seamLines[seamsight.OutOfSight].DashPx)
	hidden, faint, shows := seamLines[seamsight.Hidden], seamLines[seamsight.Faint], seamLines[seamsight.Shows]
	require.Greater(t, lightness(faint.Colour), 2*lightness(shows.Colour), "and where they crowd, by how dark they are")
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
						right += count(inked(got, spot, seamLines[verdict]))
					}
				}
			}
		}
		require.Greater(t, all, 50)
		require.Greater(t, float64(right), 0.8*float64(all), verdict.String())
	}
}

// inked tells whether a line runs through a spot: its colour there, or its core and its colour beside that.
func inked(m *image.RGBA, spot ink.Point, line ink.Line) bool {
	at := func(dx, dy float64) color.RGBA { return m.RGBAAt(int(spot.X+dx), int(spot.Y+dy)) }
	if line.CorePx == 0 {
		return near(at(0, 0), line.Colour)
	}
	aside := (line.WidthPx + line.CorePx) / 4
	return near(at(0, 0), line.Core) && (near(at(-aside, 0), line.Colour) && near(at(aside, 0), line.Colour) ||
		near(at(0, -aside), line.Colour) && near(at(0, aside), line.Colour))
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
