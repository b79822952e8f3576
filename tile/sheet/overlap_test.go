package sheet

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
)

// colours is a test picture of what subsampled colour finds hard: patches of full colours side by side, hairlines
// of one colour on another, and slopes between colours, on a grey wedge.
func colours(w, h int) *image.RGBA {
	full := [][3]float64{{255, 0, 0}, {0, 255, 0}, {0, 0, 255}, {255, 255, 0}, {255, 0, 255}, {0, 255, 255},
		{255, 255, 255}}
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			a, b := full[(x/23+y/17)%7], full[(x/23+3*(y/17)+2)%7]
			mix := 0.0
			switch (y / 40) % 4 {
			case 1:
				mix = float64(x%5/4 + y%7/6) // hairlines
			case 2:
				mix = 0.5 + 0.5*math.Sin(float64(x)/6)
			case 3:
				mix = float64(x) / float64(w)
				a, b = [3]float64{}, [3]float64{255, 255, 255}
			}
			mix = min(1, mix)
			for i := range 3 {
				m.Pix[m.PixOffset(x, y)+i] = uint8(a[i]*(1-mix) + b[i]*mix)
			}
			m.Pix[m.PixOffset(x, y)+3] = 0xff
		}
	}
	return m
}

// decoded is a sheet's picture as another program reads it, and the grid pixels that it has.
type decoded struct {
	image.Image
	on image.Rectangle
}

// coloured makes sheets' pictures of colours at a resolution, from artwork so many times as fine.
func coloured(t *testing.T, ppi, finer float64, sheets int) (j Job, pictures []decoded) {
	t.Helper()
	j = flatJob(t, func(s *layout.Setup) {
		s.DistanceMM = 150
		s.Paper, _ = layout.ParsePaper("A6")
	})
	on := j.Plan.PictureOnBoard()
	px := func(mm float64) int { return 2 * int(mm*finer*units.PerInch(ppi).PixelsPerMM()/2) }
	w, h := px(on.WidthMM), px(on.HeightMM)
	j.Lossless = false
	j.Grid = raster.NewGrid(on, w, h, units.PerInch(ppi))
	j.Source = raster.NewSource(&artwork.Picture{Image: colours(w, h)}, j.Plan.Drop.Reverses.Turn(), j.Grid,
		j.Grid.Chroma(on))
	d := pdf.New("")
	for _, s := range j.Plan.Sheets[:sheets] {
		r := addPage(d, j.Plan, j.Grid, s, j.Label)
		p, err := j.picture(r)
		require.NoError(t, err)
		m, err := jpeg.Decode(bytes.NewReader(p.Data))
		require.NoError(t, err)
		require.Equal(t, r.Size(), m.Bounds().Size())
		pictures = append(pictures, decoded{m, r})
	}
	return j, pictures
}

// off is how far two pictures of the grid differ where both are, in levels: by root mean square, and at worst.
func off(a, b decoded) (rms, worst float64, pixels int) {
	both, sum := a.on.Intersect(b.on), 0.0
	for y := both.Min.Y; y < both.Max.Y; y++ {
		for x := both.Min.X; x < both.Max.X; x++ {
			at := func(m decoded) color.RGBA {
				return color.RGBAModel.Convert(m.At(x-m.on.Min.X, y-m.on.Min.Y)).(color.RGBA)
			}
			p, q := at(a), at(b)
			for _, v := range [3][2]uint8{{p.R, q.R}, {p.G, q.G}, {p.B, q.B}} {
				d := math.Abs(float64(v[0]) - float64(v[1]))
				sum, worst = sum+d*d, max(worst, d)
			}
		}
	}
	pixels = both.Dx() * both.Dy()
	return math.Sqrt(sum / float64(3*pixels)), worst, pixels
}

// Where two sheets show the same they show it alike, whatever the resolution: within 3 levels by root mean square
// is what is asked, and they agree to the last one, since both pictures are made of the same blocks.
func TestOverlapsAgree(t *testing.T) {
	for _, c := range []struct{ ppi, finer float64 }{{20, 1}, {20, 1.7}, {60, 1}, {149, 1.7}, {151, 1}, {151, 1.7},
		{300, 1}} {
		t.Run(fmt.Sprintf("%g ppi of %g", c.ppi, c.ppi*c.finer), func(t *testing.T) {
			_, pictures := coloured(t, c.ppi, c.finer, 4)
			overlapping := 0
			for i, a := range pictures {
				for _, b := range pictures[:i] {
					if !a.on.Overlaps(b.on) {
						continue
					}
					overlapping++
					rms, worst, pixels := off(a, b)
					require.Zero(t, worst, "%v and %v, %d pixels, %.2f levels by root mean square", a.on, b.on, pixels, rms)
				}
			}
			require.GreaterOrEqual(t, overlapping, 3)
		})
	}
}

// Under 150 pixels to the inch a sheet keeps the colour of each pixel; from there on, of each four, which this
// picture shows plainly.
func TestColourDetail(t *testing.T) {
	for _, c := range []struct {
		ppi         float64
		chroma      image.YCbCrSubsampleRatio
		least, most float64 // levels by root mean square, off the artwork
	}{{20, image.YCbCrSubsampleRatio444, 0, 3}, {149, image.YCbCrSubsampleRatio444, 0, 3},
		{151, image.YCbCrSubsampleRatio420, 20, 50}} {
		j, pictures := coloured(t, c.ppi, 1, 1)
		require.Equal(t, c.chroma, pictures[0].Image.(*image.YCbCr).SubsampleRatio)
		rms, worst, _ := off(pictures[0], decoded{j.Source.Cut(pictures[0].on), pictures[0].on})
		t.Logf("%g ppi: %.2f levels by root mean square, %.0f at worst", c.ppi, rms, worst)
		require.True(t, rms >= c.least && rms <= c.most, "%g ppi: %.2f levels", c.ppi, rms)
	}
}
