package proof

import (
	"context"
	"fmt"
	"image"
	_ "image/jpeg"
	"math"
	"os"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"
)

func TestZZ(t *testing.T) {
	f, err := os.Open("../../examples/clock/clock.jpg")
	if err != nil {
		t.Fatal(err)
	}
	m, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	pic := texture.New(&artwork.Picture{Image: m})
	_ = flip.Ball
	for _, look := range []layout.Look{layout.Bulged, layout.Straight} {
		for _, fn := range []float64{22, 8} {
			for _, w := range []float64{13, 40} {
				p := plan(t, func(s *layout.Setup) {
					s.Look = look
					s.Background = "#000000"
					s.Proportions = 1
					s.DistanceMM = 300
					s.Fill = 0.95
					s.Camera.FNumber = fn
					s.Camera.FrameWidthMM = w
					s.Camera.WidthPx, s.Camera.HeightPx = 1920, 1280
				})
				sc := Scene{Plan: p, Camera: p.Camera, Picture: pic, SeamWidthMM: 0.3}
				v := sc.view()
				v.beside = v.newBeside(context.Background())
				truth := raySet(3000)
				sets := [][]sample{raySet(12), raySet(24), raySet(48), raySet(96), raySet(192), raySet(384)}
				var se, mx [6]float64
				n := 0.0
				for a := 0.0; a < 6.28; a += 0.15 {
					i, j := 960+int(1.08*2.5/w*1920*math.Cos(a)), 640+int(1.08*2.5/w*1920*math.Sin(a))
					tr := v.pastPixel(i, j, truth)
					n++
					for k, s := range sets {
						l := v.pastPixel(i, j, s)
						for c := range l {
							d := float64(lv(l[c]) - lv(tr[c]))
							se[k] += d * d / 3
							mx[k] = max(mx[k], math.Abs(d))
						}
					}
				}
				fmt.Printf("%v f/%g w=%g step %d  reachPx %.1f\n", look, fn, w, v.beside.step, v.edgeBlurMM/p.Camera.PixelMM())
				for k, s := range sets {
					fmt.Printf("   %d rays: rms %.2f max %.2f levels\n", len(s), math.Sqrt(se[k]/n), mx[k])
				}
			}
		}
	}
}

func lv(x float32) float64 {
	v := float64(x)
	if v <= 0.0031308 {
		return 255 * 12.92 * v
	}
	return 255 * (1.055*math.Pow(v, 1/2.4) - 0.055)
}
