package pdf

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"sync"

	"dropsheet/tile/colour"
)

// CheckProfile says whether an ICC profile can be the colour space of a grey or an RGB picture: it must be
// whole, of version 2 or 4, for the right number of components, and of a class that a PDF takes (ISO 32000-1,
// 8.6.5.5). The error says what is wrong with it. Clauses in this file are recalled from memory.
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
	curve := iccCurve(colour.SRGBToLight)
	colorants := colour.SRGBColorants()
	return iccProfile("RGB ", []iccTag{
		{"desc", iccDescription("sRGB IEC61966-2.1")},
		{"cprt", iccText("No copyright, use freely")},
		{"wtpt", iccXYZ(colour.D50)},
		{"rXYZ", iccXYZ(colorants[0])},
		{"gXYZ", iccXYZ(colorants[1])},
		{"bXYZ", iccXYZ(colorants[2])},
		{"rTRC", curve}, {"gTRC", curve}, {"bTRC", curve},
	})
})

// grayProfile is grey with the curve of sRGB, a monochrome display profile: a grey pixel looks like an RGB
// pixel of that value thrice.
var grayProfile = sync.OnceValue(func() []byte {
	return iccProfile("GRAY", []iccTag{
		{"desc", iccDescription("Grey with the sRGB curve")},
		{"cprt", iccText("No copyright, use freely")},
		{"wtpt", iccXYZ(colour.D50)},
		{"kTRC", iccCurve(colour.SRGBToLight)},
	})
})
