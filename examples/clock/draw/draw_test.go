package main

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// testSidePx is a fifth of the full size.
const testSidePx = 600

// small is one rendering for all tests that only look at it.
var small = sync.OnceValue(func() *image.RGBA { return render(testSidePx) })

func TestRenderTwiceIsTheSamePicture(t *testing.T) {
	require.True(t, bytes.Equal(small().Pix, render(testSidePx).Pix), "two renderings differ")
}

func TestRenderShowsTheClock(t *testing.T) {
	img := small()
	require.Equal(t, image.Rect(0, 0, testSidePx, testSidePx), img.Bounds())

	for _, c := range [][2]float64{{-1450, 1450}, {1450, 1450}, {-1450, -1450}, {1450, -1450}} {
		wall := spot(img, c[0], c[1], 40)
		require.Greater(t, wall[2], wall[0]+20, "the wall at %v must be blue", c)
	}
	glass := spot(img, 250, -870, 20) // between 6, 5 and the ring
	require.Greater(t, glass[0], glass[2]+40, "the dial must be lit warm")
	require.Greater(t, luma(glass), luma(spot(img, 1450, 1450, 40))+100, "the dial must stand out from the wall")
}

// TestPictureIsWhatTheProgramDraws keeps clock.jpg and the program from drifting apart. Compared a fifth of
// the size, by the mean over tiles of 100 units: JPEG, the missing detail of the small rendering and another
// processor's rounding all stay under 4 levels.
func TestPictureIsWhatTheProgramDraws(t *testing.T) {
	path := filepath.Join("..", "clock.jpg")
	info, err := os.Stat(path)
	require.NoError(t, err)
	require.Less(t, info.Size(), int64(1_500_000), "clock.jpg must stay under 1.5 MB")
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	full, err := jpeg.Decode(file)
	require.NoError(t, err)
	require.Equal(t, image.Rect(0, 0, 3000, 3000), full.Bounds())

	for y := -1450.0; y < 1500; y += 100 {
		for x := -1450.0; x < 1500; x += 100 {
			got, want := spot(full, x, y, 50), spot(small(), x, y, 50)
			for k, name := range []string{"red", "green", "blue"} {
				require.InDelta(t, want[k], got[k], 4, "%s of the tile at %v, %v: run go run ./examples/clock/draw", name, x, y)
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
	require.Equal(t, [2]int{60, 60}, [2]int{config.Width, config.Height})
}

func luma(c [3]float64) float64 { return 0.299*c[0] + 0.587*c[1] + 0.114*c[2] }

// spot is the mean red, green and blue, 0..255, of the square of twice half a side about x, y, in units from
// the dial's centre.
func spot(img image.Image, x, y, half float64) [3]float64 {
	pxPerU := float64(img.Bounds().Dx()) / 3000
	first := func(u float64) int { return int(math.Floor((u+1500)*pxPerU + 1e-9)) }
	end := func(u, v float64) int { return max(int(math.Ceil((v+1500)*pxPerU-1e-9)), first(u)+1) }
	var sum [3]float64
	n := 0.0
	for row := first(-y - half); row < end(-y-half, -y+half); row++ {
		for col := first(x - half); col < end(x-half, x+half); col++ {
			c := color.RGBAModel.Convert(img.At(col, row)).(color.RGBA)
			sum[0], sum[1], sum[2] = sum[0]+float64(c.R), sum[1]+float64(c.G), sum[2]+float64(c.B)
			n++
		}
	}
	return [3]float64{sum[0] / n, sum[1] / n, sum[2] / n}
}
