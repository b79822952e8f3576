// Package icctest lays out colour profiles for tests (ICC.1:2010; its clauses and the figures here are
// recalled from memory).
package icctest

import (
	"encoding/binary"
	"math"
)

// Tag is an entry of a profile.
type Tag struct {
	Name string
	Data []byte
}

// D50 is the white that profiles connect to, XYZ.
var D50 = [3]float64{0.9642, 1, 0.8249}

// Space is an RGB space as its profile tells it: XYZ of red, green and blue, adapted to D50, and the data of
// the curve that they share.
type Space struct {
	Colorants [3][3]float64
	Curve     []byte
	Version   byte // of the profile
}

// Spaces as the profiles about have them.
var (
	// SRGB is that of "sRGB IEC61966-2.1", to the bit, with the standard's curve as a formula.
	SRGB = Space{
		[3][3]float64{{0x6fa2 / 65536.0, 0x38f5 / 65536.0, 0x0390 / 65536.0},
			{0x6299 / 65536.0, 0xb785 / 65536.0, 0x18da / 65536.0}, {0x24a0 / 65536.0, 0x0f84 / 65536.0, 0xb6cf / 65536.0}},
		Formula(3, 2.4, 1/1.055, 0.055/1.055, 1/12.92, 0.04045), 2,
	}
	DisplayP3 = Space{
		[3][3]float64{{0.51512, 0.24120, -0.00105}, {0.29198, 0.69225, 0.04189}, {0.15710, 0.06657, 0.78407}},
		Formula(3, 2.4, 1/1.055, 0.055/1.055, 1/12.92, 0.04045), 4,
	}
	AdobeRGB = Space{
		[3][3]float64{{0.60974, 0.31111, 0.01947}, {0.20528, 0.62567, 0.06087}, {0.14919, 0.06322, 0.74457}},
		Gamma(563), 2,
	}
	ProPhoto = Space{
		[3][3]float64{{0.79767, 0.28804, 0}, {0.13519, 0.71188, 0}, {0.03134, 0.00009, 0.82491}},
		Gamma(461), 2,
	}
)

// Profile is a matrix profile of the space.
func (s Space) Profile() []byte {
	return Profile("RGB ", s.Version,
		Tag{"rXYZ", XYZ(s.Colorants[0])}, Tag{"gXYZ", XYZ(s.Colorants[1])}, Tag{"bXYZ", XYZ(s.Colorants[2])},
		Tag{"rTRC", s.Curve}, Tag{"gTRC", s.Curve}, Tag{"bTRC", s.Curve})
}

// Grey is a profile for grey pictures with a curve.
func Grey(curve []byte) []byte { return Profile("GRAY", 2, Tag{"kTRC", curve}) }

// Profile lays out a display profile for "RGB " or "GRAY" with the tags given and those that every one has (7 and 8.3).
func Profile(space string, version byte, tags ...Tag) []byte {
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
	tags = append([]Tag{{"desc", text("a test's")}, {"cprt", copyright}, {"wtpt", XYZ(D50)}}, tags...)
	head := make([]byte, 128)
	head[8] = version
	copy(head[12:], "mntr"+space+"XYZ \x07\xea\x00\x01\x00\x01")
	copy(head[36:], "acsp")
	copy(head[68:], XYZ(D50)[8:])
	table, at := be32(len(tags)), 128+4+12*len(tags)
	var data []byte
	for _, t := range tags {
		table = append(append(table, t.Name...), be32(at+len(data), len(t.Data))...)
		data = append(data, t.Data...)
		data = append(data, make([]byte, -len(data)&3)...)
	}
	file := append(append(head, table...), data...)
	binary.BigEndian.PutUint32(file, uint32(len(file)))
	return file
}

// XYZ is an XYZType of one colour (10.27).
func XYZ(v [3]float64) []byte {
	return append([]byte("XYZ \x00\x00\x00\x00"), be32(fixed(v[0]), fixed(v[1]), fixed(v[2]))...)
}

// Gamma is a curve of one number, a power in 256ths.
func Gamma(of256 uint16) []byte { return Table(of256) }

// Table is a curveType (10.5): points, 65535 for full light; a power in 256ths when it is one number, nothing
// for light as the level.
func Table(points ...uint16) []byte {
	data := append([]byte("curv\x00\x00\x00\x00"), be32(len(points))...)
	for _, p := range points {
		data = binary.BigEndian.AppendUint16(data, p)
	}
	return data
}

// Formula is a parametricCurveType (10.15) of a function, 0 to 4, with its numbers g, a, b, c, d, e and f, as
// many as it has.
func Formula(function byte, numbers ...float64) []byte {
	data := append([]byte("para\x00\x00\x00\x00"), 0, function, 0, 0)
	for _, n := range numbers {
		data = append(data, be32(fixed(n))...)
	}
	return data
}

func be32(numbers ...int) (b []byte) {
	for _, n := range numbers {
		b = binary.BigEndian.AppendUint32(b, uint32(n))
	}
	return b
}

func fixed(v float64) int { return int(int32(math.Round(v * 65536))) }
