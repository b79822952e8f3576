package artwork

// A sample c of opacity a on a ground w is c a + w (1 - a) when straight, c + w (1 - a) when already multiplied by a
// (Porter and Duff, "Compositing Digital Images", 1984: over). All of these round once, those of 8
// bits to the nearest.

// straight8 lays a straight sample on a ground: (c a + w (255 - a)) / 255.
func straight8(c, a, w uint8) uint8 {
	return uint8((uint32(c)*uint32(a) + uint32(w)*(255-uint32(a)) + 127) / 255)
}

// premultiplied8 lays a premultiplied sample on a ground: c + w (255 - a) / 255. A sample above its opacity, which
// can't be, may come out as white.
func premultiplied8(c, a, w uint8) uint8 {
	return uint8(min(uint32(c)+(uint32(w)*(255-uint32(a))+127)/255, 255))
}

// straight16 lays a straight 16-bit sample on a ground of 8 bits, in 8 bits, cut off after a threshold is added.
func straight16(c, a uint16, w uint8, add threshold) uint8 {
	const full = 65535
	v := uint64(c)*uint64(a) + uint64(w)*257*(full-uint64(a))
	return uint8((2*v + full*uint64(add)) / (full * fullThreshold))
}

// premultiplied16 lays a premultiplied 16-bit sample on a ground of 8 bits, in 8 bits, likewise.
func premultiplied16(c, a uint16, w uint8, add threshold) uint8 {
	const full = 65535
	return narrow16(uint16(min(uint64(c)+(uint64(w)*257*(full-uint64(a))+full/2)/full, full)), add)
}

// narrow16 brings a 16-bit sample to 8 bits, likewise: 65535 / 257 = 255.
func narrow16(v uint16, add threshold) uint8 {
	return uint8((2*uint32(v) + uint32(add)) / fullThreshold)
}
