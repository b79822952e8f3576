package texture

// Luminance is how bright the light looks, 0 to 1: the weights of the sRGB primaries (IEC 61966-2-1:1999,
// 5.2, the Y of its matrix).
func (l Light) Luminance() float32 {
	return float32(0.2126*l[0]) + float32(0.7152*l[1]) + float32(0.0722*l[2])
}
