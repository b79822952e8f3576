package main

import (
	"bytes"
	"image"
	"image/draw"
	"image/png"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/job/jobtest"
)

// worstLevel is how far two PNGs are apart where they differ most.
func worstLevel(t *testing.T, a, b []byte) (levels float64) {
	t.Helper()
	pixels := func(data []byte) *image.RGBA {
		stored, err := png.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		m := image.NewRGBA(stored.Bounds())
		draw.Draw(m, m.Rect, stored, m.Rect.Min, draw.Src)
		return m
	}
	one, other := pixels(a), pixels(b)
	require.Equal(t, one.Rect, other.Rect)
	for i, v := range one.Pix {
		levels = max(levels, math.Abs(float64(v)-float64(other.Pix[i])))
	}
	return levels
}

// The same colours in Adobe RGB's levels and in sRGB's, which an outside colour engine made of them
// ("transicc -t1 -n -s -i FILE.icc -o '*sRGB'" of lcms 2.14, rounded), make the same pictures; the first
// without their profile do not. None is beyond sRGB: such a one would be cut off before it is mixed with its
// neighbours in the one job, and after in the other.
func TestPicturesOnScreenHaveTheProfilesColours(t *testing.T) {
	adobe := [][3]uint8{{200, 120, 100}, {110, 150, 90}, {90, 110, 170}, {40, 50, 45}}
	asSRGB := [][3]uint8{{224, 121, 99}, {87, 151, 86}, {79, 110, 174}, {30, 46, 41}}
	small := []string{"--max-sheets", "2"}
	tagged := mustMake(t, jobtest.WriteStripes(t, icctest.AdobeRGB.Profile(), adobe...), small...)
	same := mustMake(t, jobtest.WriteStripes(t, nil, asSRGB...), small...)
	untagged := mustMake(t, jobtest.WriteStripes(t, nil, adobe...), small...)
	a, b, other := readFolder(t, tagged), readFolder(t, same), readFolder(t, untagged)
	for _, name := range []string{"proof.png", "seams.png"} {
		require.LessOrEqual(t, worstLevel(t, a[name], b[name]), 2.0, name)
	}
	require.Greater(t, worstLevel(t, a["proof.png"], other["proof.png"]), 10.0)
	require.True(t, bytes.Contains(inflated(a["sheets.pdf"]), icctest.AdobeRGB.Profile()), "the sheets have it as it is")
}

const roughly = "the artwork's colour profile goes into the sheets, but the pictures on screen show its colours " +
	"only roughly, its levels taken for sRGB's: " +
	`its table A2B0 is of the kind "\x00\x00\x00\x00"`

// tablesProfile is one that can't be followed.
func tablesProfile() []byte {
	return icctest.Profile("RGB ", 2, icctest.Tag{Name: "A2B0", Data: make([]byte, 40)})
}

// Every command that shows the artwork says once that it does so roughly.
func TestRoughColoursAreToldOf(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "job")
	for _, words := range [][]string{
		{"make", jobtest.WriteStripes(t, tablesProfile(), [3]uint8{200, 120, 100}), "--pixels", "120x80",
			"--max-sheets", "1", "--out", folder},
		{"proof", folder},
		{"seams", folder},
	} {
		_, stderr, code := dropsheet(t, words...)
		require.Equal(t, exitDone, code, stderr)
		require.Equal(t, 1, strings.Count(stderr, "warning: "+roughly+"\n"), stderr)
		require.Equal(t, 1, strings.Count(stderr, "colour profile"), stderr)
	}
}
