package texture

import (
	"image/color"
	"math"

	"dropsheet/tile/colour"
)

// Light is a colour in linear light, red, green and blue from 0 to 1. What is worked out of it is the same on every
// kind of processor: products are rounded by themselves (float32) before they are added to anything, since some
// processors add them in one step, and of a million pixels that shows in a few.
type Light [3]float32

// Mix goes from l to m as part goes from 0 to 1.
func (l Light) Mix(m Light, part float32) Light {
	return Light{mix(l[0], m[0], part), mix(l[1], m[1], part), mix(l[2], m[2], part)}
}

// mix goes from a to b as part goes from 0 to 1.
func mix(a, b, part float32) float32 { return a + float32((b-a)*part) }

// Add returns l + m.
func (l Light) Add(m Light) Light { return Light{l[0] + m[0], l[1] + m[1], l[2] + m[2]} }

// Scale returns k l.
func (l Light) Scale(k float32) Light {
	return Light{float32(k * l[0]), float32(k * l[1]), float32(k * l[2])}
}

// toLinear is the light of each level.
var toLinear = func() (table [256]float32) {
	for i := range table {
		table[i] = float32(colour.SRGBToLight(float64(i) / 255))
	}
	return table
}()

// Linear reads an sRGB pixel.
func Linear(c color.RGBA) Light { return Light{toLinear[c.R], toLinear[c.G], toLinear[c.B]} }

// encodeSteps is fine enough that the table's step is under half a level where the curve is steepest, at black.
const encodeSteps = 1 << 13

// fromLinear is the level for light, in encodeSteps steps.
var fromLinear = func() (table [encodeSteps + 1]uint8) {
	for i := range table {
		table[i] = uint8(math.Round(255 * colour.LightToSRGB(float64(i)/encodeSteps)))
	}
	return table
}()

// SRGB is the pixel for a colour, clipped to what can be shown.
func (l Light) SRGB() color.RGBA {
	return color.RGBA{encoded(l[0]), encoded(l[1]), encoded(l[2]), 0xff}
}

// encoded is the level for one colour's light.
func encoded(v float32) uint8 { return fromLinear[int(max(0, min(v, 1))*encodeSteps+0.5)] }
