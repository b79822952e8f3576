package pdf_test

import (
	"math"

	"dropsheet/tile/colour/icctest"
)

// space is an RGB colour space with the white D65 as its standard gives it, and as a profile tells it.
type space struct {
	primaries [3][2]float64               // x, y of red, green and blue
	light     func(level float64) float64 // of a level, both 0 to 1
	told      icctest.Space               // as published profiles have it
}

// Chromaticities: IEC 61966-2-1; SMPTE EG 432-1 with the white D65, as Display P3 has it; Adobe RGB (1998)
// Color Image Encoding, 4.3. The profiles' colorants: those of the widespread "Display P3" and "Adobe RGB
// (1998)". All recalled from memory; that the two agree with each other and with lcms is what the tests show.
var (
	srgb = space{primaries: [3][2]float64{{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}}, light: srgbLight}

	displayP3 = space{
		primaries: [3][2]float64{{0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}}, light: srgbLight,
		told: icctest.DisplayP3,
	}
	adobeRGB = space{
		primaries: [3][2]float64{{0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}},
		light:     func(v float64) float64 { return math.Pow(v, 563.0/256) },
		told:      icctest.AdobeRGB,
	}
)

// greyGamma is a GRAY profile whose light is level to the power of 1.8: 460.8/256, which a profile rounds to 461/256.
var greyGamma = icctest.Grey(icctest.Gamma(461))

func greyLight(v float64) float64 { return math.Pow(v, 461.0/256) }

func srgbLight(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func srgbLevel(light float64) float64 {
	if light <= 0.0031308 {
		return 12.92 * light
	}
	return 1.055*math.Pow(light, 1/2.4) - 0.055
}

// inSRGB returns the levels in sRGB, 0 to 255 when it can show them, of a colour of the space: the whites are
// the same, so light goes straight from one set of primaries to the other by way of XYZ, with none of the
// profile's D50.
func (s space) inSRGB(levels [3]uint8) (out [3]float64) {
	var light [3]float64
	for i, v := range levels {
		light[i] = s.light(float64(v) / 255)
	}
	there, back := s.toXYZ(), srgb.toXYZ()
	for i, v := range solve(back, times(there, light)) {
		out[i] = 255 * srgbLevel(v)
	}
	return out
}

// toXYZ is the matrix from light to XYZ: the primaries, scaled so that together they make D65 (0.3127, 0.3290).
func (s space) toXYZ() (m [3][3]float64) {
	for i, p := range s.primaries {
		m[0][i], m[1][i], m[2][i] = p[0]/p[1], 1, (1-p[0]-p[1])/p[1]
	}
	scale := solve(m, [3]float64{0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290})
	for i := range 3 {
		for j := range 3 {
			m[i][j] *= scale[j]
		}
	}
	return m
}

func times(m [3][3]float64, v [3]float64) (out [3]float64) {
	for i := range 3 {
		for j := range 3 {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

// solve returns the x with m x = v, by elimination.
func solve(m [3][3]float64, v [3]float64) [3]float64 {
	for i := range 3 {
		for j := range 3 {
			if j == i {
				continue
			}
			f := m[j][i] / m[i][i] // the matrices of this test have no zero there
			for k := range 3 {
				m[j][k] -= f * m[i][k]
			}
			v[j] -= f * v[i]
		}
	}
	return [3]float64{v[0] / m[0][0], v[1] / m[1][1], v[2] / m[2][2]}
}
