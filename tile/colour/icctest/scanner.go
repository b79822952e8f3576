package icctest

import "math"

// Scanner is the profile of a scanner that never was: Adobe RGB's primaries with a power of 1.8, by a table of 16
// bits to XYZ between curves, of version 2.
func Scanner() []byte {
	const mostXYZ = 1 + 32767.0/32768 // 6.3.4.2
	p := Printer("RGB ", "XYZ ", 2, Tag{"A2B0", Lut(3, 17, 2, math.Sqrt, func(v float64) float64 { return v * v },
		func(v []float64) (encoded [3]float64) {
			for i, c := range AdobeRGB.Colorants {
				for j := range encoded {
					encoded[j] += c[j] * math.Pow(v[i]*v[i], 1.8) // the curve undone
				}
			}
			for j := range encoded {
				encoded[j] = math.Sqrt(encoded[j] / mostXYZ)
			}
			return encoded
		})})
	copy(p[12:], "scnr")
	return p
}
