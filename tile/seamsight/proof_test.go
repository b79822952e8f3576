package seamsight_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/proof"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// field is one figure for every pixel of a frame, with the sums of all pixels above and to the left, which
// give the mean of any box.
type field struct {
	w, h int
	v    []float64
	sums []float64
}

func newField(w, h int, v []float64) field {
	f := field{w, h, v, make([]float64, (w+1)*(h+1))}
	for y := range h {
		row := 0.0
		for x := range w {
			row += v[y*w+x]
			f.sums[(y+1)*(w+1)+x+1] = f.sums[y*(w+1)+x+1] + row
		}
	}
	return f
}

// box is the mean over a square about a point, as far as it lies in the frame.
func (f field) box(x, y, side float64) float64 {
	whole := func(v float64, n int) int { return int(max(0, min(math.Round(v), float64(n)))) }
	x0, y0 := min(whole(x-side/2, f.w), f.w-1), min(whole(y-side/2, f.h), f.h-1)
	x1, y1 := max(whole(x+side/2, f.w), x0+1), max(whole(y+side/2, f.h), y0+1)
	s := func(x, y int) float64 { return f.sums[y*(f.w+1)+x] }
	return (s(x1, y1) - s(x0, y1) - s(x1, y0) + s(x0, y0)) / float64((x1-x0)*(y1-y0))
}

// at reads the nearest pixel.
func (f field) at(x, y float64) float64 {
	i, j := max(0, min(int(x), f.w-1)), max(0, min(int(y), f.h-1))
	return f.v[j*f.w+i]
}

// frames are a proof without seams, its square, and what seams change in it, all of luminance in linear light.
type frames struct{ without, squares, change field }

func rendered(t testing.TB, p layout.Plan, picture *texture.Texture, seamMM float64, samples int) frames {
	w, h := p.Camera.WidthPx, p.Camera.HeightPx
	luminance := func(seamMM float64) []float64 {
		frame, err := proof.Scene{Plan: p, Camera: p.Camera, Picture: picture, SeamWidthMM: seamMM,
			Samples: samples}.Render(context.Background(), nil)
		require.NoError(t, err)
		out := make([]float64, w*h)
		for i := range out {
			out[i] = float64(texture.Linear(frame.RGBAAt(i%w, i/w)).Luminance())
		}
		return out
	}
	without, change := luminance(0), luminance(seamMM)
	for i := range change {
		change[i] -= without[i]
	}
	squares := make([]float64, w*h)
	for i, v := range without {
		squares[i] = v * v
	}
	return frames{newField(w, h, without), newField(w, h, squares), newField(w, h, change)}
}

// contrast is the Weber contrast of a seam in the frames, at a point of it with the direction across it, and
// the light without it. Along the seam a few pixels are averaged, since a frame of 8 bits has steps as large
// as what is just seen.
func (f frames) contrast(at layout.FramePoint, nx, ny, visiblePx float64) (contrast, light float64) {
	const alongPx = 4
	peak := 0.0
	for aside := -visiblePx / 2; aside <= visiblePx/2; aside += 0.5 {
		mean := 0.0
		for along := -alongPx; along <= alongPx; along++ {
			mean += f.change.at(at.XPx+aside*nx-float64(along)*ny, at.YPx+aside*ny+float64(along)*nx) / (2*alongPx + 1)
		}
		peak = max(peak, math.Abs(mean))
	}
	light = f.without.box(at.XPx, at.YPx, 1) // which the lens has averaged
	return peak / (light + seamsight.Flare), light
}

// threshold is what the frames' own pixels ask for: those of a square of some line widths about the point.
func (f frames) threshold(at layout.FramePoint, light, visiblePx float64) float64 {
	side := seamsight.Cells * visiblePx
	mean, square := f.without.box(at.XPx, at.YPx, side), f.squares.box(at.XPx, at.YPx, side)
	spread := math.Sqrt(max(0, square-mean*mean))
	return seamsight.Threshold(light, spread/(light+seamsight.Flare), visiblePx)
}

// piece is what the frames and the model say of one piece of seam.
type piece struct {
	contrast, threshold float64 // by the frames
	model               seamsight.Sighting
}

// times is the frames' contrast as a multiple of their threshold.
func (p piece) times() float64 { return p.contrast / p.threshold }

// inside tells a point from one that was brought back to the frame's edge.
func (f frames) inside(p layout.FramePoint) bool {
	return p.XPx > 0 && p.YPx > 0 && p.XPx < float64(f.change.w) && p.YPx < float64(f.change.h)
}

// compared goes along a seam on one path. Pieces beyond the frame are left out, and those near the seam's
// ends: there another seam crosses, which the frames show too and the model counts by itself.
func (f frames) compared(s seamsight.Seam, path seamsight.Path) (out []piece) {
	view := func(i int) seamsight.Sighting { return s.Samples[i].Sightings[path] }
	last := len(s.Samples) - 1
	for i := 1; i < last; i++ {
		here, before, after := view(i), view(i-1), view(i+1)
		tx, ty := after.Frame.XPx-before.Frame.XPx, after.Frame.YPx-before.Frame.YPx
		length := math.Hypot(tx, ty)
		if min(here.Verdict, before.Verdict, after.Verdict) == seamsight.OutOfSight || length == 0 || !f.inside(here.Frame) {
			continue
		}
		near := func(end seamsight.Sighting) bool {
			return end.Verdict != seamsight.OutOfSight &&
				math.Hypot(end.Frame.XPx-here.Frame.XPx, end.Frame.YPx-here.Frame.YPx) < 1.5*here.VisiblePx+4
		}
		if near(view(0)) || near(view(last)) {
			continue
		}
		contrast, light := f.contrast(here.Frame, -ty/length, tx/length, here.VisiblePx)
		out = append(out, piece{contrast, f.threshold(here.Frame, light, here.VisiblePx), here})
	}
	return out
}

