package guide

import (
	"bytes"
	"fmt"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/pdf/pdftest"
)

// The page of rays is true to the scale that it tells, on every paper: the board, the only thing in its colour that
// stands upright, is as long as it must be; and what it tells of the outermost ray is what the separate trace of
// closed form gives, worked out here from Snell's law.
func TestRaysAreToScale(t *testing.T) {
	for _, c := range []struct {
		paper string
		body  flip.Body
	}{{"A4", flip.UprightRod}, {"A5", flip.LevelRod}, {"A3", flip.UprightRod}} {
		t.Run(c.paper, func(t *testing.T) {
			s := usual()
			s.Drop.Body, s.Drop.DiameterMM, s.Drop.Index, s.Look, s.DistanceMM = c.body, 20, 1.5168, layout.Straight, 200
			j := jobOf(t, s)
			j.Paper = on(t, c.paper).Paper
			var file bytes.Buffer
			require.NoError(t, WriteRays(&file, j))
			doc := pdftest.Open(t, file.Bytes())
			require.Equal(t, 1, doc.PageCount())
			text := flat(doc.Text(1))
			found := regexp.MustCompile(`The bench at ([\d.]+) : ([\d.]*\d)`).FindStringSubmatch(text)
			require.NotEmpty(t, found, text)
			require.LessOrEqual(t, len(found[1]+found[2]), len("1.2515"), "a scale to lay a ruler on: %s", found[0])
			one, _ := strconv.ParseFloat(found[1], 64)
			to, _ := strconv.ParseFloat(found[2], 64)

			const dpi = 100
			page := doc.Render(1, dpi)
			longest := 0
			for x := page.Rect.Min.X; x < page.Rect.Max.X; x++ {
				run := 0
				for y := page.Rect.Min.Y; y < page.Rect.Max.Y; y++ {
					if run++; page.RGBAAt(x, y) != (color.RGBA{accent.R, accent.G, accent.B, 0xff}) {
						run = 0
					}
					longest = max(longest, run)
				}
			}
			across := j.Plan.Backdrop.WidthMM
			if c.body == flip.LevelRod {
				across = j.Plan.Backdrop.HeightMM
			}
			require.InDelta(t, across*one/to, float64(longest)/units.PerInch(dpi).PixelsPerMM(), 0.6)

			// Through the point at the fill of the rod's plane: b = D sin a, sin i = b/R = n sin r, turned by 2(i - r).
			radius, d := 10.0, j.Plan.Drop.CameraMM
			a := math.Atan(j.Plan.Picture.Fill * math.Tan(math.Asin(radius/d)))
			b := d * math.Sin(a)
			i := math.Asin(b / radius)
			r := math.Asin(b / radius / 1.5168)
			lands := math.Abs(200*math.Tan(a-2*(i-r)) + b/math.Cos(a-2*(i-r)))
			for _, figure := range []string{fmt.Sprintf("%.1f\u00b0", i*180/math.Pi), fmt.Sprintf("%.1f\u00b0", r*180/math.Pi),
				fmt.Sprintf("%.1f\u00b0", 2*(i-r)*180/math.Pi), fmt.Sprintf("%.4g mm", lands)} {
				require.Contains(t, text, figure)
			}
		})
	}
	ball := jobOf(t, usual())
	require.False(t, HasRays(ball.Plan))
	for _, section := range ball.sections() {
		require.NotEqual(t, raysTitle, section.title)
	}
}
