package film

import (
	"crypto/sha256"
	"encoding/hex"
	"image"
	"image/color"
	"image/draw"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/tetratelabs/wazero"
)

// What we carry is the file that libwebp/README.md says, and asks the machine for nothing.
func TestEncoderIsTheOneToldOf(t *testing.T) {
	sum := sha256.Sum256(libwebp)
	require.Equal(t, "bbcf68343d79d80ba4ce7bb29215b2943711bd0787f68ff31785c6e2bb044459", hex.EncodeToString(sum[:]))
	lib, err := loaded()
	require.NoError(t, err)
	require.Empty(t, lib.module.ImportedFunctions())
}

// On processors that wazero has no compiler for it interprets: another program, and the same bytes.
func TestInterpreterGivesTheSameBytes(t *testing.T) {
	interpreted, err := load(wazero.NewRuntimeConfigInterpreter())
	require.NoError(t, err)
	compiled, err := loaded()
	require.NoError(t, err)
	m := falling(3, 97, 81)
	var keys [][]byte
	for _, lib := range []*library{compiled, interpreted} {
		e, err := lib.newEncoder(m.Rect.Size())
		require.NoError(t, err)
		frame, err := e.encode(m)
		require.NoError(t, err)
		require.NoError(t, e.close())
		keys = append(keys, frame)
	}
	require.Equal(t, keys[0], keys[1])
}

// Frames of any size come back as they were, but for what coding loses. Luma keeps 41 dB, which is a root mean square
// of 2 levels under a grain of 0 to 4. Colours have half the resolution and bleed a pixel along the drop's edge: 38 dB,
// 3 levels, once that edge is a small part of the frame.
func TestFramesComeBack(t *testing.T) {
	for _, c := range []struct {
		name          string
		width, height int
	}{
		{"a pixel", 1, 1}, {"narrow", 2, 301}, {"odd", 17, 33}, {"odd both ways", 321, 239}, {"blocks", 320, 240},
		{"larger", 640, 480},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, b := falling(0, c.width, c.height), falling(5, c.width, c.height)
			got := frames(t, filmOf(t, 25, a, b))
			require.Len(t, got, 2)
			for i, want := range []*image.RGBA{a, b} {
				// a shown key frame, then the start code and the size (RFC 6386, 9.1; recalled from memory)
				head := got[i]
				require.Equal(t, byte(0x10), head[0]&0x11, "frame %d", i)
				require.Equal(t, []byte{0x9D, 0x01, 0x2A}, head[3:6])
				require.Equal(t, []byte{byte(c.width), byte(c.width >> 8), byte(c.height), byte(c.height >> 8)}, head[6:10])
				m := decode(t, got[i])
				require.Greater(t, lumaPSNR(t, want, m), 41.0, "frame %d", i)
				if c.width > 300 {
					require.Greater(t, psnr(t, want, screen(m)), 38.0, "frame %d", i)
				}
			}
		})
	}
}

// White is 235 and black 16, and each colour lies where BT.601 has it, not BT.709 and not the full range of JPEGs: the
// formulas of Rec. ITU-R BT.601-7, 2.5 (recalled from memory).
func TestColoursAreBT601(t *testing.T) {
	for name, c := range map[string]color.RGBA{
		"white": {255, 255, 255, 255}, "black": {0, 0, 0, 255}, "grey": {128, 128, 128, 255},
		"red": {255, 0, 0, 255}, "green": {0, 255, 0, 255}, "blue": {0, 0, 255, 255},
		"dusk": {210, 120, 70, 255}, "harbour": {30, 60, 90, 255},
	} {
		t.Run(name, func(t *testing.T) {
			m := image.NewRGBA(image.Rect(0, 0, 48, 48))
			draw.Draw(m, m.Rect, image.NewUniform(c), image.Point{}, draw.Src)
			red, green, blue := float64(c.R)/255, float64(c.G)/255, float64(c.B)/255
			y := 0.299*red + 0.587*green + 0.114*blue
			want := []float64{16 + 219*y, 128 + 224*(blue-y)/1.772, 128 + 224*(red-y)/1.402}
			got := decode(t, frames(t, filmOf(t, 25, m))[0]).YCbCrAt(24, 24)
			for i, v := range []uint8{got.Y, got.Cb, got.Cr} {
				require.InDelta(t, want[i], float64(v), 1, "component %d: half a level is rounded, the rest is coding's", i)
			}
		})
	}
}

func TestEncoderTellsOfTooLittleMemory(t *testing.T) {
	lib, err := load(wazero.NewRuntimeConfig().WithMemoryLimitPages(32)) // of 64 KiB
	require.NoError(t, err)
	_, err = lib.newEncoder(image.Pt(2000, 1000))
	require.EqualError(t, err, "the film's encoder can't take frames of 2000 x 1000 pixels: too little memory\n"+
		"hint: choose smaller ones")
	e, err := lib.newEncoder(image.Pt(500, 500))
	require.NoError(t, err)
	_, err = e.encode(falling(0, 500, 500))
	require.EqualError(t, err, "the encoder can't hold its detail or has too little memory\nhint: choose smaller frames")
	require.NoError(t, e.close())
}

func TestKeyFrameTellsOfAnotherAnswer(t *testing.T) {
	good := "RIFF\x12\x00\x00\x00WEBPVP8 \x04\x00\x00\x00data"
	frame, err := keyFrame([]byte(good + "more"))
	require.NoError(t, err)
	require.Equal(t, "data", string(frame))
	for name, bad := range map[string]string{
		"none": "", "cut in its head": good[:19], "cut": good[:len(good)-1],
		"lossless": good[:12] + "VP8L" + good[16:], "with transparency": good[:12] + "VP8X" + good[16:],
	} {
		_, err := keyFrame([]byte(bad))
		require.ErrorContains(t, err, "the encoder's answer", name)
	}
}
