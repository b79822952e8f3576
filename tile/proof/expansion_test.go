package proof

import (
	"context"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// What an expansion says of a pixel's rays, against what the board shows where each of them lands, traced: in
// frame pixels, at worst and in the mean over the pixel. Most pixels of the picture have one. Of each coordinate
// it may leave a twentieth of a pixel.
func TestExpansionAgainstEachRay(t *testing.T) {
	const seed = 61
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		sharp  bool
		worst  float64
		have   float64 // share of the pixels within 0.7 of the drop's radius that have one
	}{
		{"lens", func(*layout.Setup) {}, false, 0.1, 0.9},
		{"wide open", func(s *layout.Setup) { s.Camera.FNumber = 4 }, false, 0.1, 0.02},
		{"half straight", func(s *layout.Setup) { s.Look = 0.5 }, false, 0.1, 0.9},
		{"turned, pressed flat", func(s *layout.Setup) { s.Framing.TurnDeg, s.Drop.HeightOverWidth = 30, 0.9 }, false,
			0.1, 0.9},
		{"pinhole", func(*layout.Setup) {}, true, 0.02, 0.99},
		// Its print is a strip of 5 mm: much of the frame is beyond it, and a lens blurs along the rod by as much.
		{"pinhole, upright rod", func(s *layout.Setup) { s.Drop.Body = flip.UprightRod }, true, 0.02, 0.2},
		{"pinhole, half straight", func(s *layout.Setup) { s.Look = 0.5 }, true, 0.02, 0.99},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				straight(s)
				s.Camera.FrameWidthMM, s.Background = 9, "#000000"
				c.change(s)
			})
			v := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: c.sharp}.view()
			v.lattice = v.newLattice(context.Background())
			hanging := p.Hang()
			w, h := quarters().Size()
			random := rand.New(rand.NewSource(seed))
			asked, have, worst, shift := 0, 0, 0.0, 0.0
			for range 3000 {
				i, j := random.Intn(p.Camera.WidthPx), random.Intn(p.Camera.HeightPx)
				at := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
				if v.fromEdgeMM(at, layout.Point{}) > -v.edgeBlurMM {
					continue
				}
				rays := v.throughSpread(i, j, at, layout.Point{})
				middle, _, ok := v.middle(i, j, layout.Point{})
				require.True(t, ok)
				near := v.expansion(middle, rays, rays.patch(&v.inside[0]))
				if v.share(at, layout.Point{}) < 0.7 {
					if asked++; near.OK {
						have++
					}
				}
				centre := v.surface.CentreMM
				about := hanging.At(middle.XMM+centre.XMM, middle.YMM+centre.YMM)
				pixelPx := pixelSide(rays, about, float64(w), float64(h))
				var meanU, meanV float64
				for k := range v.inside {
					l, ok := v.tracer.Trace(v.lens.ray(i, j, &v.inside[k]))
					x, y := l.XMM+centre.XMM, l.YMM+centre.YMM
					if !ok || !l.Through || !near.Holds(x, y) {
						continue
					}
					want := hanging.At(x, y)
					require.Positive(t, want.InsideMM, "pixel %d, %d", i, j)
					gotU, gotV := near.Coordinates(l.XMM-middle.XMM, l.YMM-middle.YMM)
					offU, offV := (gotU-want.U)*float64(w)/pixelPx, (gotV-want.V)*float64(h)/pixelPx
					worst = max(worst, math.Hypot(offU, offV))
					meanU, meanV = meanU+offU/float64(len(v.inside)), meanV+offV/float64(len(v.inside))
				}
				shift = max(shift, math.Hypot(meanU, meanV))
			}
			t.Logf("%d of %d, worst %.3f px, mean of a pixel's rays %.4f px, seed %d", have, asked, worst, shift, seed)
			require.Greater(t, asked, 300)
			require.GreaterOrEqual(t, float64(have), c.have*float64(asked))
			require.Less(t, worst, c.worst)
			require.Less(t, shift, 0.02)
		})
	}
}

// pixelSide is how many pixels of the artwork a pixel of the frame is wide, of the mean of its sides' squares:
// its steps across and down on the board, as rays spread, taken to the picture by the slopes there.
func pixelSide(rays spread, at layout.Shown, widthPx, heightPx float64) float64 {
	c := rays.pixel
	square := func(x, y float64) float64 { return x*x*c.XX + 2*x*y*c.XY + y*y*c.YY }
	return math.Sqrt((square(at.UX*widthPx, at.UY*widthPx) + square(at.VX*heightPx, at.VY*heightPx)) / pixelVariance / 2)
}

// A pinhole's pixels by their middle's ray, against all of their rays traced: where those land, in frame pixels.
func TestSharpPixelAgainstEachRay(t *testing.T) {
	const seed = 62
	for _, look := range []layout.Look{layout.Bulged, layout.Straight} {
		p := plan(t, func(s *layout.Setup) { s.Look = look })
		camera := CloseUp(p, 640, 1.15)
		picture := patches(seed, 10)
		v := Scene{Plan: p, Camera: camera, Picture: picture, Sharp: true, Samples: pinholeSamples}.view()
		traced := v // without a lattice each ray is traced, and without expansions looked up
		traced.lattice = lattice{step: 1}
		v.lattice = v.newLattice(context.Background())
		compared, square := 0, 0.0
		for j := 1; j < 640; j += 9 {
			for i := 1; i < 640; i += 9 {
				at := camera.At(float64(i)+0.5, float64(j)+0.5)
				if v.fromEdgeMM(at, layout.Point{}) > -v.edgeBlurMM {
					continue
				}
				over := traced.throughSpread(i, j, at, layout.Point{})
				var want float64
				for k := range v.inside {
					want += float64(v.through(v.lens.ray(i, j, &v.inside[k]), layout.Point{}, over.patch(&v.inside[k]),
						nil)[1]) / float64(len(v.inside))
				}
				got := float64(v.sharpPixel(i, j, at, layout.Point{})[1])
				// A strong edge runs through a pixel from dark to light: so much of it lies off.
				require.InDelta(t, want, got, 0.005, "look %s, pixel %d, %d, seed %d", look, i, j, seed)
				compared, square = compared+1, square+(got-want)*(got-want)
			}
		}
		t.Logf("look %s: %d pixels, off by %.5f of full light RMS", look, compared, math.Sqrt(square/float64(compared)))
		require.Greater(t, compared, 1000)
		require.Less(t, math.Sqrt(square/float64(compared)), 0.0005)
	}
}
