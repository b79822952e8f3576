package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
)

// ditheredRamp is a grey or coloured picture that rises by a level over 120 pixels, dithered as it was read.
func ditheredRamp(wide, high int, coloured bool) *artwork.Picture {
	level := func(x, y int) uint8 {
		v := 100 + float64(x)/120
		return uint8(v + (float64(artwork.DitherRank(x, y))+0.5)/artwork.DitherRanks)
	}
	if coloured {
		m := image.NewRGBA(image.Rect(0, 0, wide, high))
		for i := range wide * high {
			v := level(i%wide, i/wide)
			m.SetRGBA(i%wide, i/wide, color.RGBA{v, v, 255 - v, 255})
		}
		return &artwork.Picture{Image: m, Dithered: true}
	}
	m := image.NewGray(image.Rect(0, 0, wide, high))
	for i := range wide * high {
		m.SetGray(i%wide, i/wide, color.Gray{level(i%wide, i/wide)})
	}
	return &artwork.Picture{Image: m, Dithered: true}
}

// A dithered artwork that is printed coarser stays a ramp: the mean of a square of eight pixels follows it to a twelfth
// of a level, where rounding is off by more than a quarter. Pieces agree to the last level where they overlap,
// whichever way the picture hangs; levels that need no rounding stay as they are, opacity too.
func TestFinerDitheredArtworkStaysARamp(t *testing.T) {
	const wide, high, coarse = 800, 100, 2.5
	grid := Grid{WidthPx: wide / coarse, HeightPx: high / coarse}
	for _, turn := range []flip.Turn{{}, {ReverseX: true, ReverseY: true}, {SwapXY: true}} {
		for _, coloured := range []bool{false, true} {
			p := ditheredRamp(wide, high, coloured)
			g := grid
			if turn.SwapXY {
				g.WidthPx, g.HeightPx = g.HeightPx, g.WidthPx
			}
			furthest := func(p *artwork.Picture) (most float64) {
				shown := NewSource(p, turn, g, image.YCbCrSubsampleRatio444).Cut(image.Rect(0, 0, g.WidthPx, g.HeightPx))
				for at := 16; at+8 <= int(wide/coarse)-16; at += 8 {
					mean := 0.0
					for i := range 64 {
						x, y := at+i%8, 16+i/8
						if turn.SwapXY {
							x, y = y, x
						}
						r, _, _, a := shown.At(x, y).RGBA()
						require.Equal(t, uint32(0xffff), a)
						mean += float64(r>>8) / 64
					}
					x := (float64(at)+4)*coarse - 0.5
					if turn.ReverseX {
						x = wide - 1 - x
					}
					most = max(most, math.Abs(mean-100-x/120))
				}
				return most
			}
			rounded := *p
			rounded.Dithered = false
			require.Less(t, furthest(p), 1.0/12, "%v", turn)
			require.Greater(t, furthest(&rounded), 0.25)

			s := NewSource(p, turn, g, image.YCbCrSubsampleRatio444)
			whole := s.Cut(image.Rect(0, 0, g.WidthPx, g.HeightPx))
			part := image.Rect(5, 3, min(g.WidthPx, 61), min(g.HeightPx, 33))
			piece := s.Cut(part)
			for i := range part.Dx() * part.Dy() {
				x, y := i%part.Dx(), i/part.Dx()
				require.Equal(t, whole.At(x+part.Min.X, y+part.Min.Y), piece.At(x, y), "%d, %d", x, y)
			}
		}
	}
	flat := image.NewGray(image.Rect(0, 0, 100, 60))
	for i := range flat.Pix {
		flat.Pix[i] = 137
	}
	g := Grid{WidthPx: 40, HeightPx: 24}
	cut := NewSource(&artwork.Picture{Image: flat, Dithered: true}, flip.Turn{}, g, image.YCbCrSubsampleRatio444).
		Cut(image.Rect(-4, -4, 44, 28))
	for _, v := range cut.(*image.Gray).Pix {
		require.Equal(t, uint8(137), v)
	}
}
