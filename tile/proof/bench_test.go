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
func BenchmarkRender(b *testing.B) { benchmarkRender(b, layout.Bulged, 9.6, Motion{}) }

// smeared is 1/25000 s after a fall of 20 cm: 0.079 mm, or 16 pixels of a frame 9.6 mm wide.
var smeared = Motion{SpeedMMPerS: 1981, ExposureS: 1.0 / 25000}

// BenchmarkSmearedRender renders the same of a drop that moves.
func BenchmarkSmearedRender(b *testing.B) { benchmarkRender(b, layout.Bulged, 9.6, smeared) }

// BenchmarkStraightRender does so of a straight picture.
func BenchmarkStraightRender(b *testing.B) { benchmarkRender(b, layout.Straight, 9.6, Motion{}) }

// BenchmarkSmearedStraightRender does so of a drop that moves.
func BenchmarkSmearedStraightRender(b *testing.B) { benchmarkRender(b, layout.Straight, 9.6, smeared) }

// BenchmarkStraightBeside renders a frame in which the drop is small, before a straight picture.
func BenchmarkStraightBeside(b *testing.B) { benchmarkRender(b, layout.Straight, 72, Motion{}) }

// BenchmarkHangingRender renders a frame of a straight picture in a drop that hangs.
func BenchmarkHangingRender(b *testing.B) {
	p := hangingPlan(b, nil)
	scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), SeamWidthMM: 0.3}
	for b.Loop() {
		if _, err := scene.Render(context.Background(), nil); err != nil {
			b.Fatal(err)
		}
	}
	report(b, p.Camera, DefaultSamples)
}

func benchmarkRender(b *testing.B, look layout.Look, frameWidthMM float64, motion Motion) {
	p := plan(b, func(s *layout.Setup) {
		s.Look, s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = look, 1920, 1080, frameWidthMM
	})
	scene := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), SeamWidthMM: 0.3, Motion: motion}
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
