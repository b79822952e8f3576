package weigh

// The look-ups in Go.

func lookUpGeneric(dst, src []byte, stride int, p Path, kernel *Kernel) {
	for i, skip := 0, p.Skip; len(dst) > 0; i, skip = i+1, 0 {
		x, y, stepX, stepY, n := p.piece(i, skip, len(dst))
		lookUpPiece(dst[:n], src, stride, x, y, stepX, stepY, p.Places+p.Shift, kernel)
		dst = dst[n:]
	}
}

// piece is where a piece of the path begins if some of its places are skipped, its step, and how many places it has, n at most.
func (p Path) piece(i, skip, n int) (x, y, stepX, stepY, places int) {
	stepX, stepY = p.X[i+1]-p.X[i], p.Y[i+1]-p.Y[i]
	return p.X[i]<<p.Shift + skip*stepX, p.Y[i]<<p.Shift + skip*stepY, stepX, stepY, min(n, 1<<p.Shift-skip)
}

// lookUpPiece weighs two columns at once, in the halves of one word: in two's complement what the lower half borrows from the upper comes back when it is taken out.
func lookUpPiece(dst, src []byte, stride, x, y, stepX, stepY int, places uint, kernel *Kernel) {
	places &= 63 // tells the compiler that the shifts are small
	toPhase := (places - PhaseBits) & 63
	for i := range dst {
		wx, wy := &kernel[x>>toPhase&(1<<PhaseBits-1)], &kernel[y>>toPhase&(1<<PhaseBits-1)]
		at := (y>>places)*stride + x>>places
		const round = middleRound<<32 + middleRound
		a, b, c := int64(round), int64(round), int64(round)
		for k := range KernelTaps {
			p := src[at : at+KernelTaps : at+KernelTaps]
			w := int64(wy[k])
			a += w * (int64(p[0]) + int64(p[1])<<32)
			b += w * (int64(p[2]) + int64(p[3])<<32)
			c += w * (int64(p[4]) + int64(p[5])<<32)
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

func lookUpPixelsGeneric(dst, src []byte, stride int, p Path, kernel *Kernel) {
	places := (p.Places + p.Shift) & 63
	toPhase := (places - PhaseBits) & 63
	for i, skip := 0, p.Skip; len(dst) > 0; i, skip = i+1, 0 {
		x, y, stepX, stepY, n := p.piece(i, skip, len(dst)/4)
		for range n {
			wx, wy := &kernel[x>>toPhase&(1<<PhaseBits-1)], &kernel[y>>toPhase&(1<<PhaseBits-1)]
			at := (y>>places)*stride + x>>places*4
			for c := range 4 {
				sum := int32(levelRound)
				for l := range KernelTaps {
					down := int32(middleRound)
					for k := range KernelTaps {
						down += int32(wy[k]) * int32(src[at+k*stride+4*l+c])
					}
					sum += down >> middleShift * int32(wx[l])
				}
				dst[c] = clip(sum >> levelShift)
			}
			dst, x, y = dst[4:], x+stepX, y+stepY
		}
	}
}
