package rehearsal

import (
	"errors"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
)

// Transparent artwork is decoded again for another background, and shows it; opaque artwork is not.
func TestBackgroundUnderTransparentArtwork(t *testing.T) {
	for _, c := range []struct {
		name    string
		fill    color.Color
		decoded int
		shows   [3]color.RGBA
	}{
		{"transparent", color.Transparent, 3, [3]color.RGBA{{255, 255, 255, 255}, {32, 48, 64, 255}, {255, 255, 255, 255}}},
		{"opaque", color.Black, 1, [3]color.RGBA{{A: 255}, {A: 255}, {A: 255}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := image.NewNRGBA(image.Rect(0, 0, 8, 8))
			draw.Draw(m, m.Rect, image.NewUniform(c.fill), image.Point{}, draw.Src)
			path := filepath.Join(t.TempDir(), "picture.png")
			f, err := os.Create(path)
			require.NoError(t, err)
			require.NoError(t, png.Encode(f, m))
			require.NoError(t, f.Close())
			s := Subject{Artwork: path, Extent: job.Extent{WidthPx: 8, HeightPx: 8}, Limits: artwork.Default}
			decoded := 0
			art := &onScreen{open: func(background layout.Surround) (*artwork.Picture, error) {
				decoded++
				return s.open(background)
			}}
			for i, background := range []layout.Surround{"", "#203040", ""} {
				for range 2 { // once decoded, it stays
					picture, _, err := art.of(m.Rect, background, background)
					require.NoError(t, err)
					require.Equal(t, c.shows[i], picture.Reduced(8).RGBAAt(0, 0), "background %q", background)
				}
			}
			require.Equal(t, c.decoded, decoded)
		})
	}
}

// Artwork that can't be read again for another background stays as it was on its own.
func TestBackgroundThatFails(t *testing.T) {
	gone := errors.New("gone")
	art := &onScreen{open: func(background layout.Surround) (*artwork.Picture, error) {
		if background != "" {
			return nil, gone
		}
		return &artwork.Picture{Image: image.NewGray(image.Rect(0, 0, 8, 8)), Transparent: true}, nil
	}}
	part := image.Rect(0, 0, 8, 8)
	before, _, err := art.of(part, "", "")
	require.NoError(t, err)
	_, _, err = art.of(part, "#203040", "#203040")
	require.ErrorIs(t, err, gone)
	after, _, err := art.of(part, "", "")
	require.NoError(t, err)
	require.Same(t, before, after)
}
