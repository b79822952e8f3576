package raster

import (
	"encoding/binary"
	"image"
	"image/color"
	"math/bits"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
)

// Source makes rectangles of the grid. It is safe for use by many goroutines.
type Source struct {
	art           image.Image // *image.Gray, *image.YCbCr or *image.RGBA, as decoded
	upright       flip.Turn   // lays the decoded pixels upright
	turn          flip.Turn   // lays the decoded pixels as they hang on the board
	width, height int         // of the artwork as it hangs, in its own pixels
	grid          Grid
	beyond        *color.RGBA // what stands beyond the picture; nil where its outermost pixels go on
	paper         color.RGBA  // what stands beyond a bent picture where beyond is nil: white
	planes        *planes     // of a picture of luma and chroma; nil for any other
	chroma        image.YCbCrSubsampleRatio
	warp          *warp  // how the picture is bent; nil where it hangs flat, upright and whole
	level         *level // how the sheets make up for the lamps; nil where they don't
	dithered      bool   // the artwork is, and so is what is filtered of it
}

// NewSource prepares the artwork to be cut up on the grid, turned as the backdrop hangs, for files that store chroma
// at full resolution (4:4:4) or half of it (4:2:0).
func NewSource(p *artwork.Picture, turn flip.Turn, grid Grid, chroma image.YCbCrSubsampleRatio) *Source {
	s := newSource(p.Image, p.Upright, p.Upright.Then(turn), grid, gray(0xff))
	s.chroma, s.dithered = chroma, p.Dithered
	s.planes = newPlanes(s.art, s.upright, s.turn, grid, chroma)
	return s
}

func newSource(art image.Image, upright, turn flip.Turn, grid Grid, paper color.RGBA) *Source {
	s := &Source{art: art, upright: upright, turn: turn, grid: grid, paper: paper}
	s.width, s.height = turn.Size(art.Bounds().Dx(), art.Bounds().Dy())
	return s
}

func gray(level uint8) color.RGBA { return color.RGBA{level, level, level, 0xff} }

// Chroma is how finely files are to store the colour of what the source makes.
func (s *Source) Chroma() image.YCbCrSubsampleRatio { return s.chroma }

// Gray tells whether the pictures that Cut makes are grey.
func (s *Source) Gray() bool { return printsGray(s.art, s.beyond) }

// Cut makes the pixels of a rectangle of the grid: an *image.Gray or an opaque *image.RGBA with its bounds at
// the origin.
func (s *Source) Cut(r image.Rectangle) image.Image {
	cut := s.cutPicture
	switch {
	case s.warp != nil:
		cut = s.cutWarped
	case s.beyond != nil:
		cut = s.cutSurrounded
	}
	m := cut(r)
	if s.level != nil {
		s.level.apply(m, r)
	}
	return m
}

// cutPicture makes the pixels of a rectangle in the artwork's own kind of picture, its outermost pixels going
// on beyond it.
func (s *Source) cutPicture(r image.Rectangle) image.Image {
	draw := s.filterRect
	if s.width == s.grid.WidthPx && s.height == s.grid.HeightPx {
		draw = s.copyRect
	}
	if _, gray := s.art.(*image.Gray); gray {
		dst := image.NewGray(image.Rect(0, 0, r.Dx(), r.Dy()))
		draw(dst.Pix, dst.Stride, 1, r)
		return dst
	}
	dst := image.NewRGBA(image.Rect(0, 0, r.Dx(), r.Dy()))
	draw(dst.Pix, dst.Stride, 4, r)
	return dst
}

// copyRect writes the artwork's own pixels, as they hang, for a rectangle of them: channels bytes a pixel. Beyond the
// artwork its outermost pixels go on.
func (s *Source) copyRect(dst []byte, stride, channels int, r image.Rectangle) {
	w, h := s.art.Bounds().Dx(), s.art.Bounds().Dy()
	// The turn is affine, so one pixel to the right is the same step in the artwork everywhere.
	x0, y0 := s.turn.Source(0, 0, w, h)
	x1, y1 := s.turn.Source(1, 0, w, h)
	stepX, stepY := x1-x0, y1-y0

	// The artwork's columns lo to hi are read into place; a rectangle wholly beyond it reads the nearest one.
	lo, hi := clamp(r.Min.X, s.width), clamp(r.Max.X-1, s.width)+1
	first := clamp(lo-r.Min.X, r.Dx())
	past := min(first+hi-lo, r.Dx())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		row := dst[(y-r.Min.Y)*stride:][:r.Dx()*channels]
		ax, ay := s.turn.Source(lo, clamp(y, s.height), w, h)
		s.readRun(row[first*channels:past*channels], ax, ay, stepX, stepY)
		repeat(row[:first*channels], row[first*channels:][:channels])
		repeat(row[past*channels:], row[(past-1)*channels:][:channels])
	}
}

// repeat fills dst with copies of a pixel.
func repeat(dst, pixel []byte) {
	for n := copy(dst, pixel); n < len(dst); n *= 2 {
		copy(dst[n:], dst[:n])
	}
}

// readRun reads pixels of the artwork from (x, y) on, counted from its top-left one, stepping by (stepX,
// stepY), one of which is 0 and the other 1 or -1.
func (s *Source) readRun(dst []byte, x, y, stepX, stepY int) {
	x, y = x+s.art.Bounds().Min.X, y+s.art.Bounds().Min.Y // a part of a larger picture keeps that one's coordinates
	switch art := s.art.(type) {
	case *image.Gray:
		readBytes(dst, art.Pix, art.PixOffset(x, y), stepY*art.Stride+stepX)
	case *image.RGBA:
		at, step := art.PixOffset(x, y), stepY*art.Stride+4*stepX
		for i := 0; i < len(dst); i += 4 {
			copy(dst[i:i+4], art.Pix[at:at+4])
			at += step
		}
	case *image.YCbCr:
		for i := 0; i < len(dst); i += 4 {
			luma, chroma := art.YOffset(x, y), art.COffset(x, y)
			dst[i], dst[i+1], dst[i+2] = color.YCbCrToRGB(art.Y[luma], art.Cb[chroma], art.Cr[chroma])
			dst[i+3] = 0xff
			x, y = x+stepX, y+stepY
		}
	}
}

// readBytes reads bytes of src from one on, by steps.
func readBytes(dst, src []byte, at, step int) {
	switch step {
	case 1:
		copy(dst, src[at:])
	case -1:
		for ; len(dst) >= 8; dst, at = dst[8:], at-8 {
			binary.LittleEndian.PutUint64(dst, bits.ReverseBytes64(binary.LittleEndian.Uint64(src[at-7:])))
		}
		fallthrough
	default:
		for i := range dst {
			dst[i] = src[at]
			at += step
		}
	}
}

func clamp(v, n int) int { return max(0, min(v, n-1)) }
