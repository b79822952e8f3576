package loops

import (
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
)

// Level, through the whole program: paper as PDFium draws it, pasted by the job file alone, under the lamps
// by the inverse square and the cosines as written out here, is even; and a reprint is the same again.
func TestLevelledBoardIsEvenUnderItsLamps(t *testing.T) {
	path := flatPNG(t, 900, 600, 200)
	folder := programtest.Make(t, path, "--distance", "25cm", "--lossless", "--level", "--lamp", "-60cm,-40cm,70cm",
		"--lamp", "30cm,0cm,60cm", "--seams", "even")
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)
	j := readPaperJob(t, folder)
	board := pasteFinely(t, j, sheets, 50) // nothing here is fine

	falls := func(xMM, yMM float64) (sum float64) {
		for _, l := range [][3]float64{{-600, -400, 700}, {300, 0, 600}} {
			dx, dy, dz := xMM-j.Backdrop.Width/2-l[0], yMM-j.Backdrop.Height/2-l[1], -l[2]
			d := math.Sqrt(dx*dx + dy*dy + dz*dz)
			far := math.Sqrt(l[0]*l[0] + l[1]*l[1] + l[2]*l[2])
			sum += -(dx*l[0] + dy*l[1] + dz*l[2]) / (d * far) * (l[2] / d) / (d * d)
		}
		return sum
	}
	// IEC 61966-2-1:1999, 5.2; none here is near black
	linear := func(level uint8) float64 { return math.Pow((float64(level)/255+0.055)/1.055, 2.4) }
	least, most, darkest, brightest := math.Inf(1), 0.0, math.Inf(1), 0.0
	w := board.Rect.Dx()
	for i := range board.covered {
		x, y := i%w, i/w
		c, e := board.RGBAAt(x, y).R, falls((float64(x)+0.5)/board.pxPerMM, (float64(y)+0.5)/board.pxPerMM)
		least, most = math.Min(least, linear(c)*e), math.Max(most, linear(c)*e)
		darkest, brightest = math.Min(darkest, e), math.Max(brightest, e)
		if c > 200 { // asked first, since require takes longer than all else here
			require.LessOrEqual(t, c, uint8(200), "never brighter than the artwork")
		}
	}
	require.Greater(t, brightest/darkest, 1.6, "the lamps must leave something to level")
	t.Logf("lamps fall off by a factor of %.2f, the levelled board in their light by %.4f", brightest/darkest, most/least)
	// A level is 1.7 % of the light at 140; half of it may be lost either way in printing, and PDFium and the
	// pasting may lose half again.
	require.Less(t, most/least, 1.035)

	out := filepath.Join(t.TempDir(), "again.pdf")
	programtest.Do(t, "reprint", folder, "all", "--out", out)
	again, err := os.ReadFile(out)
	require.NoError(t, err)
	require.Equal(t, sheets, again)
}

// flatPNG writes a grey picture of one level.
func flatPNG(t *testing.T, w, h int, level uint8) (path string) {
	t.Helper()
	m := image.NewGray(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = level
	}
	path = filepath.Join(t.TempDir(), "flat.png")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	return path
}
