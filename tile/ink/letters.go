package ink

import (
	"image"
	"image/draw"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// letters is a face whose letters come out the same on every kind of processor. It measures as the face does that it
// holds. That one has its curves drawn by the rasteriser, in products that some processors add in one step; here they
// are cut into straight lines first, at the same places, with every product rounded by itself.
type letters struct {
	font.Face
	font   *sfnt.Font
	size   fixed.Int26_6 // pixels of the em
	buffer sfnt.Buffer
}

// Glyph is a letter's mask, where it belongs for a dot that may lie between pixels (font.Face).
func (l *letters) Glyph(dot fixed.Point26_6, r rune) (
	at image.Rectangle, mask image.Image, maskAt image.Point, advance fixed.Int26_6, ok bool,
) {
	advance, ok = l.GlyphAdvance(r)
	index, err := l.font.GlyphIndex(&l.buffer, r)
	if err != nil || !ok {
		return at, nil, maskAt, 0, false
	}
	outline, err := l.font.LoadGlyph(&l.buffer, index, l.size, nil)
	if err != nil {
		return at, nil, maskAt, 0, false
	}
	box := outline.Bounds().Add(dot)
	at = image.Rect(box.Min.X.Floor(), box.Min.Y.Floor(), box.Max.X.Ceil(), box.Max.Y.Ceil())
	shift := dot.Sub(fixed.P(at.Min.X, at.Min.Y))
	raster := vector.NewRasterizer(at.Dx(), at.Dy())
	raster.DrawOp = draw.Src
	var pen spot
	for _, piece := range outline {
		var to [len(piece.Args)]spot
		for i, p := range piece.Args {
			to[i] = spot{float32(p.X+shift.X) / 64, float32(p.Y+shift.Y) / 64}
		}
		switch piece.Op {
		case sfnt.SegmentOpMoveTo:
			raster.MoveTo(to[0].x, to[0].y)
			pen = to[0]
		case sfnt.SegmentOpLineTo:
			raster.LineTo(to[0].x, to[0].y)
			pen = to[0]
		case sfnt.SegmentOpQuadTo: // the Go fonts' only curves
			for _, p := range straightened(pen, to[0], to[1]) {
				raster.LineTo(p.x, p.y)
			}
			pen = to[1]
		}
	}
	alpha := image.NewAlpha(image.Rect(0, 0, at.Dx(), at.Dy()))
	raster.Draw(alpha, alpha.Rect, image.Opaque, image.Point{})
	return at, alpha, image.Point{}, advance, true
}

// spot is a place on a letter's mask, in pixels, as the rasteriser takes it.
type spot struct{ x, y float32 }

// straightened is a quadratic Bézier curve from a to c, pulled by b, as the ends of straight lines: as many as
// vector.Rasterizer draws it with.
func straightened(a, b, c spot) []spot {
	const curvy, tolerance = 0.333, 3
	var ends []spot
	x, y := a.x-2*b.x+c.x, a.y-2*b.y+c.y // 2 b is exact, and the sum the same in one step or two
	if bend := float32(x*x) + float32(y*y); bend >= curvy {
		n := 1 + int(math.Sqrt(math.Sqrt(tolerance*float64(bend))))
		share, step := float32(0), 1/float32(n)
		for range n - 1 {
			share += step
			ends = append(ends, a.toward(b, share).toward(b.toward(c, share), share))
		}
	}
	return append(ends, c)
}

// toward is the spot that share of the way to another.
func (p spot) toward(q spot, share float32) spot {
	return spot{p.x + float32(share*(q.x-p.x)), p.y + float32(share*(q.y-p.y))}
}
