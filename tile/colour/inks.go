package colour

// InksToRGB turns pixels of cyan, magenta, yellow and black, 0 for no ink and 255 for all, into opaque RGBA in their
// place. No profile is asked: each ink takes its share of one of red, green and blue, black takes its share of all, as
// the standard library's image/color has it: (1 - ink)(1 - black).
func InksToRGB(pix []uint8) {
	for i := 0; i+4 <= len(pix); i += 4 {
		p := pix[i : i+4 : i+4]
		light := 255 - uint32(p[3])
		for c := range 3 {
			p[c] = uint8(((255-uint32(p[c]))*light + 127) / 255)
		}
		p[3] = 255
	}
}
