package artwork

// A sample c of opacity a on white w is c a + w (1 - a) when straight, c + w (1 - a) when already multiplied by a
// (Porter and Duff, "Compositing Digital Images", 1984: over). All of these round once, to the nearest.

// straight8 lays a straight sample on white: (c a + 255 (255 - a)) / 255.
func straight8(c, a uint8) uint8 {
	return uint8((uint32(c)*uint32(a) + 255*(255-uint32(a)) + 127) / 255)
}

// premultiplied8 lays a premultiplied sample on white: c + 255 - a. A sample above its opacity, which can't
// be, is white.
func premultiplied8(c, a uint8) uint8 {
	return uint8(min(uint32(c)+255-uint32(a), 255))
}

// straight16 lays a straight 16-bit sample on white, in 8 bits.
func straight16(c, a uint16) uint8 {
	const full = 65535
	v := uint64(c)*uint64(a) + full*(full-uint64(a))
	return uint8((v + full*257/2) / (full * 257))
}

// premultiplied16 lays a premultiplied 16-bit sample on white, in 8 bits.
func premultiplied16(c, a uint16) uint8 {
	return round16(uint16(min(uint32(c)+65535-uint32(a), 65535)))
}

// round16 rounds a 16-bit sample to 8 bits: 65535 / 257 = 255.
func round16(v uint16) uint8 { return uint8((uint32(v) + 128) / 257) }
