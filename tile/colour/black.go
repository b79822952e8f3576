package colour

import "slices"

// compensateBlack makes the darkest colour that a press prints black, and all others darker with it, so that pictures
// keep their depth: XYZ less that of a neutral as dark, over what is left of the white (black-point compensation, ISO
// 18619:2015, recalled from memory). That colour is the one that the profile itself gives for black, or all inks
// where it does not say; it counts as L* 50 at most.
func (d *device) compensateBlack(profile []byte) {
	darkest := d.of(slices.Repeat([]float64{1}, d.components))
	if inks := blackInks(profile, d.components); inks != nil {
		darkest = d.of(inks)
	}
	black, direct := min(share(darkest[1]), labToXYZ(50, 0, 0)[1]), d.xyz
	d.xyz = func(values []float64) [3]float64 {
		xyz := direct(values)
		for i, white := range d50 {
			xyz[i] = (xyz[i] - float64(black*white)) / (1 - black)
		}
		return xyz
	}
}

// blackInks is what a profile's table of the other way (B2A0) gives for black; nil where there is none that can be
// read.
func blackInks(profile []byte, components int) []float64 {
	data := tagOf(profile, "B2A0")
	if data == nil || string(data[:min(4, len(data))]) == "mAB " {
		return nil
	}
	t, err := readStages(data, connected, components)
	if err != nil {
		return nil
	}
	black := pcsBlack(profile, t.legacy)
	if string(profile[20:24]) == "XYZ " {
		black = lutMatrix(data).times(black)
	}
	return t.rest(t.in.of(black[:]))
}

// lutMatrix is the matrix of a lut8Type or lut16Type, which XYZ goes through before the curves (ICC.1:2010, 10.10 and
// 10.11, recalled from memory). The table was read, so its head is there.
func lutMatrix(data []byte) (m matrix) {
	for i := range 9 {
		m[i/3][i%3] = fixed16(data[12+4*i:])
	}
	return m
}

// pcsBlack is black as a table the other way takes it: a neutral without light or, in version 4, with that which the
// reference medium's black gives back, 0.34731 % (ICC.1:2010, 6.3.3, recalled from memory).
func pcsBlack(profile []byte, legacy bool) (black [3]float64) {
	light := 0.0
	if profile[8] >= 4 {
		light = 0.0034731
	}
	if string(profile[20:24]) != "Lab " { // 7.2.7
		for i, white := range d50 {
			black[i] = light * white / (1 + 32767.0/32768)
		}
		return black
	}
	black = [3]float64{light * 24389 / 27 / 100, 128.0 / 255, 128.0 / 255} // L* is light times 24389/27 down there
	if legacy {
		for i := range black {
			black[i] *= 65280.0 / 65535
		}
	}
	return black
}
