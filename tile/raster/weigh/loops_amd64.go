package weigh

import "golang.org/x/sys/cpu"

// avx2 tells whether the processor and the system know AVX2, and the shifts of BMI2 that came with it. Tests
// turn it off.
var avx2 = cpu.X86.HasAVX2 && cpu.X86.HasBMI2

// columnsAtOnce is how many columns the loop in AVX2 weighs at once; it weighs no fewer.
const columnsAtOnce = 16

func down(dst []int16, src []byte, stride int, weights []int16) {
	if !avx2 || len(dst) < columnsAtOnce {
		downGeneric(dst, src, stride, weights)
		return
	}
	downAVX2(&dst[0], len(dst), &src[0], stride, &weights[0], len(weights)/2)
}

func across(dst []byte, src []int16, t *Taps) {
	if !avx2 {
		acrossGeneric(dst, src, t)
		return
	}
	acrossAVX2(&dst[0], len(dst), &src[0], &t.first[0], &t.weights[0], t.each/tapsAtOnce)
}

func acrossPixels(dst []byte, src []int16, t *Taps) {
	if !avx2 {
		acrossPixelsGeneric(dst, src, t)
		return
	}
	acrossPixelsAVX2(&dst[0], len(t.first), &src[0], &t.first[0], &t.weights[0], t.each/tapsAtOnce)
}

func lookUp(dst, src []byte, stride int, p Path, kernel *Kernel) {
	if !avx2 {
		lookUpGeneric(dst, src, stride, p, kernel)
		return
	}
	lookUpAVX2(&dst[0], len(dst), &src[0], stride, &p.X[0], &p.Y[0], p.Shift, p.Places, p.Skip, kernel)
}

func lookUpPixels(dst, src []byte, stride int, p Path, kernel *Kernel) {
	if !avx2 {
		lookUpPixelsGeneric(dst, src, stride, p, kernel)
		return
	}
	lookUpPixelsAVX2(&dst[0], len(dst)/4, &src[0], stride, &p.X[0], &p.Y[0], p.Shift, p.Places, p.Skip, kernel)
}

//go:noescape
func downAVX2(dst *int16, n int, src *byte, stride int, weights *int16, pairs int)

//go:noescape
func acrossAVX2(dst *byte, n int, src *int16, first *int32, weights *int16, eights int)

//go:noescape
func acrossPixelsAVX2(dst *byte, n int, src *int16, first *int32, weights *int16, eights int)

//go:noescape
func lookUpAVX2(dst *byte, n int, src *byte, stride int, x, y *int, shift, places uint, skip int, kernel *Kernel)

//go:noescape
func lookUpPixelsAVX2(dst *byte, n int, src *byte, stride int, x, y *int, shift, places uint, skip int, kernel *Kernel)
