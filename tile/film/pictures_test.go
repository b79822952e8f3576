package film

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"io"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/vp8"
)

// falling draws frame i of a drop that falls through a dusk: soft slopes, an edge, a picture turned in the drop and
// the grain of a rendering.
func falling(i, w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	r := h / 4
	cx, cy := w/2, h/8+i*max(h/24, 1)
	state := uint32(i + 1)
	for y := range h {
		for x := range w {
			u, v := 255*x/w, 255*y/h
			red, green, blue := 40+150*v/255, 50+60*v/255, 150-80*v/255+20*u/255
			if dx, dy := x-cx, y-cy; dx*dx+dy*dy < r*r {
				u, v = 127-127*dx/r, 127-127*dy/r
				red, green, blue = 220-150*v/255, 120+40*u/255, 60+120*v/255
			}
			state = state*1664525 + 1013904223 // a linear congruential generator
			grain := int(state>>24) % 5
			m.SetRGBA(x, y, color.RGBA{uint8(red + grain), uint8(green + grain), uint8(blue + grain), 255})
		}
	}
	return m
}

// decode reads a key frame with the Go project's decoder.
func decode(t *testing.T, frame []byte) *image.YCbCr {
	t.Helper()
	d := vp8.NewDecoder()
	d.Init(bytes.NewReader(frame), len(frame))
	_, err := d.DecodeFrameHeader()
	require.NoError(t, err)
	m, err := d.DecodeFrame()
	require.NoError(t, err)
	return m
}

// screen turns a decoded frame into what a player shows: Rec. ITU-R BT.601-7, 2.5.1 to 2.5.4 (recalled from
// memory), with luma from 16 to 235 and chroma from 16 to 240.
func screen(m *image.YCbCr) *image.RGBA {
	s := image.NewRGBA(m.Rect)
	level := func(v float64) uint8 { return uint8(math.Round(255 * max(0, min(v, 1)))) }
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			p := m.YCbCrAt(x, y)
			luma := (float64(p.Y) - 16) / 219
			red := luma + 2*(1-0.299)*(float64(p.Cr)-128)/224
			blue := luma + 2*(1-0.114)*(float64(p.Cb)-128)/224
			green := (luma - 0.299*red - 0.114*blue) / 0.587
			s.SetRGBA(x, y, color.RGBA{level(red), level(green), level(blue), 255})
		}
	}
	return s
}

// psnr is the ratio of the largest level to the root mean square of the differences, in decibels.
func psnr(t *testing.T, a, b *image.RGBA) float64 {
	t.Helper()
	require.Equal(t, a.Rect.Size(), b.Rect.Size())
	require.Equal(t, len(a.Pix), len(b.Pix))
	var sum float64
	for i, v := range a.Pix { // alpha is 255 in both
		d := float64(v) - float64(b.Pix[i])
		sum += d * d
	}
	return 10 * math.Log10(255*255*float64(3*len(a.Pix)/4)/sum)
}

// lumaPSNR is that of the luma alone, in the levels from 16 to 235 that it is coded in.
func lumaPSNR(t *testing.T, a *image.RGBA, b *image.YCbCr) float64 {
	t.Helper()
	require.Equal(t, a.Rect, b.Rect)
	var sum float64
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			d := luma(a.RGBAAt(x, y)) - float64(b.YCbCrAt(x, y).Y)
			sum += d * d
		}
	}
	return 10 * math.Log10(219*219*float64(a.Rect.Dx()*a.Rect.Dy())/sum)
}

func luma(c color.RGBA) float64 {
	return 16 + 219*(0.299*float64(c.R)+0.587*float64(c.G)+0.114*float64(c.B))/255
}

// A file in memory.
type file struct {
	data []byte
	at   int

	failAfter int   // bytes, if err is set
	err       error // what writing beyond them gives
}

func (f *file) Write(p []byte) (int, error) {
	if f.err != nil && f.at+len(p) > f.failAfter {
		return 0, f.err
	}
	f.data = append(f.data, make([]byte, max(0, f.at+len(p)-len(f.data)))...)
	f.at += copy(f.data[f.at:], p)
	return len(p), nil
}

func (f *file) Seek(offset int64, whence int) (int64, error) {
	switch whence {
	case io.SeekStart:
		f.at = int(offset)
	case io.SeekCurrent:
		f.at += int(offset)
	default:
		return 0, errors.New("not asked for")
	}
	return int64(f.at), nil
}

// filmOf writes a film and returns its bytes.
func filmOf(t testing.TB, playbackFPS float64, pictures ...image.Image) []byte {
	t.Helper()
	var f file
	w, err := New(&f, pictures[0].Bounds().Dx(), pictures[0].Bounds().Dy(), playbackFPS)
	require.NoError(t, err)
	for _, m := range pictures {
		require.NoError(t, w.Add(m))
	}
	require.NoError(t, w.Close())
	return f.data
}
