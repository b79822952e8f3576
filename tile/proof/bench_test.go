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

// BenchmarkStraightPinhole does so of a straight picture.
func BenchmarkStraightPinhole(b *testing.B) {
	p := plan(b, straight)
	picture := quarters()
	camera := CloseUp(p, 600, 1.15)
	for b.Loop() {
		Pinhole(p, camera, picture)
	}
	report(b, camera, pinholeSamples)
}

// BenchmarkRender renders a frame of high-definition video, a drop filling most of it, through a lens at f/16.
func BenchmarkRender(b *testing.B) { benchmarkRender(b, layout.Bulged, 9.6) }

// BenchmarkStraightRender does so of a straight picture.
func BenchmarkStraightRender(b *testing.B) { benchmarkRender(b, layout.Straight, 9.6) }

// BenchmarkStraightBeside renders a frame in which the drop is small, before a straight picture.
func BenchmarkStraightBeside(b *testing.B) { benchmarkRender(b, layout.Straight, 72) }

func benchmarkRender(b *testing.B, look layout.Look, frameWidthMM float64) {
	p := plan(b, func(s *layout.Setup) {
		s.Look, s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = look, 1920, 1080, frameWidthMM
	})
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
