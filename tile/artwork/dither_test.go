package artwork

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"github.com/stretchr/testify/require"
)

// By hand: of 64 pixels as many are a level higher as the sample lies 64ths of a level above the lower one, which is
// worked out in 65535ths; samples that 8 bits hold come out as they are, and so does a ground under what is clear.
func TestDitherKeepsTheMean(t *testing.T) {
	for v := 0; v < 65536; v += 7 {
		sum, low, high := 0, 255, 0
		for i := range 64 {
			out := int(narrow16(uint16(v), ground{}.threshold(i%8, i/8)))
			sum, low, high = sum+out, min(low, out), max(high, out)
		}
		require.InDelta(t, float64(v)*255/65535, float64(sum)/64, 1.0/64, "%d", v)
		require.LessOrEqual(t, high-low, 1)
	}
	seen := map[threshold]bool{}
	for i := range 64 {
		add := ground{}.threshold(i%8+8*(i%3), i/8+8)
		seen[add] = true
		for level := range 256 {
			v := uint16(257 * level)
			require.Equal(t, uint8(level), narrow16(v, add))
			require.Equal(t, uint8(level), straight16(v, 65535, 9, add))
			require.Equal(t, uint8(level), premultiplied16(v, 65535, 9, add))
			require.Equal(t, uint8(level), straight16(0x1234, 0, uint8(level), add))
		}
	}
	require.Len(t, seen, 64)
}

// A file of 16 bits is dithered and says so, unless it is asked for rounded as jobs once had it; one of 8 bits never
// is. A ramp that rises by a level over 128 pixels rises evenly in every stretch of 8.
func TestDeepFilesAreDithered(t *testing.T) {
	ramp := image.NewGray16(image.Rect(0, 0, 128, 16))
	shallow := image.NewGray(ramp.Rect)
	for i := range 128 * 16 {
		ramp.SetGray16(i%128, i/128, color.Gray16{Y: uint16(257*100 + 2*(i%128))})
	}
	read := func(m image.Image, r Reading) *Picture {
		var file bytes.Buffer
		require.NoError(t, png.Encode(&file, m))
		r.Limits = upTo(1 << 22)
		p, err := decode(file.Bytes(), r)
		require.NoError(t, err)
		return p
	}
	p, rounded := read(ramp, Reading{}), read(ramp, Reading{Rounded: true})
	require.True(t, p.Dithered)
	require.False(t, rounded.Dithered)
	require.False(t, read(shallow, Reading{}).Dithered)
	mean := func(p *Picture, from int) (sum float64) {
		for i := range 8 * 16 {
			sum += float64(p.Image.(*image.Gray).GrayAt(from+i%8, i/8).Y) / (8 * 16)
		}
		return sum
	}
	flat := 0
	for from := 0; from < 128; from += 8 {
		ideal := 100 + 2*(float64(from)+3.5)/257
		require.InDelta(t, ideal, mean(p, from), 1.0/32, "from %d", from)
		if level := mean(rounded, from); level == 100 || level == 101 {
			flat++
		}
	}
	require.Equal(t, 15, flat, "but where it steps")
	require.Equal(t, p.Image, read(ramp, Reading{}).Image, "the same again")
}
