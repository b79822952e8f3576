package artwork

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

// inkPatches are amounts of cyan, magenta, yellow and black, 255 being all of it, and the colours that they
// stand for: each ink takes its share of red, green or blue, black of all three (255 - C)(255 - K)/255,
// worked out by hand.
var inkPatches = []struct {
	name string
	inks [4]uint8
	want color.RGBA
}{
	{"paper", [4]uint8{0, 0, 0, 0}, color.RGBA{255, 255, 255, 255}},
	{"cyan", [4]uint8{255, 0, 0, 0}, color.RGBA{0, 255, 255, 255}},
	{"magenta", [4]uint8{0, 255, 0, 0}, color.RGBA{255, 0, 255, 255}},
	{"yellow", [4]uint8{0, 0, 255, 0}, color.RGBA{255, 255, 0, 255}},
	{"black", [4]uint8{0, 0, 0, 255}, color.RGBA{0, 0, 0, 255}},
	{"red", [4]uint8{0, 255, 255, 0}, color.RGBA{255, 0, 0, 255}},
	{"green", [4]uint8{255, 0, 255, 0}, color.RGBA{0, 255, 0, 255}},
	{"blue", [4]uint8{255, 255, 0, 0}, color.RGBA{0, 0, 255, 255}},
	{"dusk", [4]uint8{153, 102, 51, 85}, color.RGBA{68, 102, 136, 255}},
	{"sand", [4]uint8{20, 60, 110, 0}, color.RGBA{235, 195, 145, 255}},
}

// inksJPEG stores the patches, each a column of 8 pixels: every component is a scan of its own, taken from a
// grey JPEG. stored gives a component's levels.
func inksJPEG(t *testing.T, adobe []byte, stored func(inks [4]uint8) [4]uint8) []byte {
	const side = 8
	planes := [4]*image.Gray{}
	for c := range planes {
		planes[c] = image.NewGray(image.Rect(0, 0, side*len(inkPatches), side))
		for i := range planes[c].Pix {
			planes[c].Pix[i] = stored(inkPatches[i%planes[c].Stride/side].inks)[c]
		}
	}
	out := slices.Concat([]byte{0xff, markSOI}, adobe)
	for c, plane := range planes {
		file := encodeJPEG(t, plane, 100)
		scan := file[bytes.Index(file, []byte{0xff, markSOS}) : len(file)-2] // up to the end of image
		scan = slices.Clone(scan)
		// after the marker, the length and the count: T.81, B.2.3; clauses in this file are recalled from memory
		const component = 5
		scan[component] = byte(c + 1)
		if c == 0 {
			walkJPEG(bytes.NewReader(file), func(marker byte, body []byte) bool {
				switch marker {
				case markSOF0:
					body = slices.Concat(body[:5], []byte{4, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0, 4, 0x11, 0}) // T.81, B.2.2
				case markSOS:
					return false
				}
				out = append(out, segment(marker, body)...)
				return true
			})
		}
		out = append(out, scan...)
	}
	return append(out, 0xff, markEOI)
}

// CMYK in JPEG files, however it is stored, becomes RGB of the right colours and is warned of. ImageMagick
// 6.9.11, shown these very files ("convert FILE -colorspace sRGB txt:-"), gives the same colours within a
// level.
func TestInksInJPEG(t *testing.T) {
	adobe := func(transform byte) []byte {
		return segment(markAPP14, []byte("Adobe\x00\x64\x00\x00\x00\x00"), []byte{transform})
	}
	inverted := func(inks [4]uint8) [4]uint8 { return [4]uint8{^inks[0], ^inks[1], ^inks[2], ^inks[3]} }
	// YCCK as libjpeg makes it of inverted CMYK: 255 less C, M and Y are R, G and B, so the inks themselves,
	// and K stays as stored (jccolor.c, cmyk_ycck_convert; from memory). R, G and B become Y, Cb and Cr by
	// ITU-T T.871, clause 7.
	ycck := func(inks [4]uint8) [4]uint8 {
		r, g, b := float64(inks[0]), float64(inks[1]), float64(inks[2])
		level := func(v float64) uint8 { return uint8(math.Round(min(max(v, 0), 255))) }
		return [4]uint8{level(0.299*r + 0.587*g + 0.114*b), level(128 - 0.168736*r - 0.331264*g + 0.5*b),
			level(128 + 0.5*r - 0.418688*g - 0.081312*b), ^inks[3]}
	}
	for _, c := range []struct {
		name      string
		file      []byte
		tolerance int // rounding Y, Cb and Cr costs a level or two of R, G and B
		warnings  []string
	}{
		{"Adobe, inverted", inksJPEG(t, adobe(0), inverted), 1, []string{warnCMYK}},
		{"Adobe, YCCK", inksJPEG(t, adobe(2), ycck), 2, []string{warnCMYK}},
		{"no marker", inksJPEG(t, nil, inverted), 1, []string{warnUnmarkedInks, warnCMYK}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := decode(c.file, Reading{Limits: Default})
			require.NoError(t, err)
			require.IsType(t, &image.RGBA{}, p.Image)
			require.Equal(t, c.warnings, p.Warnings)
			for i, patch := range inkPatches {
				requireNear(t, patch.want, p.Image.(*image.RGBA).RGBAAt(8*i+4, 4), c.tolerance, patch.name)
			}
		})
	}
}

