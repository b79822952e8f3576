package jpeg

import (
	"bytes"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"testing"
)

// BenchmarkEncode encodes slopes with a photograph's grain, and has the standard library do so too. Run it with -cpu 1.
func BenchmarkEncode(b *testing.B) {
	const width, height, quality = 2048, 1024, 92
	rng := rand.New(rand.NewPCG(11, 0))
	at := func(x, _, component int) byte { return byte(x/9 + 8*component + rng.IntN(8>>min(component, 1))) }
	for _, kind := range []struct {
		name   string
		number int
		chroma image.YCbCrSubsampleRatio
	}{{"grey", 0, half}, {"RGBA", 1, half}, {"4:2:0", 2, half}, {"4:4:4", 3, half}, {"RGBA whole", 1, full},
		{"4:4:4 whole", 3, full}} {
		m := paint(kind.number, image.Rect(0, 0, width, height), at)
		for _, encoder := range []struct {
			name   string
			encode func() (int, error)
		}{
			{"ours", func() (int, error) {
				file, err := Encode(m, quality, kind.chroma)
				return len(file), err
			}},
			{"standard", func() (int, error) {
				var file bytes.Buffer
				err := jpeg.Encode(&file, m, &jpeg.Options{Quality: quality})
				return file.Len(), err
			}},
		} {
			b.Run(kind.name+"/"+encoder.name, func(b *testing.B) {
				size := 0
				for b.Loop() {
					var err error
					if size, err = encoder.encode(); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(width*height*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mpixel/s")
				b.ReportMetric(8*float64(size)/(width*height), "bits/pixel")
			})
		}
	}
}
