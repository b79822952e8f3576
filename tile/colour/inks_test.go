package colour

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"
)

// Shares by hand, and the standard library, which rounds down what is here rounded to the nearest.
func TestInksWithoutProfile(t *testing.T) {
	for _, c := range []struct {
		name  string
		inks  [4]uint8
		light [4]uint8
	}{
		{"bare paper", [4]uint8{0, 0, 0, 0}, [4]uint8{255, 255, 255, 255}},
		{"all black", [4]uint8{0, 0, 0, 255}, [4]uint8{0, 0, 0, 255}},
		{"cyan takes red", [4]uint8{255, 0, 0, 0}, [4]uint8{0, 255, 255, 255}},
		{"magenta takes green", [4]uint8{0, 255, 0, 0}, [4]uint8{255, 0, 255, 255}},
		{"yellow takes blue", [4]uint8{0, 0, 255, 0}, [4]uint8{255, 255, 0, 255}},
		// 155/255 of 205/255 is 124.61 levels, 105/255 of it 84.41, 55/255 of it 44.22
		{"some of each", [4]uint8{100, 150, 200, 50}, [4]uint8{125, 84, 44, 255}},
	} {
		t.Run(c.name, func(t *testing.T) {
			pix := append(c.inks[:], c.inks[:]...)
			(*Inks)(nil).ToRGB(pix)
			require.Equal(t, append(c.light[:], c.light[:]...), pix)
			r, g, b := color.CMYKToRGB(c.inks[0], c.inks[1], c.inks[2], c.inks[3])
			for i, v := range []uint8{r, g, b} {
				require.InDelta(t, v, pix[i], 1)
			}
		})
	}
}
