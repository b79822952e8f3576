package artwork

// A sample c of opacity a on a ground w is c a + w (1 - a) when straight, c + w (1 - a) when already multiplied by a
// (Porter and Duff, "Compositing Digital Images", 1984: over). All of these round once, to the nearest.

// straight8 lays a straight sample on a ground: (c a + w (255 - a)) / 255.
func straight8(c, a, w uint8) uint8 {
	return uint8((uint32(c)*uint32(a) + uint32(w)*(255-uint32(a)) + 127) / 255)
}

// premultiplied8 lays a premultiplied sample on a ground: c + w (255 - a) / 255. A sample above its opacity, which
// can't be, may come out as white.
func premultiplied8(c, a, w uint8) uint8 {
	return uint8(min(uint32(c)+(uint32(w)*(255-uint32(a))+127)/255, 255))
}

// straight16 lays a straight 16-bit sample on a ground of 8 bits, in 8 bits.
func straight16(c, a uint16, w uint8) uint8 {
	const full = 65535
	v := uint64(c)*uint64(a) + uint64(w)*257*(full-uint64(a))
	return uint8((v + full*257/2) / (full * 257))
}

// premultiplied16 lays a premultiplied 16-bit sample on a ground of 8 bits, in 8 bits.
func premultiplied16(c, a uint16, w uint8) uint8 {
	const full = 65535
	return round16(uint16(min(uint64(c)+(uint64(w)*257*(full-uint64(a))+full/2)/full, full)))
}

// round16 rounds a 16-bit sample to 8 bits: 65535 / 257 = 255.
func round16(v uint16) uint8 { return uint8((uint32(v) + 128) / 257) }
