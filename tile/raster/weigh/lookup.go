package weigh

// The look-ups in Go.

func lookUpGeneric(dst, src []byte, stride int, p Path, kernel *Kernel) {
	lookUpChannel(dst, src, stride, 1, p, kernel)
}

func lookUpPixelsGeneric(dst, src []byte, stride int, p Path, kernel *Kernel) {
	for c := range 4 {
		lookUpChannel(dst[c:], src[c:], stride, 4, p, kernel)
	}
}

// lookUpChannel looks up one channel of pixels that are so many bytes apart, in dst and in src.
func lookUpChannel(dst, src []byte, stride, apart int, p Path, kernel *Kernel) {
	for i, skip := 0, p.Skip; len(dst) > 0; i, skip = i+1, 0 {
		stepX, stepY := p.X[i+1]-p.X[i], p.Y[i+1]-p.Y[i]
		n := min(len(dst), (1<<p.Shift-skip)*apart)
		lookUpPiece(dst[:n], src, stride, apart, p.X[i]<<p.Shift+skip*stepX, p.Y[i]<<p.Shift+skip*stepY, stepX, stepY,
			p.Places+p.Shift, kernel)
		dst = dst[n:]
	}
}

// lookUpPiece weighs two columns at once, in the halves of one word: in two's complement what the lower half
// borrows from the upper comes back when it is taken out.
func lookUpPiece(dst, src []byte, stride, apart, x, y, stepX, stepY int, places uint, kernel *Kernel) {
	places &= 63 // tells the compiler that the shifts are small
	toPhase := (places - PhaseBits) & 63
	for i := 0; i < len(dst); i += apart {
		wx, wy := &kernel[x>>toPhase&(1<<PhaseBits-1)], &kernel[y>>toPhase&(1<<PhaseBits-1)]
		at := (y>>places)*stride + x>>places*apart
		const round = middleRound<<32 + middleRound
		a, b, c := int64(round), int64(round), int64(round)
		for k := range KernelTaps {
			w := int64(wy[k])
			if apart == 1 { // told apart, since the compiler then needs no multiplications to find pixels
				p := src[at : at+KernelTaps : at+KernelTaps]
				a += w * (int64(p[0]) + int64(p[1])<<32)
				b += w * (int64(p[2]) + int64(p[3])<<32)
				c += w * (int64(p[4]) + int64(p[5])<<32)
			} else {
				p := src[at:][:(KernelTaps-1)*apart+1]
				a += w * (int64(p[0]) + int64(p[apart])<<32)
				b += w * (int64(p[2*apart]) + int64(p[3*apart])<<32)
				c += w * (int64(p[4*apart]) + int64(p[5*apart])<<32)
			}
			at += stride
		}
		halves := func(v int64, wLow, wHigh int16) int32 {
			low := int32(v)
			high := int32((v - int64(low)) >> 32)
			return low>>middleShift*int32(wLow) + high>>middleShift*int32(wHigh)
		}
		sum := halves(a, wx[0], wx[1]) + halves(b, wx[2], wx[3]) + halves(c, wx[4], wx[5])
		dst[i] = clip((sum + levelRound) >> levelShift)
		x, y = x+stepX, y+stepY
	}
}
