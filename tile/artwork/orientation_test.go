package artwork

import (
	"encoding/binary"
	"fmt"
	"image"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// sides says where the stored row 0 and column 0 lie on the upright picture: TIFF 6.0, page 36, recalled from memory.
var sides = map[uint16][2]string{
	1: {"top", "left"}, 2: {"top", "right"}, 3: {"bottom", "right"}, 4: {"bottom", "left"},
	5: {"left", "top"}, 6: {"right", "top"}, 7: {"right", "bottom"}, 8: {"left", "bottom"},
}

// storedAs lays an upright picture down as a camera does that writes the orientation.
func storedAs(m *image.RGBA, orientation uint16) *image.RGBA {
	w, h := m.Rect.Dx(), m.Rect.Dy()
	fromSide := func(side string, x, y int) int { // how many pixels (x, y) is from a side
		return map[string]int{"left": x, "right": w - 1 - x, "top": y, "bottom": h - 1 - y}[side]
	}
	row0, column0 := sides[orientation][0], sides[orientation][1]
	stored := image.NewRGBA(m.Rect)
	if row0 == "left" || row0 == "right" {
		stored = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range h {
		for x := range w {
			stored.SetRGBA(fromSide(column0, x, y), fromSide(row0, x, y), m.RGBAAt(x, y))
		}
	}
	return stored
}

// TestOrientation stores one picture in all eight ways: every one must come out as the same upright picture.
func TestOrientation(t *testing.T) {
	want := patchPicture()
	app1 := func(order byteOrder, o uint16) []byte {
		return segment(0xe1, []byte(exifSignature), exifBlock(order, o))
	}
	xmp := segment(0xe1, []byte("http://ns.adobe.com/xap/1.0/\x00<x/>"))
	writers := []struct {
		name string
		// Whole 16 x 16 patches are flat in every JPEG block, so that quality 100 leaves the rounding of the two colour
		// conversions alone: 2 levels. The others are exact.
		tolerance int
		write     func(m *image.RGBA, o uint16) []byte
	}{
		{"jpeg", 2, func(m *image.RGBA, o uint16) []byte {
			return withSegments(encodeJPEG(t, m, 100), app1(binary.BigEndian, o))
		}},
		{"jpeg little-endian, xmp first", 2, func(m *image.RGBA, o uint16) []byte {
			return withSegments(encodeJPEG(t, m, 100), xmp, app1(binary.LittleEndian, o))
		}},
		{"tiff II", 0, func(m *image.RGBA, o uint16) []byte {
			return rgbTIFF(binary.LittleEndian, m, shorts(binary.LittleEndian, tagOrientation, o))
		}},
		{"tiff MM", 0, func(m *image.RGBA, o uint16) []byte {
			return rgbTIFF(binary.BigEndian, m, shorts(binary.BigEndian, tagOrientation, o))
		}},
		{"png", 0, func(m *image.RGBA, o uint16) []byte {
			return withChunk(encodePNG(t, m), "eXIf", exifBlock(binary.BigEndian, o))
		}},
	}
	for _, w := range writers {
		for o := uint16(1); o <= 8; o++ {
			t.Run(fmt.Sprintf("%s/%d", w.name, o), func(t *testing.T) {
				data := w.write(storedAs(want, o), o)
				p, err := decode(data, Reading{Limits: Default})
				require.NoError(t, err)
				width, height := p.Size()
				require.Equal(t, want.Rect.Max, image.Pt(width, height))
				for y := range height {
					for x := range width {
						requireNear(t, want.RGBAAt(x, y), upright(p, x, y), w.tolerance, "pixel (%d, %d)", x, y)
					}
				}
				width, height, err = ReadSize(saved(t, data), Default)
				require.NoError(t, err)
				require.Equal(t, want.Rect.Max, image.Pt(width, height), "read from the header")
			})
		}
	}
}

// TestOrientationWebP gives one stored picture every orientation, for there is no WebP encoder: laying the
// upright picture down again as the tag says must give the stored one back.
func TestOrientationWebP(t *testing.T) {
	file := fixture(t, "patches-lossless.webp")
	file = dropChunk(t, file, "EXIF")
	for o := uint16(1); o <= 8; o++ {
		for _, prefix := range []string{"", exifSignature} {
			block := append([]byte(prefix), exifBlock(binary.LittleEndian, o)...)
			p, err := decode(withRIFF(file, riffChunk("EXIF", block)), Reading{Limits: Default})
			require.NoError(t, err)
			w, h := p.Size()
			m := image.NewRGBA(image.Rect(0, 0, w, h))
			for y := range h {
				for x := range w {
					m.SetRGBA(x, y, upright(p, x, y))
				}
			}
			require.Equal(t, patchPicture().Pix, storedAs(m, o).Pix, "orientation %d", o)
		}
	}
}

// dropChunk takes a chunk out of a WebP file.
func dropChunk(t *testing.T, file []byte, name string) []byte {
	for at := 12; at+8 <= len(file); {
		n := int(binary.LittleEndian.Uint32(file[at+4:]))
		next := at + 8 + n + n%2
		if string(file[at:at+4]) == name {
			return withRIFF(slices.Concat(file[:at], file[next:]))
		}
		at = next
	}
	require.Failf(t, "no chunk", "%s", name)
	return nil
}

// TestOrientationDamaged: a picture whose orientation can't be read is laid as it is stored.
func TestOrientationDamaged(t *testing.T) {
	good := exifBlock(binary.BigEndian, 6)
	outside := slices.Clone(good)
	binary.BigEndian.PutUint32(outside[4:], 1<<31)
	cases := map[string][]byte{
		"reserved value 0":      exifBlock(binary.BigEndian, 0),
		"reserved value 9":      exifBlock(binary.BigEndian, 9),
		"no directory":          good[:8],
		"half a directory":      good[:14],
		"directory far outside": outside,
		"no header":             []byte("nothing to see"),
		"empty":                 {},
		"text, not a number":    directoryFile(binary.BigEndian, nil, field{tagOrientation, 2, 2, []byte("6\x00")}),
		"no value":              directoryFile(binary.BigEndian, nil, field{tagOrientation, 3, 0, nil}),
		"unknown kind":          directoryFile(binary.BigEndian, nil, field{tagOrientation, 99, 1, []byte{0, 6}}),
	}
	for name, block := range cases {
		t.Run(name, func(t *testing.T) {
			p, err := decode(withSegments(encodeJPEG(t, patchPicture(), 80), segment(0xe1, []byte(exifSignature), block)),
				Reading{Limits: Default})
			require.NoError(t, err)
			require.Equal(t, uprights[1], p.Upright)
		})
	}
	long := directoryFile(binary.BigEndian, nil, longs(binary.BigEndian, tagOrientation, 6))
	p, err := decode(withChunk(encodePNG(t, patchPicture()), "eXIf", long), Reading{Limits: Default})
	require.NoError(t, err)
	require.Equal(t, uprights[6], p.Upright, "some writers use a long where the standard has a short")
}
