package colour

import (
	"errors"
	"math"
	"sync"
)

// Inks is what pixels of cyan, magenta, yellow and black become in sRGB.
type Inks struct{ table *baked }

// inksSignature is what a profile calls CMYK (ICC.1:2010, 7.2.6, recalled from memory).
const inksSignature = "CMYK"

// ReadInks reads a profile for pictures of four inks. The error says why it can't be followed.
func ReadInks(profile []byte) (*Inks, error) {
	if err := checkProfile(profile, inksSignature); err != nil {
		return nil, err
	}
	of, err := deviceTable(profile, mostComponents)
	if err != nil {
		return nil, err
	}
	if of == nil {
		return nil, errors.New("it has no table (A2B0)")
	}
	of.compensateBlack(profile)
	return &Inks{bake(of)}, nil
}

// ToRGB turns pixels, 0 for no ink and 255 for all, into opaque RGBA of sRGB in their place. What sRGB can't show is
// cut off. Without a profile (nil) each ink takes its share of one of red, green and blue and black takes its share
// of all, as the standard library's image/color has it: (1 - ink)(1 - black).
func (k *Inks) ToRGB(pix []uint8) {
	if k == nil {
		plainInksToRGB(pix)
		return
	}
	levels := levelOfLight()
	for i := 0; i+4 <= len(pix); i += 4 {
		p := (*[4]uint8)(pix[i:])
		out := k.table.at(*p)
		for c, v := range out {
			p[c] = levels[max(0, min((v+fullLight/lightSteps/2)/(fullLight/lightSteps), lightSteps))]
		}
		p[3] = 255
	}
}

// lightSteps are how finely light is told apart when it is turned into levels: a fifth of a level in the dark.
const lightSteps = 1 << 14

// levelOfLight is sRGB's level of each step of light.
var levelOfLight = sync.OnceValue(func() *[lightSteps + 1]uint8 {
	var levels [lightSteps + 1]uint8
	for i := range levels {
		levels[i] = uint8(math.Round(255 * LightToSRGB(float64(i)/lightSteps)))
	}
	return &levels
})

func plainInksToRGB(pix []uint8) {
	for i := 0; i+4 <= len(pix); i += 4 {
		p := pix[i : i+4 : i+4]
		light := 255 - uint32(p[3])
		for c := range 3 {
			p[c] = uint8(((255-uint32(p[c]))*light + 127) / 255)
		}
		p[3] = 255
	}
}
