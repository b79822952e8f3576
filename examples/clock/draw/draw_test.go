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

	for _, c := range []pt{{-1450, 1450}, {1450, 1450}, {-1450, -1450}, {1450, -1450}} {
		wall := spot(img, c.x, c.y, 40)
		require.Greater(t, wall[2], wall[0]+20, "the wall at %v must be blue", c)
	}
	glass := spot(img, 250, -870, 20) // between 6, 5 and the ring
	require.Greater(t, glass[0], glass[2]+40, "the dial must be lit warm")
	require.Greater(t, luma(glass), luma(spot(img, 1450, 1450, 40))+100, "the dial must stand out from the wall")
}

// TestDialTouchesTheSides holds the rim to 2 % short of the sides: 1470 of 1500 units.
func TestDialTouchesTheSides(t *testing.T) {
	for _, c := range []struct {
		name string
		x, y float64
	}{{"top", 0, 1}, {"right", 1, 0}, {"left", -1, 0}} { // at the foot the brass is dark
		t.Run(c.name, func(t *testing.T) {
			brass, wall := spot(small(), 1463*c.x, 1463*c.y, 4), spot(small(), 1490*c.x, 1490*c.y, 4)
			require.Greater(t, luma(brass), luma(wall)+25)
		})
	}
}

// TestHandsTellTwelvePastNine: twelve minutes are a fifth of a turn, 72 degrees; the hour hand stands a fifth of the way from 9
// (270 degrees) to 10 (300 degrees).
func TestHandsTellTwelvePastNine(t *testing.T) {
	dark := func(degrees, r float64) bool {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		return luma(spot(small(), r*sin, r*cos, 8)) < 80
	}
	for r := 350.0; r <= 1150; r += 50 { // its last 100 units are too fine a point for this size
		require.True(t, dark(72, r), "the minute hand at radius %v", r)
		require.False(t, dark(78, r), "beside the minute hand at radius %v", r)
		if r < 900 { // beyond stands the 9
			require.Equal(t, r <= 500, dark(276, r), "the hour hand at radius %v", r)
		}
	}
}

// TestWordsStandUprightAndStraight: both lines are dark on light inside their own height, and light just over and under it all along.
func TestWordsStandUprightAndStraight(t *testing.T) {
	for _, c := range []struct {
		name             string
		base, capH, half float64
	}{{"HARBOUR OFFICE", 344, 96, 600}, {"PORT LARKEN", -440, 96, 500}} {
		t.Run(c.name, func(t *testing.T) {
			within, letters := 0, 0
			for x := -c.half; x < c.half; x += 5 {
				within++
				if luma(spot(small(), x, c.base+c.capH/2, 2.5)) < 90 {
					letters++
				}
				for _, y := range []float64{c.base - 12, c.base + c.capH + 12} {
					require.Greater(t, luma(spot(small(), x, y, 2.5)), 120.0, "at %v, %v", x, y)
				}
			}
			require.Greater(t, letters, within/5, "too few dark strokes")
			require.Less(t, letters, within*2/3, "too many dark strokes")
		})
	}
	// The first line begins with the upright of H and ends with the three arms of E; mirrored it would be the other way round.
	column := func(x, y float64) bool { return luma(spot(small(), x, y, 3)) < 110 }
	left, right := 0, 0
	for y := 352.0; y < 432; y += 4 {
		if column(-605, y) {
			left++
		}
		if column(605, y) {
			right++
		}
	}
	require.Greater(t, left, right+8, "the first line must begin with an upright and end with arms")
}

// TestNumerals counts the ink in each numeral's place, and tells 6 from 9: a 6 has its bowl below, a 9 above.
func TestNumerals(t *testing.T) {
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * 2 * math.Pi / 12)
		x, y := 1058*sin, 1058*cos
		share := darkShare(x-170, y-160, x+170, y+160)
		require.Greater(t, share, 0.09, "numeral %d is missing", n)
		require.Less(t, share, 0.6, "numeral %d is a blot", n)
	}
	require.Greater(t, darkShare(-100, -1200, 100, -1058), 1.2*darkShare(-100, -1058, 100, -916), "6 is upside down")
	require.Greater(t, darkShare(-1158, 0, -958, 150), 1.2*darkShare(-1158, -150, -958, 0), "9 is upside down")
}

