package main

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// testWidthPx is a tenth of the full size.
const testWidthPx = 600

// small is one rendering for all tests that only look at it.
var small = sync.OnceValue(func() *image.RGBA { return render(testWidthPx) })

func TestRenderTwiceIsTheSamePicture(t *testing.T) {
	var first, second bytes.Buffer
	require.NoError(t, jpeg.Encode(&first, small(), nil))
	require.NoError(t, jpeg.Encode(&second, render(testWidthPx), nil))
	require.True(t, bytes.Equal(first.Bytes(), second.Bytes()), "two renderings give different files")
}

func TestRenderShowsTheHarbour(t *testing.T) {
	img := small()
	require.Equal(t, image.Rect(0, 0, testWidthPx, testWidthPx*2/3), img.Bounds())

	part := func(x0, y0, x1, y1 float64) [3]float64 { return mean(img, x0, y0, x1, y1) }
	luma := func(c [3]float64) float64 { return 0.299*c[0] + 0.587*c[1] + 0.114*c[2] }
	sky, sea := part(0, 0, 6000, 1900), part(0, 2700, 6000, 4000)
	require.Greater(t, luma(sky), luma(sea)+50, "the sky must be plainly lighter than the water: that tells up from down")

	before, after := part(2200, 1500, 2500, 1850), part(5700, 1500, 6000, 1700)
	require.Greater(t, before[0]-before[2], after[0]-after[2]+30, "the sky must glow warm where the sun is")

	letters, wall := 0, 0 // the lettering is pale on dark
	for x := 2780; x < 4020; x += 10 {
		switch l := luma(part(float64(x), 1640, float64(x+10), 1650)); {
		case l > 190:
			letters++
		case l < 110:
			wall++
		}
	}
	require.Greater(t, letters, 20, "QUAY 7 must be there")
	require.Greater(t, wall, 50, "QUAY 7 must stand out from its wall")

	red, white := part(1800, 1480, 1900, 1560), part(1800, 1640, 1900, 1700)
	require.Greater(t, red[0], 2*red[2], "the lighthouse's third band is red")
	require.Less(t, white[0]-white[2], 30.0, "the lighthouse's second band is white")
}

// TestPictureIsWhatTheProgramDraws keeps harbour.jpg and the program from drifting apart. Compared a tenth of
// the size, by the mean over tiles of 250 units: JPEG, the missing detail of the small rendering and another
// processor's rounding all stay under 4 levels.
func TestPictureIsWhatTheProgramDraws(t *testing.T) {
	path := filepath.Join("..", "harbour.jpg")
	info, err := os.Stat(path)
	require.NoError(t, err)
	require.Less(t, info.Size(), int64(2_000_000), "harbour.jpg must stay under 2 MB")
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	full, err := jpeg.Decode(file)
	require.NoError(t, err)
	require.Equal(t, image.Rect(0, 0, canvasW, canvasH), full.Bounds())

	const tile = 250.0
	for y := 0.0; y < canvasH; y += tile {
		for x := 0.0; x < canvasW; x += tile {
			got, want := mean(full, x, y, x+tile, y+tile), mean(small(), x, y, x+tile, y+tile)
			for k, name := range []string{"red", "green", "blue"} {
				require.InDelta(t, want[k], got[k], 4, "%s of the tile at %v, %v: run go run ./examples/harbour/draw", name, x, y)
			}
		}
	}
}

func TestRunRefuses(t *testing.T) {
	dir := t.TempDir()
	out := filepath.Join(dir, "a.jpg")
	for _, c := range []struct {
		name    string
		widthPx int
		rest    []string
		says    string
	}{
		{"a stray word", 600, []string{"big"}, `"big" is one word too many`},
		{"no width", 0, nil, "a width of 0 pixels"},
		{"an uneven width", 100, nil, "a width of 100 pixels"},
		{"a huge width", 60000, nil, "a width of 60000 pixels"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.ErrorContains(t, run(out, c.widthPx, c.rest), c.says)
			left, err := os.ReadDir(dir)
			require.NoError(t, err)
			require.Empty(t, left, "nothing may be left behind")
		})
	}
}

func TestRunWritesTheFile(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a.jpg")
	require.NoError(t, run(out, 60, nil))
	file, err := os.Open(out)
	require.NoError(t, err)
	defer file.Close()
	config, err := jpeg.DecodeConfig(file)
	require.NoError(t, err)
	require.Equal(t, [2]int{60, 40}, [2]int{config.Width, config.Height})
}

// mean is the mean red, green and blue, 0..255, of a part of the picture given in canvas units; of a large
// picture every third pixel.
func mean(img image.Image, x0, y0, x1, y1 float64) [3]float64 {
	pxPerU := float64(img.Bounds().Dx()) / canvasW
	step := 1
	if pxPerU == 1 {
		step = 3
	}
	var sum [3]float64
	n := 0.0
	for y := int(y0 * pxPerU); y < int(y1*pxPerU); y += step {
		for x := int(x0 * pxPerU); x < int(x1*pxPerU); x += step {
			c := color.RGBAModel.Convert(img.At(x, y)).(color.RGBA)
			sum[0], sum[1], sum[2] = sum[0]+float64(c.R), sum[1]+float64(c.G), sum[2]+float64(c.B)
			n++
		}
	}
	return [3]float64{sum[0] / n, sum[1] / n, sum[2] / n}
}
