package pdf

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"
)

// CheckProfile says whether an ICC profile can be the colour space of a grey or an RGB picture: it must be whole, of version 2 or 4,
// for the right number of components, and of a class that a PDF takes (ISO 32000-1, 8.6.5.5). The error says what is wrong with it.
// Clauses in this file are recalled from memory.
func CheckProfile(icc []byte, gray bool) error {
	if len(icc) < iccHeaderBytes+4 {
		return fmt.Errorf("the ICC profile has %d bytes, too few for one", len(icc))
	}
	if size := binary.BigEndian.Uint32(icc); int64(size) != int64(len(icc)) {
		return fmt.Errorf("the ICC profile has %d bytes but says %d", len(icc), size)
	}
	if string(icc[36:40]) != "acsp" {
		return errors.New("the ICC profile lacks its signature")
	}
	if major := icc[8]; major != 2 && major != 4 {
		return fmt.Errorf("the ICC profile is of version %d: only 2 and 4 can go into a PDF", major)
	}
	if class := string(icc[12:16]); !slices.Contains([]string{"scnr", "mntr", "prtr", "spac"}, class) {
		return fmt.Errorf("the ICC profile is of class %q: a picture's can be scnr, mntr, prtr or spac", class)
	}
	want := "RGB "
	if gray {
		want = "GRAY"
	}
	if space := string(icc[16:20]); space != want {
		return fmt.Errorf("the ICC profile is for %q, the picture is %q", space, want)
	}
	if pcs := string(icc[20:24]); pcs != "XYZ " && pcs != "Lab " {
		return fmt.Errorf("the ICC profile connects to %q, neither XYZ nor Lab", pcs)
	}
	count := int64(binary.BigEndian.Uint32(icc[iccHeaderBytes:]))
	if count == 0 || iccHeaderBytes+4+12*count > int64(len(icc)) {
		return fmt.Errorf("the ICC profile says it has %d tags, which is wrong for its size", count)
	}
	for i := range count {
		entry := icc[iccHeaderBytes+4+12*i:]
		offset, size := int64(binary.BigEndian.Uint32(entry[4:])), int64(binary.BigEndian.Uint32(entry[8:]))
		if offset < iccHeaderBytes || offset+size > int64(len(icc)) {
			return fmt.Errorf("tag %q of the ICC profile lies outside it", entry[:4])
		}
	}
	return nil
}

func builtInProfile(gray bool) []byte {
	if gray {
		return grayProfile()
	}
	return srgbProfile()
}

// srgbProfile is sRGB as a three-component matrix-based display profile (ICC.1:2001-04, 6.3.2).
var srgbProfile = sync.OnceValue(func() []byte {
	curve := iccCurve(srgbToLinear)
	colorants := srgbColorants()
	return iccProfile("RGB ", []iccTag{
		{"desc", iccDescription("sRGB IEC61966-2.1")},
		{"cprt", iccText("No copyright, use freely")},
		{"wtpt", iccXYZ(d50)},
		{"rXYZ", iccXYZ(colorants[0])},
		{"gXYZ", iccXYZ(colorants[1])},
		{"bXYZ", iccXYZ(colorants[2])},
		{"rTRC", curve}, {"gTRC", curve}, {"bTRC", curve},
	})
})

// grayProfile is grey with the curve of sRGB, a monochrome display profile: a grey pixel looks like an RGB pixel of that value thrice.
var grayProfile = sync.OnceValue(func() []byte {
	return iccProfile("GRAY", []iccTag{
		{"desc", iccDescription("Grey with the sRGB curve")},
		{"cprt", iccText("No copyright, use freely")},
		{"wtpt", iccXYZ(d50)},
		{"kTRC", iccCurve(srgbToLinear)},
	})
})

// srgbToLinear is the curve of sRGB from a stored value to light, both 0 to 1 (IEC 61966-2-1:1999, 5.2).
func srgbToLinear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

type vec3 [3]float64
type mat3 [3]vec3 // rows

// d50 is the white of the profile connection space (ICC.1:2001-04, 6.1: illuminant of the header), XYZ.
var d50 = vec3{0.9642, 1, 0.8249}

// bradford takes XYZ to the sharpened cone responses in which whites are adapted (ICC.1:2001-12, annex E).
var bradford = mat3{
	{0.8951, 0.2664, -0.1614},
	{-0.7502, 1.7135, 0.0367},
	{0.0389, -0.0685, 1.0296},
}

// srgbColorants returns the XYZ of full red, green and blue of sRGB, adapted from its white, D65, to D50.
func srgbColorants() [3]vec3 {
	// Chromaticities x, y of the primaries and of D65 (IEC 61966-2-1:1999, table 1).
	primaries := [3]vec3{chromaticity(0.64, 0.33), chromaticity(0.30, 0.60), chromaticity(0.15, 0.06)}
	d65 := chromaticity(0.3127, 0.3290)

	// Scale the primaries so that together they make white.
	columns := mat3{}
	for i := range 3 {
		columns[i] = vec3{primaries[0][i], primaries[1][i], primaries[2][i]}
	}
	scale := columns.inverse().times(d65)

	// Adapt: in cone responses, multiply by new white over old white.
	from, to := bradford.times(d65), bradford.times(d50)
	back := bradford.inverse()
	var colorants [3]vec3
	for i, p := range primaries {
		cone := bradford.times(vec3{p[0] * scale[i], p[1] * scale[i], p[2] * scale[i]})
		for j := range cone {
			cone[j] *= to[j] / from[j]
		}
		colorants[i] = back.times(cone)
	}
	return colorants
}

// chromaticity returns the XYZ of luminance 1 at a chromaticity x, y.
func chromaticity(x, y float64) vec3 { return vec3{x / y, 1, (1 - x - y) / y} }

func (m mat3) times(v vec3) vec3 {
	var out vec3
	for i, row := range m {
		// Each product is rounded by itself, so that processors which fuse multiply and add agree.
		out[i] = float64(row[0]*v[0]) + float64(row[1]*v[1]) + float64(row[2]*v[2])
	}
	return out
}

// inverse is by Cramer's rule; both matrices used here are far from singular.
func (m mat3) inverse() mat3 {
	cross := func(a, b vec3) vec3 {
		return vec3{
			float64(a[1]*b[2]) - float64(a[2]*b[1]),
			float64(a[2]*b[0]) - float64(a[0]*b[2]),
			float64(a[0]*b[1]) - float64(a[1]*b[0]),
		}
	}
	c := mat3{cross(m[1], m[2]), cross(m[2], m[0]), cross(m[0], m[1])}
	det := mat3{m[0]}.times(c[0])[0]
	var inv mat3
	for i := range 3 {
		for j := range 3 {
			inv[i][j] = c[j][i] / det
		}
	}
	return inv
}
