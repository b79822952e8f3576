package main

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What size says of an artwork's or a job's sheets is what make then makes of them, where the artwork decides how the
// paper lies or how many sheets keep seams out of a place. Without the artwork size says that it decides.
func TestSizeLaysPaperAsMakeDoes(t *testing.T) {
	t.Chdir(t.TempDir())
	// Six sheets upright have one seam across the middle, and six on their sides one down it.
	dark(t, "portrait.png", func(across, _ float64) bool { return math.Abs(across-0.5) < 0.2 })
	dark(t, "landscape.png", func(_, down float64) bool { return math.Abs(down-0.5) < 0.2 })
	words := strings.Fields("--distance 40cm --print-size 40x40cm --frame-width 15mm --pixels 60x40")
	for _, way := range []string{"portrait", "landscape"} {
		size, _, code := dropsheet(t, append([]string{"size", way + ".png"}, words...)...)
		require.Equal(t, exitDone, code)
		require.Contains(t, printLine(size), way)
		made, stderr, code := dropsheet(t, append([]string{"make", way + ".png", "--out", way}, words...)...)
		require.Equal(t, exitDone, code, stderr)
		require.Equal(t, printLine(made), printLine(size))
		size, _, code = dropsheet(t, "size", way, "--aperture", "f/11")
		require.Equal(t, exitDone, code)
		require.Equal(t, printLine(made), printLine(size))
	}

	size, _, code := dropsheet(t, append([]string{"size", "--shape", "1:1"}, words...)...)
	require.Equal(t, exitDone, code)
	require.Contains(t, printLine(size), "either way")
	for args, slides := range map[string]bool{"size --shape 1:1": true, "size portrait": false} {
		size, _, code = dropsheet(t, strings.Fields(args+" --verbose")...)
		require.Equal(t, exitDone, code)
		require.Equal(t, slides, strings.Contains(size, "make slides seams"), args)
	}

	made, stderr, code := dropsheet(t, "make", "portrait.png", "--out", "clear", "--distance", "20cm", "--avoid",
		"0.5,0.5,0.1", "--more-sheets", "4", "--pixels", "60x40")
	require.Equal(t, exitDone, code, stderr)
	for _, more := range [][]string{nil, {"--aperture", "f/11"}} {
		size, _, code = dropsheet(t, append([]string{"size", "clear"}, more...)...)
		require.Equal(t, exitDone, code)
		require.Equal(t, printLine(made), printLine(size))
	}
}

// printLine is the line that tells size and sheets.
func printLine(stdout string) string { return lineOf(stdout, "PRINT") }

// lineOf is the line that begins so.
func lineOf(stdout, begins string) string {
	for line := range strings.Lines(stdout) {
		if strings.HasPrefix(line, begins) {
			return line
		}
	}
	return ""
}

// dark writes a light picture that is dark, where a bare paper edge shows, in some shares of its width and height.
func dark(t *testing.T, path string, is func(across, down float64) bool) {
	m := image.NewGray(image.Rect(0, 0, 200, 200))
	for y := range 200 {
		for x := range 200 {
			m.SetGray(x, y, color.Gray{Y: 250})
			if is(float64(x)/200, float64(y)/200) {
				m.SetGray(x, y, color.Gray{Y: 40})
			}
		}
	}
	f, err := os.Create(path)
	require.NoError(t, err)
	defer f.Close()
	require.NoError(t, png.Encode(f, m))
}
