package main

import (
	"encoding/json"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// lightOf asks size for its figures as a program would.
func lightOf(t *testing.T, flags string) (light map[string]any, stderr string) {
	t.Helper()
	stdout, stderr, code := dropsheet(t, append([]string{"size", "--json"}, strings.Fields(flags)...)...)
	require.Equal(t, exitDone, code, stderr)
	var report map[string]any
	require.NoError(t, json.Unmarshal([]byte(stdout), &report))
	light, _ = report["light"].(map[string]any)
	return light, stderr
}

func TestSizeTellsTheLight(t *testing.T) {
	light, stderr := lightOf(t, "--distance 40cm")
	require.Nil(t, light, "no lamp, nothing to tell")
	require.Empty(t, stderr)

	// One lamp on the axis: the cosine-fourth law at the print's corner.
	light, stderr = lightOf(t, "--print-size 900x600mm --lamp 0mm,0mm,800mm")
	require.Empty(t, stderr)
	require.InDelta(t, -4*math.Log2(math.Cos(math.Atan(math.Hypot(450, 300)/800))), light["falloff_stops"], 1e-9)

	stdout, _, code := dropsheet(t, "size", "--print-size", "900x600mm", "--lamp", "0mm,0mm,800mm")
	require.Equal(t, exitDone, code)
	for _, says := range []string{"falls off by 1.09 stops", "top left 1.09, top right 1.09, bottom left 1.09, bottom " +
		"right 1.09", "--level", "shiny paper mirrors lamp 1 in the drop"} {
		require.Contains(t, stdout, says)
	}
}

func TestLampsAreWarnedOf(t *testing.T) {
	for _, c := range []struct{ name, flags, says string }{
		{"cut edges away from the lamp", "--distance 40cm --lamp 60cm,-40cm,90cm", "--light-from top-right"},
		{"a lamp in the frame", "--distance 40cm --lamp 2cm,1cm,45cm --light-from bottom-right",
			"lamp 1 stands in the frame"},
		{"a lamp that the drop shows", "--distance 40cm --lamp -30cm,-5cm,10cm", "lamp 1 stands where the drop shows it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr := lightOf(t, c.flags)
			require.Contains(t, stderr, "warning: ")
			require.Contains(t, stderr, c.says)
		})
	}
}

// Level, through the whole program: paper as PDFium draws it, pasted by the job file alone, under the lamps
// by the inverse square and the cosines as written out here, is even; and a reprint is the same again.
func TestLevelledBoardIsEvenUnderItsLamps(t *testing.T) {
	path := flatPNG(t, 900, 600, 200)
	folder := mustMake(t, path, "--distance", "25cm", "--lossless", "--level", "--lamp", "-60cm,-40cm,70cm", "--lamp",
		"30cm,0cm,60cm", "--seams", "even", "--pixels", "120x80")
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)
	j := readPaperJob(t, folder)
	board := paste(t, j, sheets)

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
		require.LessOrEqual(t, c, uint8(200), "never brighter than the artwork")
	}
	require.Greater(t, brightest/darkest, 1.6, "the lamps must leave something to level")
	t.Logf("lamps fall off by a factor of %.2f, the levelled board in their light by %.4f", brightest/darkest, most/least)
	// A level is 1.7 % of the light at 140; half of it may be lost either way in printing, and PDFium and the
	// pasting may lose half again.
	require.Less(t, most/least, 1.035)

	out := filepath.Join(t.TempDir(), "again.pdf")
	_, stderr, code := dropsheet(t, "reprint", folder, "all", "--out", out)
	require.Equal(t, exitDone, code, stderr)
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

func TestLevelIsRecordedAndToldOnlyWhenAsked(t *testing.T) {
	path, _ := jobtest.WritePattern(t, 60, 40)
	const flags = "--lamp -40cm,-40cm,30cm --level --travel 0.5mm --surround navy --surround-size 92x62cm"
	levelled := readFolder(t, mustMake(t, path, strings.Fields(flags)...))
	plain := readFolder(t, mustMake(t, path, strings.Fields(strings.Replace(flags, " --level ", " ", 1))...))
	require.Contains(t, string(levelled[place.JobFile]), "levelled_for_mm")
	require.NotContains(t, string(plain[place.JobFile]), "levelled_for_mm")
	require.NotEqual(t, levelled["sheets.pdf"], plain["sheets.pdf"])
}
