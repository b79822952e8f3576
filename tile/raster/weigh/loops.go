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
