package raster

import (
	"image"
	"image/color"
)

// canvas is what a rectangle of the grid is drawn on: grey, or red, green, blue and opacity.
type canvas struct {
	image.Image
	pix              []byte
	stride, channels int         // bytes to a row, and to a pixel
	origin           image.Point // the grid pixel in its corner
	paper            [4]byte     // what it is filled with; a grey one has the first alone
}

func newCanvas(r image.Rectangle, gray bool, paper color.RGBA) *canvas {
	c := &canvas{origin: r.Min, paper: [4]byte{paper.R, paper.G, paper.B, 0xff}}
	size := image.Rect(0, 0, r.Dx(), r.Dy())
	if gray {
		c.Image = image.NewGray(size)
	} else {
		c.Image = image.NewRGBA(size)
	}
	c.pix, c.stride, c.channels = bytesOf(c.Image)
	repeat(c.pix, c.paper[:c.channels])
	return c
}

// asPixels makes pixels of the canvas's kind of a row that may be grey.
func (c *canvas) asPixels(row []byte, channels int) []byte {
	if channels == c.channels {
		return row
	}
	pixels := make([]byte, 0, 4*len(row))
	for _, v := range row {
		pixels = append(pixels, v, v, v, 0xff)
	}
	return pixels
}

// put writes pixels where the grid pixel (x, y) is and right of it.
func (c *canvas) put(x, y int, pixels []byte) { copy(c.at(x, y), pixels) }

// mix writes a pixel of which only share/256 shows picture.
func (c *canvas) mix(x, y int, pixel []byte, share int) {
	at := c.at(x, y)
	for i, v := range pixel {
		at[i] = uint8((int(v)*share + int(c.paper[i])*(256-share) + 128) >> 8)
	}
}

func (c *canvas) at(x, y int) []byte {
	return c.pix[(y-c.origin.Y)*c.stride+(x-c.origin.X)*c.channels:]
}
