package sheet

import (
	"context"
	"image"
	"io"
	"math"
	"math/rand/v2"
	"testing"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/raster"
)

// BenchmarkSheets writes whole jobs, from the decoded artwork to the finished file, and tells printed
// megapixels a second. Run it with -cpu 1 for those of one core.
func BenchmarkSheets(b *testing.B) {
	const w, h = 6000, 4000
	photos := map[string]image.Image{"4:2:0": photo(w, h), "grey": nil, "colour": nil}
	luma := photos["4:2:0"].(*image.YCbCr)
	photos["grey"] = &image.Gray{Pix: luma.Y, Stride: luma.YStride, Rect: luma.Rect}
	colour := image.NewRGBA(luma.Rect)
	for i := range w * h {
		r, g, bl, _ := luma.At(i%w, i/w).RGBA()
		colour.Pix[4*i], colour.Pix[4*i+1], colour.Pix[4*i+2], colour.Pix[4*i+3] = uint8(r>>8), uint8(g>>8), uint8(bl>>8),
			0xff
	}
	photos["colour"] = colour
	straight := func(s *layout.Setup) { s.Look, s.DistanceMM = layout.Straight, 300 }
	lit := func(s *layout.Setup) {
		s.Lamps, s.Level = []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}, {XMM: 600, YMM: -400, ZMM: 900}}, true
	}
	for _, c := range []struct {
		name   string
		shrink float64 // artwork pixels for one of the grid, where they lie densest
		change func(*layout.Setup)
	}{
		{"own pixels", 1, nil},
		{"levelled", 1, lit},
		{"shrunk 1.5 to 1", 1.5, nil},
		{"shrunk 3 to 1", 3, nil},
		{"straight, own pixels", 1, straight},
		{"straight, 1.5 to 1", 1.5, straight},
		{"straight, 3 to 1", 3, straight},
	} {
		for _, kind := range []string{"4:2:0", "grey", "colour"} {
			b.Run(c.name+"/"+kind, func(b *testing.B) {
				j := flatJob(b, c.change)
				j = cutFrom(j, photos[kind], c.shrink)
				on := j.Plan.PictureOnBoard()
				pixels := 0
				for _, s := range j.Plan.Sheets {
					r := j.Grid.Pixels(on, j.Plan.Backdrop.Printed(s))
					pixels += r.Dx() * r.Dy()
				}
				for b.Loop() {
					if err := j.Write(context.Background(), io.Discard, j.Plan.Sheets, nil); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(float64(pixels)*float64(b.N)/1e6/b.Elapsed().Seconds(), "Mpixel/s")
			})
		}
	}
}

// cutFrom is the job with sheets as JPEGs of that artwork, so many of whose pixels go into one of the grid where they
// lie densest.
func cutFrom(j Job, art image.Image, shrink float64) Job {
	on, hung, size := j.Plan.PictureOnBoard(), j.Plan.Hang(), art.Bounds().Size()
	grid := func(finest units.Resolution) raster.Grid {
		if hung.Plain() {
			return raster.NewGrid(on, size.X, size.Y, finest)
		}
		return raster.NewBentGrid(hung, on, size.X, size.Y, finest)
	}
	own := grid(units.PerInch(1e6))
	j.Lossless = false
	j.Grid = grid(units.PerMM(own.Resolution(on).PixelsPerMM() / shrink))
	j.Source = raster.NewSource(&artwork.Picture{Image: art}, j.Plan.Drop.Reverses.Turn(), j.Grid,
		image.YCbCrSubsampleRatio420).Level(j.Plan.Level(), on).Hang(hung, on)
	return j
}

// photo is a 4:2:0 picture with a photograph's slopes, edges and grain.
func photo(w, h int) *image.YCbCr {
	random := rand.New(rand.NewPCG(1, 2))
	m := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	for y := range h {
		for x := range w {
			level := 120 + 60*math.Sin(float64(x)/170) + 40*math.Sin(float64(x+3*y)/53) + 4*random.Float64()
			if (x/300+y/250)%3 == 0 {
				level -= 50
			}
			m.Y[y*m.YStride+x] = uint8(max(0, min(255, level)))
		}
	}
	for y := range h / 2 {
		for x := range w / 2 {
			m.Cb[y*m.CStride+x], m.Cr[y*m.CStride+x] = uint8(128+30*math.Sin(float64(y)/105)),
				uint8(128+30*math.Cos(float64(x)/130))
		}
	}
	return m
}
