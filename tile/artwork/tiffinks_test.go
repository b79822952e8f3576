package artwork

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"
)

// CMYK in TIFF files: 0 is no ink and 255 all of it (TIFF 6.0, section 16, from memory), turned into RGB as
// image/color does, and warned of.
func TestInksInTIFF(t *testing.T) {
	// paper, cyan, magenta; yellow, black, a mixture
	plain := []byte{0, 0, 0, 0, 255, 0, 0, 0, 0, 255, 0, 0, 0, 0, 255, 0, 0, 0, 0, 255, 10, 20, 30, 40}
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	_, err := z.Write(plain)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	across := append([]byte{}, plain...)
	for row := range 2 {
		for i := 11; i >= 4; i-- {
			across[12*row+i] -= across[12*row+i-4]
		}
	}
	inks := []uint16{8, 8, 8, 8}
	for _, order := range []byteOrder{binary.LittleEndian, binary.BigEndian} {
		deflated := tiffFile(order, 3, 2, packed.Bytes(), inks, photometricInks)
		// The builder writes compression 1: its field is found by tag, kind and count.
		field := order.AppendUint32(order.AppendUint16(order.AppendUint16(nil, tagCompression), 3), 1)
		at := bytes.LastIndex(deflated, field)
		require.Positive(t, at)
		order.PutUint16(deflated[at+len(field):], 8)
		for name, file := range map[string][]byte{
			"uncompressed": tiffFile(order, 3, 2, plain, inks, photometricInks),
			"differences":  tiffFile(order, 3, 2, across, inks, photometricInks, shorts(order, tagPredictor, predictorAcross)),
			"deflate":      deflated,
		} {
			t.Run(name, func(t *testing.T) {
				p, err := decode(file, Reading{Limits: Default})
				require.NoError(t, err)
				require.Equal(t, []string{warnCMYK}, p.Warnings)
				for i := range 6 {
					r, g, b := color.CMYKToRGB(plain[4*i], plain[4*i+1], plain[4*i+2], plain[4*i+3])
					require.Equal(t, color.RGBA{r, g, b, 255}, color.RGBAModel.Convert(p.Image.At(i%3, i/3)), "pixel %d", i)
				}
				for n := range len(file) - 4 { // the last four bytes only say that no other picture follows
					_, err := decode(file[:n], Reading{Limits: Default})
					require.Error(t, err, "cut at %d of %d", n, len(file))
				}
			})
		}
	}
	_, err = decode(tiffFile(binary.LittleEndian, 1, 1, make([]byte, 5), []uint16{8, 8, 8, 8, 8}, photometricInks),
		Reading{Limits: Default})
	require.ErrorContains(t, err, "without alpha")
}
