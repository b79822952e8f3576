package loops

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/pdf/pdftest"

	"github.com/stretchr/testify/require"
)

// A grey artwork in a coloured surround: the sheets show the colour beyond the picture, and the picture's own
// grey inside.
func TestGreyArtworkInAColour(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 60, 40))
	for i := range m.Pix {
		m.Pix[i] = 150
	}
	path := filepath.Join(t.TempDir(), "grey.png")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	for _, lossless := range []string{"--lossless", "--lossless=false"} {
		folder := programtest.Make(t, path, "--distance", "8cm", "--surround", "#204080", "--surround-size", "260x180mm",
			lossless)
		sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
		require.NoError(t, err)
		doc, j := pdftest.Open(t, sheets), readPaperJob(t, folder)
		const dpi = 50
		for _, s := range j.Sheets {
			page := doc.Render(s.Page, dpi)
			for _, c := range []struct{ x, y float64 }{{5, 5}, {255, 5}, {5, 175}, {255, 175}, {130, 90}, {100, 70}} {
				if c.x < s.Cell.X || c.y < s.Cell.Y || c.x >= s.Cell.X+s.Cell.Width || c.y >= s.Cell.Y+s.Cell.Height {
					continue
				}
				want := color.RGBA{0x20, 0x40, 0x80, 0xff}
				if onPicture(j, c.x, c.y) {
					want = color.RGBA{150, 150, 150, 0xff}
				}
				got := page.RGBAAt(int((c.x-s.Cell.X+s.OnPage.X)*dpi/25.4), int((c.y-s.Cell.Y+s.OnPage.Y)*dpi/25.4))
				for _, d := range []float64{float64(got.R) - float64(want.R), float64(got.G) - float64(want.G),
					float64(got.B) - float64(want.B)} {
					require.LessOrEqual(t, math.Abs(d), 2.0, "%s: board (%g, %g) is %v, want %v", s.Name, c.x, c.y, got, want)
				}
			}
		}
	}
}
