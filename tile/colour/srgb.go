package colour

import "math"

// SRGBToLight is the light of an encoded value (IEC 61966-2-1:1999, 5.2).
func SRGBToLight(encoded float64) float64 {
	if encoded <= 0.04045 {
		return encoded / 12.92
	}
	return math.Pow((encoded+0.055)/1.055, 2.4)
}

// LightToSRGB is the value that stands for light: SRGBToLight undone.
func LightToSRGB(linear float64) float64 {
	if linear <= 0.0031308 {
		return 12.92 * linear
	}
	return 1.055*math.Pow(linear, 1/2.4) - 0.055
}
