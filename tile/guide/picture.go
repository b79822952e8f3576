package guide

import (
	"image"
	"math"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
	"dropsheet/tile/texture"
)

// Pictures in the guide.
const (
	photoPPI    = 150  // on paper: enough for a picture that is only looked at (common practice, no source)
	drawingPPI  = 300  // for a picture with thin lines and small letters
	mostSidePx  = 2400 // however large the paper is
	jpegQuality = 90
)

// place keeps a place for a picture and remembers how to make it; it is made when the file is written.
func (b *book) place(at layout.Rect, make func() (image.Image, error)) {
	b.Place(at)
	b.pictures = append(b.pictures, func() (pdf.Picture, error) {
		img, err := make()
		if err != nil {
			return pdf.Picture{}, err
		}
		return packed(img)
	})
}

// packed is a picture as it goes into the file.
func packed(img image.Image) (pdf.Picture, error) {
	return pdf.EncodeJPEG(img, jpegQuality, image.YCbCrSubsampleRatio420)
}

// perMM is how many pixels to take for a guide mm of a picture with such a longer side.
func (b *book) perMM(ppi, longerMM float64) float64 {
	return min(units.PerInch(ppi).PixelsPerMM()*b.geo.scale, mostSidePx/longerMM)
}

// placeImage places a picture, grey or red, green and blue, whole, reduced to what the page can show.
func (b *book) placeImage(at layout.Rect, img image.Image, ppi float64) {
	b.place(at, func() (image.Image, error) {
		perMM := b.perMM(ppi, max(at.WidthMM, at.HeightMM))
		most := func(mm float64, has int) int { return max(1, min(has, int(math.Ceil(mm*perMM)))) }
		w, h := most(at.WidthMM, img.Bounds().Dx()), most(at.HeightMM, img.Bounds().Dy())
		return raster.Resized(img, w, h), nil
	})
}

// placeBoard places the part of the board's picture that lies in part, board mm, as it hangs. Outside clear
// it is shown paler. One mm of the place is k guide mm.
func (b *book) placeBoard(at layout.Rect, k float64, part, clear layout.Rect) {
	b.place(at, func() (image.Image, error) {
		perMM := k * b.perMM(photoPPI, k*max(at.WidthMM, at.HeightMM))
		w, h := max(1, int(math.Ceil(at.WidthMM*perMM))), max(1, int(math.Ceil(at.HeightMM*perMM)))
		return b.boardAsHung(part, clear, w, h), nil
	})
}

// paleShare is how much white is mixed in where a picture is shown paler.
const paleShare = 0.5

// boardAsHung renders a part of the board, in board mm, as w by h pixels: the picture turned as the drop asks, in
// its surround. Where the board has no sheet it is white: a lap that reaches there is.
func (b *book) boardAsHung(part, clear layout.Rect, w, h int) *image.RGBA {
	surface, white := b.surface(), texture.Light{1, 1, 1}
	stepX, stepY := part.WidthMM/float64(w), part.HeightMM/float64(h)
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	texture.Rows(h, func(row int) {
		y := part.YMM + (float64(row)+0.5)*stepY
		for column := range w {
			x := part.XMM + (float64(column)+0.5)*stepX
			seen := surface.At(x, y, board.Box(stepX, stepY))
			c := seen.Under(1, white, white).SRGB()
			if x < clear.XMM || y < clear.YMM || x > clear.RightMM() || y > clear.BottomMM() {
				c.R, c.G, c.B = paler(c.R), paler(c.G), paler(c.B)
			}
			out.SetRGBA(column, row, c)
		}
	})
	return out
}

func paler(v uint8) uint8 { return uint8(float64(v)*(1-paleShare) + 0xff*paleShare + 0.5) }

// inside is the largest rectangle of that shape in a box, in its middle.
func inside(box layout.Rect, widthMM, heightMM float64) layout.Rect {
	k := min(box.WidthMM/widthMM, box.HeightMM/heightMM)
	w, h := k*widthMM, k*heightMM
	return layout.Rect{XMM: box.XMM + (box.WidthMM-w)/2, YMM: box.YMM + (box.HeightMM-h)/2, WidthMM: w, HeightMM: h}
}
