package artwork

import (
	"encoding/binary"
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

func greyPicture() *image.Gray { return image.NewGray(image.Rect(0, 0, 8, 8)) }

func iccSegment(number, of byte, chunk []byte) []byte {
	return segment(0xe2, []byte(iccSignature), []byte{number, of}, chunk)
}

// TestICC: a profile that suits the picture is carried byte for byte; any other is dropped with a word why.
func TestICC(t *testing.T) {
	rgb, grey, cmyk := testProfile("RGB ", "mntr"), testProfile("GRAY", "scnr"), testProfile("CMYK", "prtr")
	third := len(rgb) / 3
	a, b, c := rgb[:third], rgb[third:2*third], rgb[2*third:]
	jpegFile := encodeJPEG(t, patchPicture(), 80)
	le, be := binary.LittleEndian, binary.BigEndian
	tiffICC := func(profile []byte) field { return field{tagICC, 7, len(profile), profile} }
	webpFile := fixture(t, "patches-lossless.webp")
	cases := []struct {
		name string
		data []byte
		want []byte
		warn string
	}{
		{"none", jpegFile, nil, ""},
		{"jpeg", withSegments(jpegFile, iccSegment(1, 1, rgb)), rgb, ""},
		{"jpeg in three", withSegments(jpegFile, iccSegment(1, 3, a), iccSegment(2, 3, b), iccSegment(3, 3, c)), rgb, ""},
		{"jpeg in three, out of order", withSegments(jpegFile, iccSegment(3, 3, c), segment(0xfe, []byte("hello")),
			iccSegment(1, 3, a), iccSegment(2, 3, b)), rgb, ""},
		{"jpeg, a chunk missing", withSegments(jpegFile, iccSegment(1, 3, a), iccSegment(3, 3, c)), nil,
			"chunk 2 of 3 is missing"},
		{"jpeg, a chunk twice", withSegments(jpegFile, iccSegment(1, 2, a), iccSegment(1, 2, a)), nil,
			"chunk 1 of it is there twice"},
		{"jpeg, counts differ", withSegments(jpegFile, iccSegment(1, 2, a), iccSegment(2, 3, b)), nil, "disagree how many"},
		{"jpeg, chunk 0", withSegments(jpegFile, iccSegment(0, 1, rgb)), nil, "number 0 of 1"},
		{"jpeg, chunk 5 of 4", withSegments(jpegFile, iccSegment(5, 4, rgb)), nil, "number 5 of 4"},
		{"jpeg, chunk without a number", withSegments(jpegFile, segment(0xe2, []byte(iccSignature), []byte{1})), nil,
			"cut short"},
		{"jpeg grey", withSegments(encodeJPEG(t, greyPicture(), 80), iccSegment(1, 1, grey)), grey, ""},
		{"jpeg grey with rgb profile", withSegments(encodeJPEG(t, greyPicture(), 80), iccSegment(1, 1, rgb)), nil,
			`it is for "RGB " and the picture is "GRAY"`},
		{"jpeg with grey profile", withSegments(jpegFile, iccSegment(1, 1, grey)), nil,
			`it is for "GRAY" and the picture is "RGB "`},
		{"jpeg with cmyk profile", withSegments(jpegFile, iccSegment(1, 1, cmyk)), nil, `it is for "CMYK"`},
		{"png", withChunk(encodePNG(t, patchPicture()), "iCCP", iccpBody(rgb)), rgb, ""},
		{"png palette", withChunk(encodePNG(t, paletted(0, 0)), "iCCP", iccpBody(rgb)), rgb, ""},
		{"png grey", withChunk(encodePNG(t, greyPicture()), "iCCP", iccpBody(grey)), grey, ""},
		{"png grey with rgb profile", withChunk(encodePNG(t, greyPicture()), "iCCP", iccpBody(rgb)), nil, `it is for "RGB "`},
		{"png, not zlib", withChunk(encodePNG(t, patchPicture()), "iCCP", []byte("a profile\x00\x00nonsense")), nil,
			"can't be unpacked"},
		{"png, zlib cut short", withChunk(encodePNG(t, patchPicture()), "iCCP", iccpBody(rgb)[:40]), nil,
			"can't be unpacked"},
		{"png, no name", withChunk(encodePNG(t, patchPicture()), "iCCP", []byte("nonsense")), nil, "doesn't say how"},
		{"png, inflates to 64 MB", withChunk(encodePNG(t, patchPicture()), "iCCP", iccpBody(make([]byte, 64<<20))), nil,
			"more than 16777216 bytes"},
		{"tiff II", rgbTIFF(le, patchPicture(), tiffICC(rgb)), rgb, ""},
		{"tiff MM", rgbTIFF(be, patchPicture(), tiffICC(rgb)), rgb, ""},
		{"tiff grey", tiffFile(le, 1, 1, []byte{1}, []uint16{8}, 1, tiffICC(grey)), grey, ""},
		{"tiff, profile outside the file", rgbTIFF(le, patchPicture(), field{tagICC, 7, 1 << 30, rgb}), nil,
			"outside the file"},
		{"tiff, empty profile", rgbTIFF(le, patchPicture(), field{tagICC, 7, 0, nil}), nil, "only 0 bytes"},
		{"webp", withRIFF(webpFile, riffChunk("ICCP", rgb)), rgb, ""},
		{"webp, lying", withRIFF(webpFile, riffChunk("ICCP", rgb[:140])), nil, "says that it has 152 bytes and has 140"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p, err := decode(c.data, Reading{Limits: Default})
			require.NoError(t, err)
			require.Equal(t, c.want, p.ICC)
			if c.warn == "" {
				require.Empty(t, p.Warnings)
				return
			}
			require.Len(t, p.Warnings, 1)
			require.Contains(t, p.Warnings[0], "colour profile dropped: ")
			require.Contains(t, p.Warnings[0], c.warn)
		})
	}
}

// A picture without a profile has sRGB's colours; with one it is asked as grey or RGB by its samples.
func TestOwnSpace(t *testing.T) {
	rgb, grey := icctest.AdobeRGB.Profile(), icctest.Grey(icctest.Gamma(461))
	for _, c := range []struct {
		name string
		of   Picture
		own  bool
		err  string
	}{
		{"rgb without", Picture{Image: image.NewRGBA(image.Rect(0, 0, 1, 1))}, false, ""},
		{"rgb", Picture{Image: image.NewRGBA(image.Rect(0, 0, 1, 1)), ICC: rgb}, true, ""},
		{"planes", Picture{Image: image.NewYCbCr(image.Rect(0, 0, 1, 1), image.YCbCrSubsampleRatio420), ICC: rgb}, true, ""},
		{"grey", Picture{Image: greyPicture(), ICC: grey}, true, ""},
		{"grey with rgb's", Picture{Image: greyPicture(), ICC: rgb}, false, `it is for "RGB " and the picture is "GRAY"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			space, err := c.of.OwnSpace()
			require.Equal(t, c.own, space != nil)
			if c.err != "" {
				require.EqualError(t, err, c.err)
				return
			}
			require.NoError(t, err)
		})
	}
}
