package sheet

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
)

// A sky of 16 bits whose colours rise by a level over 13 mm of paper: averaged over 1.2 mm, which is as fine as an eye
// tells so little, the sheet follows it to a sixteenth of a level, where rounding stands still and then steps by a
// whole one. A level of middling grey is 1.9 % of its light, and less than half a per cent is not seen (contrast
// thresholds, from memory).
func TestSlowRampShowsNoStep(t *testing.T) {
	const perMM, levelMM, wide, high, window = 171 / units.MMPerInch, 13.0, 352, 64, 8
	ideal := func(x float64) [3]float64 {
		rise := x / perMM / levelMM
		return [3]float64{100 + rise, 140 + 0.7*rise, 180 + 0.4*rise}
	}
	deep := image.NewRGBA64(image.Rect(0, 0, wide, high))
	for y := range high {
		for x := range wide {
			c := ideal(float64(x))
			deep.SetRGBA64(x, y, color.RGBA64{R: uint16(math.Round(257 * c[0])), G: uint16(math.Round(257 * c[1])),
				B: uint16(math.Round(257 * c[2])), A: 65535})
		}
	}
	var file bytes.Buffer
	require.NoError(t, png.Encode(&file, deep))
	path := filepath.Join(t.TempDir(), "sky.png")
	require.NoError(t, os.WriteFile(path, file.Bytes(), 0o600))

	within := artwork.Limits{Pixels: 1 << 22, Bytes: artwork.DefaultMaxBytes}
	// furthest is how far a channel's means are off the ramp at most, in levels.
	furthest := func(rounded, asJPEG bool) (most float64) {
		art, err := artwork.OpenCopy(path, path, artwork.Reading{Limits: within, Rounded: rounded})
		require.NoError(t, err)
		require.Equal(t, !rounded, art.Dithered)
		grid := raster.NewGrid(layout.Rect{WidthMM: wide / perMM, HeightMM: high / perMM}, wide, high, units.PerInch(300))
		require.Equal(t, wide, grid.WidthPx)
		source := raster.NewSource(art, art.Upright, grid, image.YCbCrSubsampleRatio420)
		shown := source.Cut(image.Rect(0, 0, wide, high)) // which a lossless sheet stores pixel for pixel
		if asJPEG {
			made, err := pdf.EncodeJPEG(source.CutYCbCr(shown.Bounds()), jpegQuality, source.Chroma())
			require.NoError(t, err)
			shown, err = jpeg.Decode(bytes.NewReader(made.Data))
			require.NoError(t, err)
		}
		for from := 16; from+window <= wide-16; from += window {
			var mean [3]float64
			for i := range window * high {
				r, g, b, _ := shown.At(from+i%window, i/window).RGBA()
				for k, v := range [3]uint32{r, g, b} {
					mean[k] += float64(v>>8) / (window * high)
				}
			}
			for k, want := range ideal(float64(from) + (window-1)/2.0) {
				most = max(most, math.Abs(mean[k]-want))
			}
		}
		return most
	}
	dithered, rounded, smoothed := furthest(false, false), furthest(true, false), furthest(false, true)
	t.Logf("dithered %.3f levels off, rounded %.3f, dithered and then a JPEG %.3f", dithered, rounded, smoothed)
	require.Less(t, dithered, 1.0/16)
	require.Greater(t, rounded, 0.4)
	require.Greater(t, smoothed, 0.4, "why such sheets are lossless")
}
