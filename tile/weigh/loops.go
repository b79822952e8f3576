package weigh

// The loops in Go.

func downGeneric(dst []int16, src []byte, stride int, weights []int16) {
	const chunk = 256 // sums stay in the nearest memory
	var all [chunk]int32
	for from := 0; from < len(dst); from += chunk {
		part := dst[from:min(from+chunk, len(dst))]
		sums := all[:len(part)]
		for i := range sums {
			sums[i] = middleRound
		}
		for k := 0; k < len(weights); k += 2 {
			w, v := int32(weights[k]), int32(weights[k+1])
			row := src[k*stride+from:][:len(sums)]
			next := src[(k+1)*stride+from:][:len(sums)]
			for i := range sums {
				sums[i] += w*int32(row[i]) + v*int32(next[i])
			}
		}
		for i := range part {
			part[i] = int16(sums[i] >> middleShift)
		}
	}
}

func acrossGeneric(dst []byte, src []int16, t *Taps) {
	for i := range dst {
		sum := int32(levelRound)
		weights := t.weights[i*t.each:][:t.each]
		for k, v := range src[t.first[i]:][:len(weights)] {
			sum += int32(weights[k]) * int32(v)
		}
		dst[i] = clip(sum >> levelShift)
	}
}

func acrossPixelsGeneric(dst []byte, src []int16, t *Taps) {
	for i, first := range t.first {
		a, b, c, d := int32(levelRound), int32(levelRound), int32(levelRound), int32(levelRound)
		row := src[4*int(first):]
		for _, w := range t.weights[i*t.each:][:t.each] {
			p, w := row[:4:4], int32(w)
			a, b, c, d = a+w*int32(p[0]), b+w*int32(p[1]), c+w*int32(p[2]), d+w*int32(p[3])
			row = row[4:]
		}
		to := dst[4*i:][:4]
		to[0], to[1], to[2], to[3] = clip(a>>levelShift), clip(b>>levelShift), clip(c>>levelShift), clip(d>>levelShift)
	}
}

func lookUpGeneric(dst, src []byte, stride int, p Path, kernel *Kernel) {
	for i, skip := 0, p.Skip; len(dst) > 0; i, skip = i+1, 0 {
		n := min(len(dst), 1<<p.Shift-skip)
		stepX, stepY := p.X[i+1]-p.X[i], p.Y[i+1]-p.Y[i]
		lookUpPiece(dst[:n], src, stride, p.X[i]<<p.Shift+skip*stepX, p.Y[i]<<p.Shift+skip*stepY, stepX, stepY, p.Places+p.Shift, kernel)
		dst = dst[n:]
	}
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
