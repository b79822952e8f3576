package jpeg

import (
	"fmt"
	"image"
	"testing"
)

// Whatever the picture, it decodes to what quantisation leaves of it.
func FuzzEncode(f *testing.F) {
	f.Add(uint8(1), uint8(1), uint8(0), uint8(0), uint8(0), uint8(92), []byte{})
	f.Add(uint8(16), uint8(16), uint8(2), uint8(4), uint8(1), uint8(1), []byte{0, 255, 7})
	f.Add(uint8(17), uint8(40), uint8(3), uint8(5), uint8(2), uint8(50), []byte("\x00\xff"))
	f.Add(uint8(33), uint8(9), uint8(1), uint8(3), uint8(3), uint8(100), []byte("\xff\x00\x00\x80\x41"))
	f.Add(uint8(70), uint8(64), uint8(0), uint8(0), uint8(2), uint8(100), []byte("grains of sand on a beach"))
	f.Add(uint8(5), uint8(90), uint8(7), uint8(1), uint8(7), uint8(75), []byte{200, 10, 10, 10, 10, 10, 10})
	f.Fuzz(func(t *testing.T, width, height uint8, left, top uint8, kind, quality uint8, levels []byte) {
		size := image.Pt(1+int(width)%96, 1+int(height)%96)
		at := image.Pt(3+int(left), 3+int(top))
		if len(levels) == 0 {
			levels = []byte{128}
		}
		next := 0
		whole := paint(int(kind)%kinds, image.Rectangle{at.Sub(image.Pt(3, 2)), at.Add(size).Add(image.Pt(2, 3))},
			func(_, _, _ int) byte {
				next++
				return levels[next%len(levels)]
			})
		m := window(whole, image.Rectangle{at, at.Add(size)})
		q := 1 + int(quality)%100
		requireClose(t, m, q, fmt.Sprintf("kind %d, %v, quality %d", int(kind)%kinds, m.Bounds(), q))
	})
}
