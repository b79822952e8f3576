package colour

import "sync"

// SRGBProfile is the profile of pictures that are sRGB: of three components, or of grey with its curve.
func SRGBProfile(grey bool) []byte {
	if grey {
		return greyProfile()
	}
	return srgbProfile()
}

// srgbProfile is sRGB as a three-component matrix-based display profile (ICC.1:2001-04, 6.3.2).
var srgbProfile = sync.OnceValue(func() []byte {
	curve := curveData(SRGBToLight)
	colorants := srgbColorants()
	return displayProfile(rgbSignature, []tag{
		{"desc", descriptionData("sRGB IEC61966-2.1")},
		{"cprt", textData("No copyright, use freely")},
		{"wtpt", xyzData(d50)},
		{"rXYZ", xyzData(colorants[0])},
		{"gXYZ", xyzData(colorants[1])},
		{"bXYZ", xyzData(colorants[2])},
		{"rTRC", curve}, {"gTRC", curve}, {"bTRC", curve},
	})
})

// greyProfile is grey with the curve of sRGB, a monochrome display profile: a grey pixel looks like an RGB
// pixel of that value thrice.
var greyProfile = sync.OnceValue(func() []byte {
	return displayProfile(greySignature, []tag{
		{"desc", descriptionData("Grey with the sRGB curve")},
		{"cprt", textData("No copyright, use freely")},
		{"wtpt", xyzData(d50)},
		{"kTRC", curveData(SRGBToLight)},
	})
})
