package proof

import (
	"context"
	"testing"

	"dropsheet/layout"
)

// BenchmarkPinhole renders the drop view that the guide shows.
func BenchmarkPinhole(b *testing.B) {
	p := plan(b, nil)
	picture := quarters()
	camera := CloseUp(p, 600, 1.15)
	for b.Loop() {
		Pinhole(p, camera, picture)
	}
	report(b, camera, pinholeSamples)
}

// BenchmarkRender renders a frame of high-definition video, a drop filling most of it, through a lens at f/16.
func BenchmarkRender(b *testing.B) {
	p := plan(b, func(s *layout.Setup) { s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 1920, 1080, 9.6 })
	scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), SeamWidthMM: 0.3}
	for b.Loop() {
		if _, err := scene.Render(context.Background(), nil); err != nil {
			b.Fatal(err)
		}
	}
	report(b, p.Camera, DefaultSamples)
}

func report(b *testing.B, c layout.Camera, samples int) {
	pixels := float64(c.WidthPx*c.HeightPx) * float64(b.N) / 1e6 / b.Elapsed().Seconds()
	b.ReportMetric(pixels, "Mpixel/s")
	b.ReportMetric(pixels*float64(samples), "Mray/s")
}
