package raster

import (
	"image"
	"math"
	"math/rand"
	"testing"

	"github.com/disintegration/imaging"
	"golang.org/x/image/draw"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
)

// BenchmarkResample shrinks one picture to the same size by our filter, in red, green and blue and plane by
// plane, by golang.org/x/image's CatmullRom and by imaging's Lanczos. It tells output megapixels a second,
// and how far the result lies from Lanczos in float64 (levels, root of the mean square; CatmullRom is another
// kernel and may differ by more).
func BenchmarkResample(b *testing.B) {
	const w, h, toW, toH = 3000, 2000, 1000, 668
	planes := smooth420(w, h)
	colour := image.NewRGBA(planes.Rect)
	draw.Draw(colour, colour.Rect, planes, image.Point{}, draw.Src)
	reference := lanczosFloat(colour, toW, toH)
	rgb := NewSource(&artwork.Picture{Image: colour}, flip.Turn{}, Grid{toW, toH}, half)
	ycc := NewSource(&artwork.Picture{Image: planes}, flip.Turn{}, Grid{toW, toH}, half)
	whole := image.Rect(0, 0, toW, toH)
	for _, c := range []struct {
		name   string
		shrink func() image.Image
	}{
		{"ours", func() image.Image { return rgb.Cut(whole) }},
		{"ours, 4:2:0", func() image.Image { return ycc.CutYCbCr(whole) }},
		{"x-image CatmullRom", func() image.Image {
			m := image.NewRGBA(whole)
			draw.CatmullRom.Scale(m, whole, colour, colour.Rect, draw.Src, nil)
			return m
		}},
		{"imaging Lanczos", func() image.Image { return imaging.Resize(colour, toW, toH, imaging.Lanczos) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			var m image.Image
			for b.Loop() {
				m = c.shrink()
			}
			b.ReportMetric(float64(toW*toH)*float64(b.N)/1e6/b.Elapsed().Seconds(), "Mpixel/s")
			sum := 0.0
			for y := range toH {
				for x := range toW {
					r, g, bl, _ := m.At(x, y).RGBA()
					for i, v := range [3]uint32{r, g, bl} {
						d := float64(v)/257 - reference[(y*toW+x)*3+i]
						sum += d * d
					}
				}
			}
			b.ReportMetric(math.Sqrt(sum/float64(3*toW*toH)), "levels-off")
		})
	}
}

// smooth420 is a photo-like 4:2:0 picture: slopes, edges and a little noise.
func smooth420(w, h int) *image.YCbCr {
	random := rand.New(rand.NewSource(2))
	m := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	for y := range h {
		for x := range w {
			level := 120 + 60*math.Sin(float64(x)/170) + 40*math.Sin(float64(x+3*y)/23) + 6*random.Float64()
			if (x/300+y/250)%3 == 0 {
				level -= 50
			}
			m.Y[m.YOffset(x, y)] = uint8(max(0, min(255, level)))
			m.Cb[m.COffset(x, y)], m.Cr[m.COffset(x, y)] = uint8(128+30*math.Sin(float64(y)/210)),
				uint8(128+30*math.Cos(float64(x)/260))
		}
	}
	return m
}

// lanczosFloat is the same kernel in float64, three levels a pixel.
func lanczosFloat(m *image.RGBA, toW, toH int) []float64 {
	weights := func(i, n, to int) (first int, w []float64) {
		scale := float64(n) / float64(to)
		centre := (float64(i)+0.5)*scale - 0.5
		first = int(math.Ceil(centre - 3*scale))
		sum := 0.0
		for k := first; float64(k) <= centre+3*scale; k++ {
			x := math.Abs(float64(k)-centre) / scale * math.Pi
			v := 1.0
			if x > 1e-9 {
				v = 3 * math.Sin(x) * math.Sin(x/3) / (x * x)
			}
			w, sum = append(w, v), sum+v
		}
		for k := range w {
			w[k] /= sum
		}
		return first, w
	}
	w, h := m.Rect.Dx(), m.Rect.Dy()
	across := make([]float64, toW*h*3)
	for x := range toW {
		first, ws := weights(x, w, toW)
		for y := range h {
			for k, v := range ws {
				p := m.Pix[m.PixOffset(clamp(first+k, w), y):]
				for i := range 3 {
					across[(y*toW+x)*3+i] += v * float64(p[i])
				}
			}
		}
	}
	out := make([]float64, toW*toH*3)
	for y := range toH {
		first, ws := weights(y, h, toH)
		for k, v := range ws {
			row := across[clamp(first+k, h)*toW*3:][:toW*3]
			for i, level := range row {
				out[y*toW*3+i] += v * level
			}
		}
	}
	for i, v := range out {
		out[i] = max(0, min(255, v))
	}
	return out
}
