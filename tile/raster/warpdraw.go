package raster

import (
	"image"
	"math"

	"dropsheet/tile/raster/weigh"
)

// draw draws a part of the block.
func (b *block) draw(to *canvas, part image.Rectangle) {
	size, across, down := b.shrunk()
	r := b.patchRect(size, part)
	if r.Empty() {
		return
	}
	p := b.patch(size, r)
	x0, x1 := across.places(part.Min.X-b.corner.X, part.Max.X-b.corner.X)
	y0, y1 := down.places(part.Min.Y-b.corner.Y, part.Max.Y-b.corner.Y)
	row := make([]byte, part.Dx()*p.channels)
	if across.shift == 0 && down.shift == 0 {
		for y := range part.Dy() {
			p.lookUp(row, b.path(p, x0, y0+y, x1-x0, 0, 0))
			b.put(to, part, y, to.asPixels(row, p.channels))
		}
		return
	}
	columns, rows := inRow(across.taps(part.Dx()), 0), down.taps(part.Dy())
	stride := (x1 - x0) * p.channels
	fine := make([]byte, (y1-y0+1)*stride) // a row more, for an even number of weights
	for y := range y1 - y0 {
		p.lookUp(fine[y*stride:][:stride], b.path(p, x0, y0+y, x1-x0, across.shift, down.shift))
	}
	f := newFilter(columns, x1-x0, p.channels)
	for y, t := range rows {
		f.row(row, fine[t.first*stride:], stride, t.weights)
		b.put(to, part, y, to.asPixels(row, p.channels))
	}
}

// path is where in the patch a row of n places lies, bilinear between the knots: from x on, in places of 1 <<
// shiftX to a pixel from the centre of the block's first; likewise y.
func (b *block) path(p *patch, x, y, n int, shiftX, shiftY uint) weigh.Path {
	shiftX, shiftY = shiftX+b.shift, shiftY+b.shift
	i, j := x>>shiftX, y>>shiftY
	y -= j << shiftY
	path := weigh.Path{Shift: shiftX, Places: fixedBits + shiftY, Skip: x - i<<shiftX}
	k := (j+b.spare)*b.side + i + b.spare
	along := func(knots, row []int) []int {
		for k := range row {
			row[k] = knots[k]<<shiftY + (knots[k+b.side]-knots[k])*y
		}
		return row
	}
	count := (path.Skip+n-1)>>shiftX + 2
	path.X = along(p.xs[k:], p.rowX[:count])
	path.Y = along(p.ys[k:], p.rowY[:count])
	return path
}

// outlineToldPx is how far off the way to the outline is told well enough to skip half of it: further off,
// near a corner, it may be a third.
const outlineToldPx = 1 << minPostShift

// put writes a row of the block's part, y rows below its upper edge, where the picture shows.
func (b *block) put(to *canvas, part image.Rectangle, y int, row []byte) {
	y += part.Min.Y
	j := (y-b.corner.Y)>>b.shift + b.spare
	pixels := func(x, n int) []byte { return row[(x-part.Min.X)*to.channels:][:n*to.channels] }
	for x := part.Min.X; x < part.Max.X; {
		cell := (x - b.corner.X) >> b.shift
		end := min(part.Max.X, b.corner.X+(cell+1)<<b.shift)
		switch b.cells[j*b.side+cell+b.spare] {
		case all:
			to.put(x, y, pixels(x, end-x))
			x = end
		case some:
			at := b.at(float64(x)+0.5, float64(y)+0.5, outlineToldPx)
			inside, alike := at.inside, 1
			if at.known {
				// The outline is no nearer than half of what it seems, as posts.far has it: so many pixels are like this one.
				alike = max(1, min(part.Max.X-x, int((min(math.Abs(inside), outlineToldPx)-0.5)/(2*b.across))))
			}
			if share := int(256*max(0, min(1, inside+0.5)) + 0.5); share == 256 {
				to.put(x, y, pixels(x, alike))
			} else if share > 0 {
				to.mix(x, y, pixels(x, 1), share)
			}
			x += alike
		default:
			x = end
		}
	}
}
