package main

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"
)

// writeStripes writes a PNG of upright stripes of these colours, grey when all are, with a profile if there is one.
func writeStripes(t *testing.T, profile []byte, colours ...[3]uint8) (path string) {
	t.Helper()
	const wide, high = 20, 40
	m, grey := image.NewRGBA(image.Rect(0, 0, wide*len(colours), high)), true
	for x := range m.Rect.Dx() {
		c := colours[x/wide]
		grey = grey && c[0] == c[1] && c[1] == c[2]
		for y := range high {
			m.SetRGBA(x, y, color.RGBA{c[0], c[1], c[2], 255})
		}
	}
	var stored image.Image = m
	if grey {
		g := image.NewGray(m.Rect)
		for i := range g.Pix {
			g.Pix[i] = m.Pix[4*i]
		}
		stored = g
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, stored))
	data := b.Bytes()
	if profile != nil {
		data = withProfile(t, data, profile)
	}
	path = filepath.Join(t.TempDir(), "stripes.png")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

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
	small := []string{"--pixels", "300x200"}
	tagged := mustMake(t, writeStripes(t, icctest.AdobeRGB.Profile(), adobe...), small...)
	same := mustMake(t, writeStripes(t, nil, asSRGB...), small...)
	untagged := mustMake(t, writeStripes(t, nil, adobe...), small...)
	a, b, other := readFolder(t, tagged), readFolder(t, same), readFolder(t, untagged)
	for _, name := range []string{"proof.png", "seams.png"} {
		require.LessOrEqual(t, worstLevel(t, a[name], b[name]), 2.0, name)
	}
	require.Greater(t, worstLevel(t, a["proof.png"], other["proof.png"]), 10.0)
	require.True(t, bytes.Contains(inflated(a["sheets.pdf"]), icctest.AdobeRGB.Profile()), "the sheets have it as it is")
}

const roughly = "the artwork's colour profile goes into the sheets, but the pictures on screen show its colours " +
	"only roughly, its levels taken for sRGB's: " +
	"it goes by tables (A2B0), and only a matrix with curves is followed"

// tablesProfile is one that can't be followed.
func tablesProfile() []byte {
	return icctest.Profile("RGB ", 2, icctest.Tag{Name: "A2B0", Data: make([]byte, 40)})
}

// Every command that shows the artwork says once that it does so roughly.
func TestRoughColoursAreToldOf(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "job")
	for _, words := range [][]string{
		{"make", writeStripes(t, tablesProfile(), [3]uint8{200, 120, 100}), "--pixels", "300x200", "--out", folder},
		{"proof", folder},
		{"seams", folder},
	} {
		_, stderr, code := dropsheet(t, words...)
		require.Equal(t, exitDone, code, stderr)
		require.Equal(t, 1, strings.Count(stderr, "warning: "+roughly+"\n"), stderr)
		require.Equal(t, 1, strings.Count(stderr, "colour profile"), stderr)
	}
}

// Where a profile can't be followed, or the sheets leave it out, the levels are sRGB's.
func TestColoursOnScreenThatAreOnlyRough(t *testing.T) {
	colours, greys := [3]uint8{200, 120, 100}, [3]uint8{200, 200, 200}
	fifth := icctest.AdobeRGB.Profile()
	fifth[8] = 5
	grey := icctest.Grey(icctest.Gamma(461))
	for _, c := range []struct {
		name     string
		profile  []byte
		colour   [3]uint8
		surround layout.Surround
		want     []string // warnings
		same     bool     // as without a profile
		dropped  string   // why the profile is not even read, if it is not
	}{
		{"none", nil, colours, "", nil, true, ""},
		{"sRGB", icctest.SRGB.Profile(), colours, "", nil, true, ""},
		{"Adobe RGB", icctest.AdobeRGB.Profile(), colours, "", nil, false, ""},
		{"tables", tablesProfile(), colours, "", []string{roughly}, true, ""},
		{"a version that the sheets don't take", fifth, colours, "", nil, true,
			"colour profile dropped: it is of version 5, and only 2 and 4 can go into a PDF; the colours are taken as srgb"},
		{"grey", grey, greys, "", nil, false, ""},
		{"grey in a grey surround", grey, greys, "#202020", nil, false, ""},
		{"grey in a coloured surround", grey, greys, "#203040", nil, true, ""},
		{"grey, its edge stretched", grey, greys, layout.Stretch, nil, false, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			art, err := artwork.Open(writeStripes(t, c.profile, c.colour), artwork.DefaultMaxPixels)
			require.NoError(t, err)
			if c.dropped != "" {
				require.Nil(t, art.ICC)
				require.Equal(t, []string{c.dropped}, art.Warnings)
			} else {
				require.Equal(t, c.profile, art.ICC)
				require.Empty(t, art.Warnings)
			}
			picture, warnings := onScreen(art, c.surround)
			require.Equal(t, c.want, warnings)
			got := picture.Reduced(4).RGBAAt(0, 0)
			require.Equal(t, c.same, got == color.RGBA{c.colour[0], c.colour[1], c.colour[2], 255}, "%v", got)
		})
	}
}
