// Package srgb is the curve between pixel levels and light, and the primaries that the light is of.
//
// Frame: encoded values and linear light both run from 0 to 1; a level of 8 bits is an encoded value times 255.
package srgb

import "math"

// Linear is the light of an encoded value (IEC 61966-2-1:1999, 5.2).
func Linear(encoded float64) float64 {
	if encoded <= 0.04045 {
		return encoded / 12.92
	}
	return math.Pow((encoded+0.055)/1.055, 2.4)
}

// Encoded is the value that stands for light: Linear undone.
func Encoded(linear float64) float64 {
	if linear <= 0.0031308 {
		return 12.92 * linear
	}
	return 1.055*math.Pow(linear, 1/2.4) - 0.055
}
