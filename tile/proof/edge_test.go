package proof

import (
	"context"
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// patches is a picture of square patches, each of its own level: strong edges everywhere.
func patches(seed int64, sidePx int) *texture.Texture {
	random := rand.New(rand.NewSource(seed))
	m := image.NewGray(image.Rect(0, 0, 600, 400))
	for y := 0; y < 400; y += sidePx {
		for x := 0; x < 600; x += sidePx {
			level := color.Gray{uint8(255 * random.Intn(2))}
			for dy := range sidePx {
				for dx := range sidePx {
					m.SetGray(x+dx, y+dy, level)
				}
			}
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// level is green light as a level that is not rounded.
func level(l texture.Light) float64 { return 255 * colour.LightToSRGB(max(0, float64(l[1]))) }

// Where pixels by the drop's edge meet those further out there is no step: on either side of that limit both
// ways of rendering give the same to half a level, with strong edges far out of focus behind. A step of four
// levels showed as a ring.
func TestNoRingAroundTheDrop(t *testing.T) {
	const seed = 52
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		sidePx int
		drops  []layout.Point
	}{
		{"far out of focus", func(s *layout.Setup) {}, 20, nil},
		{"further", func(s *layout.Setup) { s.Camera.FNumber = 5.6 }, 50, nil},
		{"half of the board's width", func(s *layout.Setup) {}, 200, nil},
		{"little out of focus, each pixel its own", func(s *layout.Setup) {
			s.Camera.FNumber, s.Camera.FrameWidthMM = 32,
				30
		}, 10, nil},
		{"two drops", func(s *layout.Setup) { s.Camera.FrameWidthMM = 13 }, 20,
			[]layout.Point{{XMM: -3, YMM: -1}, {XMM: 3, YMM: 1}}},
		{"oblate", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.9 }, 20, nil},
		{"upright rod", func(s *layout.Setup) { s.Drop.Body = flip.UprightRod }, 20, nil},
		{"a straight picture", func(s *layout.Setup) { s.Look = layout.Straight }, 20, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			v := Scene{Plan: p, Camera: p.Camera, Picture: patches(seed, c.sidePx), SeamWidthMM: 0.3, Drops: c.drops}.view()
			v.beside, v.lattice = v.newBeside(context.Background()), v.newLattice(context.Background())
			pixelMM := p.Camera.PixelMM()
			further, nearer := v, v
			further.edgeBlurMM += 3 * pixelMM
			nearer.edgeBlurMM -= 3 * pixelMM
			compared := 0
			for j := range p.Camera.HeightPx {
				for i := range p.Camera.WidthPx {
					at := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
					fromEdge := v.fromEdgeMM(at, v.nearest(at))
					if math.Abs(fromEdge-v.edgeBlurMM) > 3*pixelMM {
						continue
					}
					other := &further
					if fromEdge <= v.edgeBlurMM {
						other = &nearer
					}
					require.InDelta(t, level(v.pixel(i, j)), level(other.pixel(i, j)), 0.5, "pixel %d, %d, seed %d", i, j, seed)
					compared++
				}
			}
			require.Greater(t, compared, 500)
		})
	}
}

// Beside the drop the board far out of focus is what thousands of rays make of it: there, chance hits of a
// few would draw blotches.
func TestBesideAgainstManyRays(t *testing.T) {
	const seed = 53
	for _, fNumber := range []float64{8, 16} {
		p := plan(t, func(s *layout.Setup) { s.Camera.FNumber = fNumber })
		v := Scene{Plan: p, Camera: p.Camera, Picture: patches(seed, 20)}.view()
		v.beside, v.lattice = v.newBeside(context.Background()), v.newLattice(context.Background())
		require.Greater(t, v.beside.step, 1)
		many := v.lens.aim(raySet(4000))
		random := rand.New(rand.NewSource(seed))
		square := 0.0
		const places = 60
		for n := 0; n < places; {
			i, j := random.Intn(p.Camera.WidthPx), random.Intn(p.Camera.HeightPx)
			if at := p.Camera.At(float64(i)+0.5, float64(j)+0.5); v.fromEdgeMM(at, v.nearest(at)) < -v.edgeBlurMM {
				continue // no ray passes the drop
			}
			n++
			d := level(v.besidePixel(i, j)) - level(v.pastPixel(i, j, many))
			square += d * d
		}
		require.Less(t, math.Sqrt(square/places), 1.0, "f/%g, levels, seed %d", fNumber, seed)
	}
}
