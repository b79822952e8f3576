package raster

import (
	"fmt"
	"image"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
)

// BenchmarkWarp cuts the middle of straight prints that show the artwork's own pixels, and three of them on a
// grid pixel, and a part between the middle and the rim, where the map stretches one way more than the other.
func BenchmarkWarp(b *testing.B) {
	p := bentPlan(b, 1.5, func(s *layout.Setup) { s.Look = layout.Straight })
	h, on := p.Hang(), p.PictureOnBoard()
	for _, kind := range []string{"grey", "colour", "4:2:0"} {
		for _, shrink := range []float64{1, 3} {
			const w = 4500
			art := noise(kind, w, w*2/3, rand.New(rand.NewSource(1)))
			own := NewBentGrid(h, on, w, w*2/3, units.PerInch(1e6))
			g := NewBentGrid(h, on, w, w*2/3, units.PerMM(own.Resolution(on).PixelsPerMM()/shrink))
			s := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, g, half).Hang(h, on)
			for _, c := range []struct {
				where string
				at    float64
			}{{"middle", 0.5}, {"aslant", 0.25}} {
				x := int(c.at * float64(g.WidthPx))
				r := image.Rect(x-300, x-300, x+300, x+300)
				b.Run(fmt.Sprintf("%s/%g to 1/%s", kind, shrink, c.where), func(b *testing.B) {
					for b.Loop() {
						s.Cut(r)
					}
					b.ReportMetric(float64(r.Dx()*r.Dy())*float64(b.N)/1e6/b.Elapsed().Seconds(), "Mpixel/s")
				})
			}
		}
	}
}

// BenchmarkFlat is what shrinking a flat picture threefold takes, to compare with.
func BenchmarkFlat(b *testing.B) {
	for _, kind := range []string{"grey", "colour", "4:2:0"} {
		art := noise(kind, 4500, 3000, rand.New(rand.NewSource(1)))
		s := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{1500, 1000}, half)
		r := image.Rect(300, 200, 900, 800)
		b.Run(kind+"/3 to 1", func(b *testing.B) {
			for b.Loop() {
				s.Cut(r)
			}
			b.ReportMetric(float64(r.Dx()*r.Dy())*float64(b.N)/1e6/b.Elapsed().Seconds(), "Mpixel/s")
		})
	}
}
