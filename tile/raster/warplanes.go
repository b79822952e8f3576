package raster

// lanes holds three levels side by side in one word, so that a multiplication weighs all three: 21 bits each, red lowest. Integers give the same pixels on every processor.
//
// There are two forms. A half counts half levels from -128 on: level l is 2l + 256, in 11 bits, so that ten bits shifted out of the next lane do not meet it. A sum is what halves times weights add up to, plus sumBias: level l is 2048 l + 2^19. Weights
// add up to 1024 and may be below 0; in two's complement that does no harm as long as no lane of the whole sum leaves 0 to 2^21. Lanczos weights for one axis add up to at most 1.3 where
// they are above 0 and at least -0.3 where below, so that levels filtered along both axes stay within -0.78 and 1.78 times 255: within 117 thousand and 1454 thousand.
type lanes uint64

const (
	laneBits    = 21
	laneOne     = lanes(1 | 1<<laneBits | 1<<(2*laneBits))
	laneMask    = 1<<laneBits - 1
	weighBits   = 10
	halfZero    = 256
	sumBias     = laneOne << 18 // weights of 1024 bring as much again
	sumZero     = 1 << 19
	halfMask    = laneOne * 0x7ff
	phaseBits   = 7
	fixedBits   = 16 // binary places of coordinates
	kernelTaps  = 2 * lobes
	kernelFirst = 1 - lobes // of the taps, from the pixel that a coordinate lies in or right of
)

// half packs levels.
func half(r, g, b uint8) lanes {
	return laneOne*halfZero + lanes(r)<<1 + lanes(g)<<(laneBits+1) + lanes(b)<<(2*laneBits+1)
}

// halve makes a half of a sum along one axis, rounded.
func (sum lanes) halve() lanes {
	return (sum - laneOne*(sumZero>>1) + laneOne<<(weighBits-1)) >> weighBits & halfMask
}

// clip makes a half of any sum, its levels brought into 0 to 255.
func (sum lanes) clip() (half lanes) {
	for c := uint(0); c < 3*laneBits; c += laneBits {
		v := (int(sum>>c&laneMask) - sumZero>>1 + 1<<(weighBits-1)) >> weighBits
		half |= lanes(max(halfZero, min(v, halfZero+2*255))) << c
	}
	return half
}

// levels are a sum's levels, rounded and brought into 0 to 255.
func (sum lanes) levels() (r, g, b uint8) {
	level := func(lane lanes) uint8 {
		return uint8(max(0, min(255, (int(lane&laneMask)-sumZero+1<<weighBits)>>(weighBits+1))))
	}
	return level(sum), level(sum >> laneBits), level(sum >> (2 * laneBits))
}

// phases are the weights of the Lanczos kernel's six taps for a coordinate that lies so many 128ths of a pixel right of its third.
var phases = func() (all [1 << phaseBits][kernelTaps]lanes) {
	for i := range all {
		copy(all[i][:], laneWeights(kernelTaps, float64(i)/(1<<phaseBits)-kernelFirst, 1))
	}
	return all
}()

// laneWeights are the weights of n Lanczos taps, one apart from 0 on, about a centre; the kernel is scale times as wide as for interpolation.
func laneWeights(n int, centre, scale float64) []lanes {
	real, sum := make([]float64, n), 0.0
	for k := range real {
		real[k] = lanczos((float64(k) - centre) / scale)
		sum += real[k]
	}
	weights := make([]lanes, n)
	for k, w := range wholeWeights(real, sum, weighBits) {
		weights[k] = lanes(int64(w))
	}
	return weights
}

// sampler looks up the part of an artwork that a block shows.
type sampler struct {
	pix    []lanes // halves
	stride int
}

// run looks up a run of places that lie on a straight line, from (x, y) on, stepping by (stepX, stepY): the kernel's first tap, with places binary places of which
// the uppermost phaseBits choose the phase.
func (s sampler) run(dst []lanes, x, y, stepX, stepY int, places uint) {
	places &= 63 // tells the compiler that the shifts are small
	toPhase := (places - phaseBits) & 63
	for i := range dst {
		wx, wy := &phases[x>>toPhase&(1<<phaseBits-1)], &phases[y>>toPhase&(1<<phaseBits-1)]
		at := (y>>places)*s.stride + x>>places
		sum := sumBias
		for k := range wy {
			p := s.pix[at : at+kernelTaps : at+kernelTaps]
			across := p[0]*wx[0] + p[1]*wx[1] + p[2]*wx[2] + p[3]*wx[3] + p[4]*wx[4] + p[5]*wx[5] + sumBias
			sum += across.halve() * wy[k]
			at += s.stride
		}
		dst[i] = sum
		x, y = x+stepX, y+stepY
	}
}
