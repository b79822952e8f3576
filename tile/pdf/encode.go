package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"image"
	"image/color"
	"iter"

	"dropsheet/tile/pdf/jpeg"
)

// EncodeJPEG encodes a picture as a JPEG file at a quality of 1 to 100. It takes *image.Gray, *image.YCbCr
// and opaque *image.RGBA; colour is stored with chroma as asked, 4:4:4 or 4:2:0, whatever the picture has. A
// side over 65535 pixels is an error.
func EncodeJPEG(img image.Image, quality int, chroma image.YCbCrSubsampleRatio) (Picture, error) {
	if _, err := describe(img, DCT); err != nil {
		return Picture{}, err
	}
	return EncodeJPEGBands(img.Bounds().Size(), inOne(img), quality, chroma)
}

// EncodeJPEGBands is EncodeJPEG of a picture of that size which comes in bands, as jpeg.EncodeBands takes them.
func EncodeJPEGBands(size image.Point, bands iter.Seq[image.Image], quality int,
	chroma image.YCbCrSubsampleRatio) (Picture, error) {
	p := Picture{WidthPx: size.X, HeightPx: size.Y, Filter: DCT}
	seen := func(yield func(image.Image) bool) {
		for band := range bands {
			if _, p.Gray = band.(*image.Gray); !yield(band) {
				return
			}
		}
	}
	var err error
	if p.Data, err = jpeg.EncodeBands(size, seen, quality, chroma); err != nil {
		return Picture{}, err
	}
	return p, nil
}

// inOne is a picture as a single band.
func inOne(img image.Image) iter.Seq[image.Image] {
	return func(yield func(image.Image) bool) { yield(img) }
}

// WholeBlocks grows a rectangle of a raster outward to whole blocks of JPEG, counted from the raster's corner. Pictures
// of such rectangles that EncodeJPEG makes at one quality decode to the same pixels wherever two of them show the same.
func WholeBlocks(r image.Rectangle) image.Rectangle {
	down := func(n int) int { return n &^ (jpeg.BlockPx - 1) } // toward the left and top below zero too
	up := func(n int) int { return down(n + jpeg.BlockPx - 1) }
	return image.Rect(down(r.Min.X), down(r.Min.Y), up(r.Max.X), up(r.Max.Y))
}

// The PNG filter "up": each byte less the one above it (ISO/IEC 15948, 9.2), and its number as a PDF
// predictor (ISO 32000-1, table 10); both recalled from memory.
const (
	pngUp          = 2
	pngUpPredictor = 12
)

// EncodeFlate encodes a picture without loss. It takes *image.Gray, *image.YCbCr and opaque *image.RGBA; YCbCr becomes
// RGB, since no PDF colour space is YCbCr.
func EncodeFlate(img image.Image) (Picture, error) {
	if _, err := describe(img, Flate); err != nil {
		return Picture{}, err
	}
	return EncodeFlateBands(img.Bounds().Size(), inOne(img))
}

// EncodeFlateBands is EncodeFlate of a picture of that size which comes in bands from the top down, all of one type and
// as wide as it.
func EncodeFlateBands(size image.Point, bands iter.Seq[image.Image]) (Picture, error) {
	var packed bytes.Buffer
	// The default level makes the example's artwork 18 % smaller and takes three times as long.
	z, err := zlib.NewWriterLevel(&packed, zlib.BestSpeed)
	if err != nil {
		return Picture{}, err
	}
	var p Picture
	var above, row, line []byte
	y := 0
	for band := range bands {
		described, err := describe(band, Flate)
		if err != nil {
			return Picture{}, err
		}
		if y == 0 {
			p = described
			n := p.WidthPx * p.components()
			above, row, line = make([]byte, n), make([]byte, n), make([]byte, n+1)
			line[0] = pngUp
		}
		if described.WidthPx != size.X || described.Gray != p.Gray {
			return Picture{}, fmt.Errorf("a band %d pixels wide, a %T, does not fit at row %d of a picture of %d x %d",
				described.WidthPx, band, y, size.X, size.Y)
		}
		for from := band.Bounds(); from.Min.Y < from.Max.Y; from.Min.Y++ {
			readRow(row, band, from.Min.Y)
			for i, v := range row {
				line[i+1] = v - above[i]
			}
			if _, err := z.Write(line); err != nil {
				return Picture{}, err
			}
			above, row = row, above
			y++
		}
	}
	if y != size.Y || y == 0 {
		return Picture{}, fmt.Errorf("a picture of %d rows got %d", size.Y, y)
	}
	if err := z.Close(); err != nil {
		return Picture{}, err
	}
	p.HeightPx, p.Data = size.Y, packed.Bytes()
	return p, nil
}

// describe returns a picture with all but its data.
func describe(img image.Image, filter Filter) (Picture, error) {
	p := Picture{Filter: filter}
	switch img.(type) {
	case *image.Gray:
		p.Gray = true
	case *image.RGBA, *image.YCbCr:
	default:
		return Picture{}, fmt.Errorf("a picture of type %T can't be encoded\n"+
			"hint: convert it to *image.Gray, *image.RGBA or "+
			"*image.YCbCr", img)
	}
	size := img.Bounds().Size()
	p.WidthPx, p.HeightPx = size.X, size.Y
	if size.X < 1 || size.Y < 1 {
		return Picture{}, fmt.Errorf("a picture of %d x %d pixels can't be encoded: both must be above zero", size.X, size.Y)
	}
	return p, nil
}

// readRow fills dst with the pixels of row y, grey or RGB.
func readRow(dst []byte, img image.Image, y int) {
	left := img.Bounds().Min.X
	switch img := img.(type) {
	case *image.Gray:
		copy(dst, img.Pix[img.PixOffset(left, y):])
	case *image.RGBA:
		src := img.Pix[img.PixOffset(left, y):]
		for i, j := 0, 0; i < len(dst); i, j = i+3, j+4 {
			dst[i], dst[i+1], dst[i+2] = src[j], src[j+1], src[j+2]
		}
	case *image.YCbCr:
		for i, x := 0, left; i < len(dst); i, x = i+3, x+1 {
			c := img.COffset(x, y)
			dst[i], dst[i+1], dst[i+2] = color.YCbCrToRGB(img.Y[img.YOffset(x, y)], img.Cb[c], img.Cr[c])
		}
	}
}
