package raster

import (
	"image"
	"slices"

	"dropsheet/tile/raster/weigh"
)

// bandRows is how many rows of the result are made of one copied piece of artwork, which then fits the
// processor's nearer memory.
const bandRows = 32

// filterRect writes a rectangle of the grid, filtered down from the artwork as it hangs, channels bytes a pixel.
func (s *Source) filterRect(dst []byte, stride, channels int, r image.Rectangle) {
	columns, rows := taps(r.Min.X, r.Max.X, s.width, s.grid.WidthPx), taps(r.Min.Y, r.Max.Y, s.height, s.grid.HeightPx)
	pix, artStride, ok := s.stored()
	_, x1 := span(columns)
	_, y1 := span(rows)
	if !ok || x1 > s.width || y1 > s.height { // taps that fill up may lie beyond an artwork of a few pixels
		s.filterCopied(dst, stride, channels, columns, rows, r.Min)
		return
	}
	// The pixels are weighed where they are stored, which is mirrored where the turn reverses an axis.
	if s.turn.ReverseX {
		mirror(columns, s.width)
	}
	if s.turn.ReverseY {
		mirror(rows, s.height)
	}
	x0, x1 := span(columns)
	f := s.newFilter(columns, x0, x1-x0, channels, r.Min.X)
	for j, t := range rows {
		f.rowAt(r.Min.Y+j, dst[j*stride:], pix[t.first*artStride+x0*channels:], artStride, t.weights)
	}
}

// stored is the artwork's pixels where they can be weighed as they are stored: grey, or red, green, blue and
// opacity, and no axis taken for the other.
func (s *Source) stored() (pix []byte, stride int, ok bool) {
	pix, stride, channels := bytesOf(s.art)
	return pix, stride, channels > 0 && !s.turn.SwapXY
}

// bytesOf is a picture's pixels from its first on, how many bytes there are to a row and to a pixel: 1 of
// grey, 4 of red, green, blue and opacity, and 0 of other kinds.
func bytesOf(m image.Image) (pix []byte, stride, channels int) {
	at := m.Bounds().Min
	switch m := m.(type) {
	case *image.Gray:
		return m.Pix[m.PixOffset(at.X, at.Y):], m.Stride, 1
	case *image.RGBA:
		return m.Pix[m.PixOffset(at.X, at.Y):], m.Stride, 4
	}
	return nil, 0, 0
}

// mirror turns taps of an axis of n pixels into those that read it from its other end.
func mirror(all []tap, n int) {
	for i, t := range all {
		slices.Reverse(t.weights)
		all[i].first = n - t.first - len(t.weights)
	}
}

// filterCopied copies the artwork piece by piece and filters that, so that memory is a few rows whatever the artwork.
// at is the grid's pixel that it begins with.
func (s *Source) filterCopied(dst []byte, stride, channels int, columns, rows []tap, at image.Point) {
	x0, x1 := span(columns)
	f := s.newFilter(columns, x0, x1-x0, channels, at.X)
	width := (x1 - x0) * channels
	var band []byte
	for j := 0; j < len(rows); j += bandRows {
		down := rows[j:min(j+bandRows, len(rows))]
		y0, y1 := span(down)
		if need := (y1 - y0) * width; len(band) < need {
			band = make([]byte, need)
		}
		s.copyRect(band, width, channels, image.Rect(x0, y0, x1, y1))
		for i, t := range down {
			f.rowAt(at.Y+j+i, dst[(j+i)*stride:], band[(t.first-y0)*width:], width, t.weights)
		}
	}
}

// filter weighs rows of pixels, of one channel or of four.
type filter struct {
	across   *weigh.Taps
	channels int
	middle   []int16 // a row, weighed down, with places beyond it that weigh nothing
	bytes    int     // of middle, how many come from a row
	dither   *dither // of what is made; nil where it is rounded
}

// newFilter prepares to make columns of rows of n pixels that begin at x0 of the artwork; the first column is the
// grid's pixel gridX.
func (s *Source) newFilter(columns []tap, x0, n, channels, gridX int) *filter {
	f := newFilter(inRow(columns, x0), n, channels)
	if s.dithered {
		f.dither = newDither(columns, x0, gridX, channels)
		f.middle = make([]int16, max(n, f.dither.reach)*channels)
	}
	return f
}

// newFilter prepares for rows of n pixels.
func newFilter(across *weigh.Taps, n, channels int) *filter {
	return &filter{across: across, channels: channels, middle: make([]int16, max(n, across.Reach())*channels),
		bytes: n * channels}
}

// rowAt makes row y of the grid from rows of src, stride bytes apart.
func (f *filter) rowAt(y int, dst, src []byte, stride int, down []int16) {
	if f.dither == nil {
		f.row(dst, src, stride, down)
		return
	}
	weigh.Down(f.middle[:f.bytes], src, stride, down)
	f.dither.across(y, dst, f.middle, f.bytes)
}

// row makes a row of the result from rows of src, stride bytes apart.
func (f *filter) row(dst, src []byte, stride int, down []int16) {
	weigh.Down(f.middle[:f.bytes], src, stride, down)
	if f.channels == 1 {
		weigh.Across(dst[:f.across.Len()], f.middle, f.across)
	} else {
		weigh.AcrossPixels(dst[:4*f.across.Len()], f.middle, f.across)
	}
}