// Inks go by their own profile, in JPEG and in TIFF. Paper, cyan and so on of this press are as Little CMS 2.14 has
// them ("transicc -t1 -b -n -s -i PRESS.icc -o '*sRGB'"), in levels of sRGB.
func TestInksByTheirProfile(t *testing.T) {
	want := map[string]color.RGBA{
		"paper": {242, 243, 247, 255}, "cyan": {0, 152, 217, 255}, "magenta": {217, 0, 124, 255},
		"yellow": {245, 224, 0, 255}, "black": {31, 27, 26, 255}, "red": {216, 15, 24, 255},
	}
	file := inksJPEG(t, segment(markAPP14, []byte("Adobe\x00\x64\x00\x00\x00\x00"), []byte{0}),
		func(inks [4]uint8) [4]uint8 { return [4]uint8{^inks[0], ^inks[1], ^inks[2], ^inks[3]} })
	inJPEG := withSegments(file, iccSegment(1, 1, icctest.Press()))
	var flat []byte
	for _, patch := range inkPatches {
		flat = append(flat, patch.inks[:]...)
	}
	order := binary.LittleEndian
	inTIFF := tiffFile(order, len(inkPatches), 1, flat, []uint16{8, 8, 8, 8}, photometricInks,
		field{tagICC, 7, len(icctest.Press()), icctest.Press()})
	for _, c := range []struct {
		name  string
		data  []byte
		patch func(m image.Image, i int) color.RGBA
	}{
		{"jpeg", inJPEG, func(m image.Image, i int) color.RGBA { return m.(*image.RGBA).RGBAAt(8*i+4, 4) }},
		{"tiff", inTIFF, func(m image.Image, i int) color.RGBA { return m.(*image.RGBA).RGBAAt(i, 0) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := decode(c.data, Reading{Limits: Default})
			require.NoError(t, err)
			require.Empty(t, p.Warnings)
			require.True(t, p.InksByProfile)
			require.Nil(t, p.ICC, "the profile is of inks, which are gone")
			seen := 0
			for i, patch := range inkPatches {
				if colour, ok := want[patch.name]; ok {
					requireNear(t, colour, c.patch(p.Image, i), 2, patch.name)
					seen++
				}
			}
			require.Equal(t, len(want), seen)

			plain, err := decode(c.data, Reading{Limits: Default, PlainInks: true})
			require.NoError(t, err)
			require.Equal(t, []string{warnPlainInks}, plain.Warnings)
			require.False(t, plain.InksByProfile)
			for i, patch := range inkPatches {
				requireNear(t, patch.want, c.patch(plain.Image, i), 1, patch.name)
			}
		})
	}
	p, err := decode(withSegments(file, iccSegment(1, 1, testProfile("CMYK", "prtr"))),
		Reading{Limits: Default})
	require.NoError(t, err)
	require.Equal(t, []string{fmt.Sprintf(warnInksProfile, "it has no table (A2B0)")}, p.Warnings)
	require.False(t, p.InksByProfile)
	require.Nil(t, p.ICC)
}
