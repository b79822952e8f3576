package pdf

import (
	"fmt"
	"image"
	"io"
	"math/rand/v2"
	"testing"
)

// BenchmarkAppend writes whole files, drawing and picture lookup included; the bytes are those of the pictures.
func BenchmarkAppend(b *testing.B) {
	for _, pages := range []int{15, 60, 240, 500} {
		b.Run(fmt.Sprintf("pages=%d", pages), func(b *testing.B) {
			picture := Picture{WidthPx: 2480, HeightPx: 3508, Filter: DCT, Data: make([]byte, 2<<20)}
			b.SetBytes(int64(pages * len(picture.Data)))
			for b.Loop() {
				d := New("bench")
				for range pages {
					d.AddPage(210, 297)
					d.SetBoxes(rect(10, 10, 190, 277), rect(8, 8, 194, 281))
					d.Place(rect(8, 8, 194, 281))
				}
				if err := d.Stream(io.Discard, func(PictureID) (Picture, error) { return picture, nil }); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkEncode(b *testing.B) {
	grainy := image.NewRGBA(image.Rect(0, 0, 2048, 1024)) // a slope with a photograph's grain
	rng := rand.New(rand.NewPCG(1, 2))
	for i := range grainy.Pix {
		grainy.Pix[i] = byte(i/4%2048/9 + rng.IntN(8))
	}
	ycc := toYCbCr(grainy)
	tests := []struct {
		name   string
		encode func() (Picture, error)
	}{
		{"JPEG/RGBA", func() (Picture, error) { return EncodeJPEG(grainy, 92, image.YCbCrSubsampleRatio420) }},
		{"JPEG/YCbCr", func() (Picture, error) { return EncodeJPEG(ycc, 92, image.YCbCrSubsampleRatio420) }},
		{"Flate/RGBA", func() (Picture, error) { return EncodeFlate(grainy) }},
		{"Flate/YCbCr", func() (Picture, error) { return EncodeFlate(ycc) }},
	}
	for _, test := range tests {
		b.Run(test.name, func(b *testing.B) {
			for b.Loop() {
				if _, err := test.encode(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(2048*1024*b.N)/b.Elapsed().Seconds()/1e6, "Mpixel/s")
		})
	}
}
