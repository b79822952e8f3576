package pdf_test

import (
	"encoding/binary"
	"math"
)

// space is an RGB colour space with the white D65 as its standard gives it, and what a profile of it holds.
type space struct {
	primaries [3][2]float64               // x, y of red, green and blue
	light     func(level float64) float64 // of a level, both 0 to 1
	colorants [3][3]float64               // XYZ of red, green and blue as published profiles have them, adapted to D50
	curve     []byte                      // the tag's data
	version   byte                        // of the profile
}

// Chromaticities: IEC 61966-2-1; SMPTE EG 432-1 with the white D65, as Display P3 has it; Adobe RGB (1998) Color Image Encoding, 4.3. Colorants: those of the
// widespread profiles "Display P3" and "Adobe RGB (1998)". All recalled from memory; that the two agree with each other and with lcms is what the tests show.
var (
	srgb = space{primaries: [3][2]float64{{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}}, light: srgbLight}

	displayP3 = space{
		primaries: [3][2]float64{{0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}}, light: srgbLight,
		colorants: [3][3]float64{{0.51512, 0.24120, -0.00105}, {0.29198, 0.69225, 0.04189}, {0.15710, 0.06657, 0.78407}},
		curve:     parametric(2.4, 1/1.055, 0.055/1.055, 1/12.92, 0.04045),
		version:   4,
	}
	adobeRGB = space{
		primaries: [3][2]float64{{0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}}, light: func(v float64) float64 { return math.Pow(v, 563.0/256) },
		colorants: [3][3]float64{{0.60974, 0.31111, 0.01947}, {0.20528, 0.62567, 0.06087}, {0.14919, 0.06322, 0.74457}},
		curve:     gamma(563),
		version:   2,
	}
)

// greyGamma is a GRAY profile whose light is level to the power of 1.8: 460.8/256, which a profile rounds to 461/256.
var greyGamma = iccFile("GRAY", 2, tag{"kTRC", gamma(461)})

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

// profile is a matrix profile of the space.
func (s space) profile() []byte {
	return iccFile("RGB ", s.version,
		tag{"rXYZ", xyz(s.colorants[0])}, tag{"gXYZ", xyz(s.colorants[1])}, tag{"bXYZ", xyz(s.colorants[2])},
		tag{"rTRC", s.curve}, tag{"gTRC", s.curve}, tag{"bTRC", s.curve})
}

// inSRGB returns the levels in sRGB, 0 to 255 when it can show them, of a colour of the space: the whites are the same, so light goes straight
// from one set of primaries to the other by way of XYZ, with none of the profile's D50.
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

// tag is an entry of a profile.
type tag struct {
	name string
	data []byte
}

// iccFile lays out a display profile with the tags given and those that every one has (ICC.1:2010, 7 and 8.3; clauses recalled from memory).
func iccFile(space string, version byte, tags ...tag) []byte {
	text := func(s string) []byte { // multiLocalizedUnicodeType, 10.13
		b := append([]byte("mluc\x00\x00\x00\x00\x00\x00\x00\x01\x00\x00\x00\x0cenUS"), be32(2*len(s), 28)...)
		for _, c := range s {
			b = append(b, 0, byte(c))
		}
		return b
	}
	if version < 4 {
		text = func(s string) []byte { // textDescriptionType, ICC.1:2001-04, 6.5.17
			b := append([]byte("desc\x00\x00\x00\x00"), be32(len(s)+1)...)
			return append(append(b, s...), make([]byte, 1+4+4+2+1+67)...)
		}
	}
	copyright := text("none")
	if version < 4 {
		copyright = []byte("text\x00\x00\x00\x00none\x00")
	}
	tags = append([]tag{{"desc", text("a test's")}, {"cprt", copyright}, {"wtpt", xyz(d50)}}, tags...)
	head := make([]byte, 128)
	head[8] = version
	copy(head[12:], "mntr"+space+"XYZ \x07\xea\x00\x01\x00\x01")
	copy(head[36:], "acsp")
	copy(head[68:], xyz(d50)[8:])
	table, at := be32(len(tags)), 128+4+12*len(tags)
	var data []byte
	for _, t := range tags {
		table = append(append(table, t.name...), be32(at+len(data), len(t.data))...)
		data = append(data, t.data...)
		data = append(data, make([]byte, -len(data)&3)...)
	}
	file := append(append(head, table...), data...)
	binary.BigEndian.PutUint32(file, uint32(len(file)))
	return file
}

var d50 = [3]float64{0.9642, 1, 0.8249}

func be32(numbers ...int) (b []byte) {
	for _, n := range numbers {
		b = binary.BigEndian.AppendUint32(b, uint32(n))
	}
	return b
}

func fixed(v float64) int { return int(int32(math.Round(v * 65536))) }

func xyz(v [3]float64) []byte {
	return append([]byte("XYZ \x00\x00\x00\x00"), be32(fixed(v[0]), fixed(v[1]), fixed(v[2]))...)
}

// gamma is a curve of one number: a power in 256ths.
func gamma(of256 uint16) []byte {
	return binary.BigEndian.AppendUint16(append([]byte("curv\x00\x00\x00\x00"), be32(1)...), of256)
}

// parametric is a parametricCurveType of function 3: (a v + b)^g from d on, below it c v.
func parametric(g, a, b, c, d float64) []byte {
	return append([]byte("para\x00\x00\x00\x00\x00\x03\x00\x00"), be32(fixed(g), fixed(a), fixed(b), fixed(c), fixed(d))...)
}
