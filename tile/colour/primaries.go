package colour

// d50 is the white of the space that profiles connect to, XYZ (ICC.1:2001-04, 6.1: illuminant of the header;
// clauses of ICC.1 are recalled from memory).
var d50 = [3]float64{0.9642, 1, 0.8249}

// matrix takes a colour to another space, row by row.
type matrix [3][3]float64

// bradford takes XYZ to the sharpened cone responses in which whites are adapted (ICC.1:2001-12, annex E).
var bradford = matrix{
	{0.8951, 0.2664, -0.1614},
	{-0.7502, 1.7135, 0.0367},
	{0.0389, -0.0685, 1.0296},
}

// srgbColorants are the XYZ of full red, green and blue, adapted from sRGB's white, D65, to D50.
func srgbColorants() (colorants [3][3]float64) {
	// Chromaticities x, y of the primaries and of D65 (IEC 61966-2-1:1999, table 1).
	primaries := [3][3]float64{chromaticity(0.64, 0.33), chromaticity(0.30, 0.60), chromaticity(0.15, 0.06)}
	d65 := chromaticity(0.3127, 0.3290)

	// Scale the primaries so that together they make white.
	scale := columns(primaries).inverse().times(d65)

	// Adapt: in cone responses, multiply by new white over old white.
	from, to := bradford.times(d65), bradford.times(d50)
	back := bradford.inverse()
	for i, p := range primaries {
		cone := bradford.times([3]float64{p[0] * scale[i], p[1] * scale[i], p[2] * scale[i]})
		for j := range cone {
			cone[j] *= to[j] / from[j]
		}
		colorants[i] = back.times(cone)
	}
	return colorants
}

// xyzToSRGBLight goes from XYZ with the white D50 to linear light: the colorants undone. A colour that sRGB can't
// show comes out under 0 or over 1.
func xyzToSRGBLight() matrix { return columns(srgbColorants()).inverse() }

// chromaticity is the XYZ of luminance 1 at a chromaticity x, y.
func chromaticity(x, y float64) [3]float64 { return [3]float64{x / y, 1, (1 - x - y) / y} }

// columns is the matrix that has these colours side by side.
func columns(colours [3][3]float64) (m matrix) {
	for i, c := range colours {
		for j := range c {
			m[j][i] = c[j]
		}
	}
	return m
}

// times is the colour v in the matrix's other space.
func (m matrix) times(v [3]float64) (out [3]float64) {
	for i, row := range m {
		// Each product is rounded by itself, so that processors which fuse multiply and add agree.
		out[i] = float64(row[0]*v[0]) + float64(row[1]*v[1]) + float64(row[2]*v[2])
	}
	return out
}

// inverse is by Cramer's rule; the matrices used here are far from singular.
func (m matrix) inverse() (inv matrix) {
	cross := func(a, b [3]float64) [3]float64 {
		return [3]float64{
			float64(a[1]*b[2]) - float64(a[2]*b[1]),
			float64(a[2]*b[0]) - float64(a[0]*b[2]),
			float64(a[0]*b[1]) - float64(a[1]*b[0]),
		}
	}
	c := matrix{cross(m[1], m[2]), cross(m[2], m[0]), cross(m[0], m[1])}
	det := matrix{m[0]}.times(c[0])[0]
	for i := range 3 {
		for j := range 3 {
			inv[i][j] = c[j][i] / det
		}
	}
	return inv
}