// On even ground nothing counts but the optics: the contrast of the seams in the frames is the model's, for
// every body and on both paths. The proof needs some hundred rays a pixel for that; wide open, near the rim,
// where rays from the pupil's edge no longer land in proportion, the model tells up to twice too little and
// is not held to it.
func TestContrastAgreesWithTheProof(t *testing.T) {
	const wideMM = 1.0 // so that the steps of 8 bits count for little
	picture := even(0.1)
	middle := func(s *layout.Setup) { s.Fill = 0.75 } // four columns and two rows: seams cross on the axis
	for _, c := range []struct {
		name          string
		change        func(*layout.Setup)
		path          seamsight.Path
		width, height int
	}{
		{"ball", middle, seamsight.Through, 110, 34},
		{"ball, f/45", func(s *layout.Setup) { middle(s); s.Camera.FNumber = 45 }, seamsight.Through, 110, 34},
		{"beside a ball", func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 100, 22 }, seamsight.Direct,
			600, 30},
		{"upright rod", rod(flip.UprightRod), seamsight.Through, 110, 34},
		{"level rod", rod(flip.LevelRod), seamsight.Through, 34, 110},
		{"oblate", func(s *layout.Setup) { middle(s); s.Drop.HeightOverWidth = 0.85 }, seamsight.Through, 110, 34},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change, cropped(c.width, c.height))
			f := rendered(t, p, picture, wideMM, 400)
			var ratios []float64
			for _, s := range seamsight.New(p, picture, wideMM).Seams() {
				for _, piece := range f.compared(s, c.path) {
					ratios = append(ratios, piece.contrast/piece.model.Contrast)
				}
			}
			tenths := tenthsOf(t, ratios)
			t.Logf("of %d ratios the tenths are %.2f", len(ratios), tenths)
			require.InDelta(t, 1, tenths[1], 0.08)
			require.Greater(t, tenths[0], 0.8)
			require.Less(t, tenths[2], 1.25)
		})
	}
}

// The verdicts agree with the difference between proofs with seams and without. Nothing is shared but the
// threshold's formula: light, detail and contrast come from the frames' pixels there, and from the print and
// the optics' scales here.
//
// Near a limit of 1 or 3 times the two may fall on either side, so pieces agree for the most part only (92 %
// of all were measured, 86 to 100 % in a scene); but what shows plainly in the frames is never called hidden,
// nor the other way round.
func TestVerdictsAgreeWithTheProof(t *testing.T) {
	picture := scenic()
	same, all := 0, 0
	for _, c := range []struct {
		name          string
		change        func(*layout.Setup)
		width, height int
		samples       int // the wider a pixel's rays are thrown, the more it takes until their noise is no detail of its own
	}{
		{"close, f/16", func(*layout.Setup) {}, 320, 160, 32},
		{"close, f/45", func(s *layout.Setup) { s.Camera.FNumber = 45 }, 130, 260, 80},
		{"close, f/5.6", func(s *layout.Setup) { s.Camera.FNumber = 5.6 }, 160, 320, 32},
		{"wide, the seams beside the drop", func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 100, 22 },
			600, 120, 32},
		{"upright rod", rod(flip.UprightRod), 320, 160, 32},
		{"oblate", oblate(0.85), 130, 260, 80},
		{"straight", func(s *layout.Setup) { s.Look = layout.Straight }, 260, 130, 32},
		{"oblate and straight, turned", func(s *layout.Setup) {
			s.Drop.HeightOverWidth, s.Look, s.Framing.TurnDeg = 0.85, layout.Straight, 20
		}, 260, 130, 80},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change, cropped(c.width, c.height))
			f := rendered(t, p, picture, seamMM, c.samples)
			var counts [4][4]int // by the verdict in the frames, then by the model's
			var ratios []float64
			for _, s := range seamsight.New(p, picture, seamMM).Seams() {
				for _, path := range []seamsight.Path{seamsight.Direct, seamsight.Through} {
					for _, piece := range f.compared(s, path) {
						inFrames, inModel := seamsight.VerdictOf(piece.times()), piece.model.Verdict
						counts[inFrames][inModel]++
						all++
						if inFrames == inModel {
							same++
						}
						apart := int(inFrames) - int(inModel)
						require.LessOrEqual(t, apart*apart, 1, "%v %s: %.2f times over in the frames, %.2f in the model", s.Between,
							path, piece.times(), piece.model.OverThreshold())
						if piece.model.Contrast > leastContrast {
							ratios = append(ratios, piece.times()/piece.model.OverThreshold())
						}
					}
				}
			}
			tenths := tenthsOf(t, ratios)
			t.Logf("verdicts in the frames and the model %v; of %d ratios of times the tenths are %.2f", counts, len(ratios),
				tenths)
			require.InDelta(t, 1, tenths[1], 0.25)
		})
	}
	t.Logf("%d of %d pieces agree", same, all)
	require.Greater(t, float64(same), 0.9*float64(all))
}

// leastContrast is what can be measured in frames of 8 bits, whose steps are about 0.01 of the light.
const leastContrast = 0.04

// tenthsOf are the values that a tenth, half and nine tenths of all lie under.
func tenthsOf(t *testing.T, values []float64) [3]float64 {
	require.Greater(t, len(values), 10)
	slices.Sort(values)
	n := len(values)
	return [3]float64{values[n/10], values[n/2], values[n*9/10]}
}