// TestWordsKeepClear holds the words off the ring round the chart (its inner line begins at 802 units) and off the compass, by 20 units at least.
func TestWordsKeepClear(t *testing.T) {
	for i, s := range []shape{harbourOffice(), portLarken()} {
		for _, c := range s {
			for _, p := range c {
				require.Less(t, math.Hypot(p.x, p.y), 802-20.0, "line %d runs into the ring", i+1)
				require.Greater(t, math.Abs(p.y), 284+20.0, "line %d runs into the compass", i+1)
			}
		}
	}
}

// TestNumeralsKeepClear holds every numeral off the minutes' track, the ring round the chart and both hands, by 20 units at least.
func TestNumeralsKeepClear(t *testing.T) {
	minute, hour := 72*math.Pi/180, 276*math.Pi/180
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * 2 * math.Pi / 12)
		for _, c := range numeral(n, numeralR*sin, numeralR*cos, 244) {
			for _, p := range c {
				r := math.Hypot(p.x, p.y)
				require.Less(t, r, 1270-20.0, "numeral %d runs into the hour marks", n)
				require.Greater(t, r, 832+20.0, "numeral %d runs into the ring", n)
				along, off := p.x*math.Sin(minute)+p.y*math.Cos(minute), p.x*math.Cos(minute)-p.y*math.Sin(minute)
				require.True(t, along < 0 || math.Abs(off) > 27+20, "numeral %d runs into the minute hand", n)
				along = p.x*math.Sin(hour) + p.y*math.Cos(hour)
				require.True(t, along < 0 || r > 560+20, "numeral %d runs into the hour hand", n)
			}
		}
	}
}

// TestPictureIsWhatTheProgramDraws keeps clock.jpg and the program from drifting apart. Compared a fifth of the size, by the mean
// over tiles of 100 units: JPEG, the missing detail of the small rendering and another processor's rounding all stay under 4 levels.
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
		out     string
		widthPx int
		rest    []string
		says    string
	}{
		{"a stray word", out, 600, []string{"big"}, `"big" is one word too many`},
		{"no width", out, 0, nil, "a width of 0 pixels"},
		{"a huge width", out, 60000, nil, "a width of 60000 pixels"},
		{"a folder that isn't there", filepath.Join(dir, "no", "a.jpg"), 30, nil, "can't be written"},
		{"a folder in its place", dir, 30, nil, "can't be written"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.ErrorContains(t, run(c.out, c.widthPx, c.rest), c.says)
			left, err := os.ReadDir(dir)
			require.NoError(t, err)
			require.Empty(t, left, "nothing may be left behind")
		})
	}
}

func TestRunWritesTheFile(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a.jpg")
	require.NoError(t, os.WriteFile(out, []byte("older"), 0o600))
	require.NoError(t, run(out, 60, nil))
	file, err := os.Open(out)
	require.NoError(t, err)
	defer file.Close()
	config, err := jpeg.DecodeConfig(file)
	require.NoError(t, err)
	require.Equal(t, [2]int{60, 60}, [2]int{config.Width, config.Height})
	left, err := os.ReadDir(filepath.Dir(out))
	require.NoError(t, err)
	require.Len(t, left, 1, "the temporary file must be gone")
}

// darkShare is how much of a box, in units, is ink.
func darkShare(x0, y0, x1, y1 float64) float64 {
	dark, all := 0.0, 0.0
	for y := y0 + 2.5; y < y1; y += 5 {
		for x := x0 + 2.5; x < x1; x += 5 {
			all++
			if luma(spot(small(), x, y, 2.5)) < 80 {
				dark++
			}
		}
	}
	return dark / all
}

func luma(c [3]float64) float64 { return 0.299*c[0] + 0.587*c[1] + 0.114*c[2] }

// spot is the mean red, green and blue, 0..255, of the square of twice half a side about x, y, in units from the dial's centre.
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
