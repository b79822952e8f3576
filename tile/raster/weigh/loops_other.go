//go:build !amd64

package weigh

func down(dst []int16, src []byte, stride int, weights []int16) {
	downGeneric(dst, src, stride, weights)
}

func across(dst []byte, src []int16, t *Taps) { acrossGeneric(dst, src, t) }

func acrossPixels(dst []byte, src []int16, t *Taps) { acrossPixelsGeneric(dst, src, t) }

func lookUp(dst, src []byte, stride int, p Path, kernel *Kernel) {
	lookUpGeneric(dst, src, stride, p, kernel)
}

func lookUpPixels(dst, src []byte, stride int, p Path, kernel *Kernel) {
	lookUpPixelsGeneric(dst, src, stride, p, kernel)
}
