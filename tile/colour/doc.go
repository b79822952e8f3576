// Package colour is what pixel levels mean as light: sRGB's curve and primaries, colour profiles (read, checked and
// written), and inks. It knows no files and no paper.
//
// Frame: encoded values and light both run from 0 to 1; a level of 8 bits is an encoded value times 255.
// Light is linear and, unless a name says otherwise, of sRGB's red, green and blue.
package colour
