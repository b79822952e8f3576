package artwork

import (
	"bytes"
	"compress/lzw"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"
	"image/color"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"
)

// TestTIFFByRow holds what is read by the row against the library's own reading of the same file, level by level: both
// byte orders, every kind of colour of 8 and 16 bits, as it is, deflated and by LZW, with and without the predictor,
// in one strip and in some of which the last is short.
func TestTIFFByRow(t *testing.T) {
	const extraStraight, extraPremultiplied = 2, 1 // TIFF 6.0, section 18, from memory
	for _, order := range []byteOrder{binary.LittleEndian, binary.BigEndian} {
		for _, kind := range []struct {
			name               string
			samples            int
			photometric, extra uint16
		}{
			{"grey", 1, photometricBlackIsZero, 0}, {"grey, 0 is white", 1, photometricWhiteIsZero, 0},
			{"colour", 3, photometricColour, 0}, {"straight", 4, photometricColour, extraStraight},
			{"premultiplied", 4, photometricColour, extraPremultiplied},
		} {
			for _, compression := range []uint16{1, 5, 8} {
				for _, perStrip := range []int{2, 5} {
					for _, predictor := range []uint16{predictorNone, predictorAcross} {
						more := []field{shorts(order, tagPredictor, predictor)}
						if kind.extra != 0 {
							more = append(more, shorts(order, 338, kind.extra))
						}
						name := fmt.Sprint(order, kind.name, compression, perStrip, predictor)
						for _, bits := range []uint16{8, 16} {
							data := noiseTIFF(t, order, bits, kind.samples, compression, perStrip, kind.photometric, more...)
							requireTIFFAsLibrary(t, fmt.Sprint(bits, name), data, bits)
						}
					}
				}
			}
		}
	}
}

// noiseTIFF is noise, 7 pixels by 5; of so few bytes a strip that the two ways to widen LZW's codes
// (TIFF's and the others') don't differ.
func noiseTIFF(t *testing.T, order byteOrder, bits uint16, samples int, compression uint16, perStrip int,
	photometric uint16, more ...field) []byte {
	const w, h = 7, 5
	random := rand.New(rand.NewPCG(uint64(samples), uint64(perStrip)))
	var stored []byte
	var offsets, counts []uint32
	for y := 0; y < h; y += perStrip {
		strip := make([]byte, int(bits)/8*w*samples*min(perStrip, h-y))
		for i := range strip {
			strip[i] = uint8(random.Uint32())
		}
		for i := 0; samples == 4 && i+8 <= len(strip); i += 16 { // opaque here and there, where no predictor is
			strip[i+6], strip[i+7] = 0xff, 0xff
		}
		packed := packedStrip(t, strip, compression)
		offsets, counts = append(offsets, uint32(8+len(stored))), append(counts, uint32(len(packed)))
		stored = append(stored, packed...)
	}
	return directoryFile(order, stored, append([]field{
		longs(order, tagWidth, w), longs(order, tagHeight, h),
		shorts(order, tagBitsPerSample, slices.Repeat([]uint16{bits}, samples)...),
		shorts(order, tagCompression, compression), shorts(order, tagPhotometric, photometric),
		longs(order, tagStripOffsets, offsets...), shorts(order, tagSamplesPerPixel, uint16(samples)),
		longs(order, tagRowsPerStrip, uint32(perStrip)), longs(order, tagStripByteCounts, counts...),
	}, more...)...)
}

func packedStrip(t *testing.T, strip []byte, compression uint16) []byte {
	var packed bytes.Buffer
	switch compression {
	case 5:
		z := lzw.NewWriter(&packed, lzw.MSB, 8)
		_, err := z.Write(strip)
		require.NoError(t, errors.Join(err, z.Close()))
	case 8:
		z := zlib.NewWriter(&packed)
		_, err := z.Write(strip)
		require.NoError(t, errors.Join(err, z.Close()))
	default:
		return strip
	}
	return packed.Bytes()
}

func requireTIFFAsLibrary(t *testing.T, name string, data []byte, bits uint16) {
	t.Helper()
	for _, under := range []ground{{Reading{}.under(), true}, {color.RGBA{32, 48, 64, 255}, false}} {
		ours, err := decodeTIFF(data, under)
		require.NoError(t, err, name)
		_, deep := ours.(laid)
		require.Equal(t, bits == 16, deep, name)
		theirs, err := tiff.Decode(bytes.NewReader(data)) // anew, since compact spends it
		require.NoError(t, err, name)
		want, wantClear, err := compact(theirs, false, under, nil)
		require.NoError(t, err, name)
		got, gotClear, err := compact(ours, false, under, nil)
		require.NoError(t, err, name)
		require.Equal(t, want, got, name)
		require.Equal(t, wantClear, gotClear, name)
	}
}

// TestTIFFByRowCutShort: strips that lie outside the file, hold too little or are missing are errors.
func TestTIFFByRowCutShort(t *testing.T) {
	le := binary.LittleEndian
	row := make([]byte, 12*2)
	for name, strips := range map[string][]field{
		"outside":  {longs(le, tagStripOffsets, 8, 1<<31), longs(le, tagStripByteCounts, 12, 12)},
		"too long": {longs(le, tagStripOffsets, 8, 20), longs(le, tagStripByteCounts, 12, 1<<31)},
		"short":    {longs(le, tagStripOffsets, 8, 20), longs(le, tagStripByteCounts, 12, 11)},
		"missing":  {longs(le, tagStripOffsets, 8), longs(le, tagStripByteCounts, 12)},
	} {
		data := directoryFile(le, row, append([]field{longs(le, tagWidth, 2), longs(le, tagHeight, 2),
			shorts(le, tagBitsPerSample, 16, 16, 16), shorts(le, tagCompression, 1),
			shorts(le, tagPhotometric, photometricColour), shorts(le, tagSamplesPerPixel, 3),
			longs(le, tagRowsPerStrip, 1)}, strips...)...)
		_, err := decodeTIFF(data, Reading{}.ground())
		require.Error(t, err, name)
	}
}
