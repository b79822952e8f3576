package jobtest

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour/icctest"
)

// WriteStripes writes a PNG of upright stripes of these colours, grey when all are, with a profile if there is one.
func WriteStripes(t testing.TB, profile []byte, colours ...[3]uint8) (path string) {
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
		data = icctest.InPNG(t, data, profile)
	}
	path = filepath.Join(t.TempDir(), "stripes.png")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}
