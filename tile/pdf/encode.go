package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"image"
	"image/color"

	"dropsheet/tile/pdf/jpeg"
)

// EncodeJPEG encodes a picture as a JPEG file at a quality of 1 to 100. It takes *image.Gray, *image.YCbCr
// and opaque *image.RGBA; colour is stored with chroma as asked, 4:4:4 or 4:2:0, whatever the picture has. A
// side over 65535 pixels is an error.
func EncodeJPEG(img image.Image, quality int, chroma image.YCbCrSubsampleRatio) (Picture, error) {
	p, err := describe(img, DCT)
	if err != nil {
		return Picture{}, err
	}
	if p.Data, err = jpeg.Encode(img, quality, chroma); err != nil {
		return Picture{}, err
	}
	return p, nil
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
	p, err := describe(img, Flate)
	if err != nil {
		return Picture{}, err
	}
	var packed bytes.Buffer
	// The default level makes the example's artwork 18 % smaller and takes three times as long.
	z, err := zlib.NewWriterLevel(&packed, zlib.BestSpeed)
	if err != nil {
		return Picture{}, err
	}
	n := p.WidthPx * p.components()
	above, row, line := make([]byte, n), make([]byte, n), make([]byte, n+1)
	line[0] = pngUp
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		readRow(row, img, y)
		for i, v := range row {
			line[i+1] = v - above[i]
		}
		if _, err := z.Write(line); err != nil {
			return Picture{}, err
		}
		above, row = row, above
	}
	if err := z.Close(); err != nil {
		return Picture{}, err
	}
	p.Data = packed.Bytes()
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
