package job

import (
	"fmt"
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
)

// Extent is an artwork's size before it is decoded.
type Extent struct {
	// WidthPx and HeightPx are its pixels, upright. A page of a PDF has none of its own: these are then some in its
	// proportions, and the job decides.
	WidthPx, HeightPx int
	Page              int // of a PDF; 0 for a picture
}

// nominalPx is the longer side of a page before it is known how large it is printed: enough that rounding its sides to
// whole pixels changes its proportions by less than a print is measured.
const nominalPx = 6000

// ReadExtent reads an artwork's size from its file, of which only the header is read; over limits is refused. page
// is the page asked for of a PDF, 0 for its only one, and must be 0 of a picture.
func ReadExtent(path string, page int, limits artwork.Limits) (Extent, error) {
	isPDF, err := artwork.IsPDF(path)
	switch {
	case err != nil:
		return Extent{}, err
	case !isPDF && page != 0:
		return Extent{}, WrongWords(fmt.Errorf("--page %d says which page of a PDF is meant, and %q is a picture\n"+
			"hint: leave it "+
			"out", page, path))
	case !isPDF:
		w, h, err := artwork.ReadSize(path, limits)
		return Extent{w, h, 0}, hintLimits(err)
	}
	p, err := artwork.ReadPage(path, page, limits)
	if err != nil {
		return Extent{}, err
	}
	perMM := nominalPx / max(p.WidthMM, p.HeightMM)
	px := func(mm float64) int { return max(1, int(math.Round(mm*perMM))) }
	return Extent{px(p.WidthMM), px(p.HeightMM), p.Number}, nil
}

// part is the part of the artwork that is the picture.
func (o Order) part(e Extent) (image.Rectangle, error) { return o.Crop.Pixels(e.WidthPx, e.HeightPx) }

// plans are the ways to lay the paper, for a picture that is that part of the artwork.
func (o Order) plans(part image.Rectangle) ([]layout.Plan, error) {
	setup := o.Setup
	setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	plans, err := setup.Plans()
	return plans, WrongWords(err)
}

// drawnFor is the extent of a page that is drawn for a plan: as many pixels as the print has, over the whole of it. A
// bent print shows more of them to the millimetre where it is squeezed, and fewer where it is stretched.
func (o Order) drawnFor(p layout.Plan, page Extent, part image.Rectangle) Extent {
	print := p.PictureOnBoard()
	prints := print.WidthMM * print.HeightMM * sq(o.PPI.of(shot.Of(p).Resolution()).PixelsPerMM())
	scale := math.Sqrt(prints / (float64(part.Dx()) * float64(part.Dy())))
	px := func(nominal int) int { return max(1, int(math.Ceil(float64(nominal)*scale))) }
	return Extent{px(page.WidthPx), px(page.HeightPx), page.Page}
}

func sq(v float64) float64 { return v * v }

// Open opens the artwork's file and makes pixels of it, transparent parts on a background where there is one.
func (e Extent) Open(path string, background layout.Surround, limits artwork.Limits) (*artwork.Picture, error) {
	return e.read(path, path, newReading(background, limits))
}

// newReading is how the artwork of a job that is made now is read.
func newReading(background layout.Surround, limits artwork.Limits) artwork.Reading {
	r := artwork.Reading{Limits: limits}
	r.Under, _ = background.Colour()
	return r
}

// read opens the artwork's file at path, which errors call original, and makes pixels of it.
func (e Extent) read(path, original string, r artwork.Reading) (*artwork.Picture, error) {
	if e.Page == 0 {
		art, err := artwork.OpenCopy(path, original, r)
		return art, hintLimits(err)
	}
	art, err := artwork.OpenPage(path, original, e.Page, e.WidthPx, e.HeightPx, r)
	if err != nil && e.WidthPx > r.Pixels/e.HeightPx {
		return nil, fmt.Errorf("%w\nhint: print it coarser, with --ppi auto or a lower --ppi than %d", err, shot.DefaultPPI)
	}
	return art, err
}
