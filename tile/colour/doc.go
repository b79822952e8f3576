// Package colour is what pixel levels mean as light: the curve of sRGB and the primaries that its light is of.
//
// Frame: encoded values and light both run from 0 to 1; a level of 8 bits is an encoded value times 255.
// Light is linear and, unless a name says otherwise, of sRGB's red, green and blue.
package colour
