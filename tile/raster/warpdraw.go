package raster

import (
	"image"
	"math"

	"dropsheet/tile/weigh"
)

// draw draws a part of the block.
func (b *block) draw(to *canvas, part image.Rectangle) {
	size, across, down := b.shrunk()
	p := b.patch(size)
	x0, x1 := across.places(part.Min.X-b.corner.X, part.Max.X-b.corner.X)
	y0, y1 := down.places(part.Min.Y-b.corner.Y, part.Max.Y-b.corner.Y)
	row := newPlanesOf(len(p.planes), part.Dx())
	if across.shift == 0 && down.shift == 0 {
		for y := range part.Dy() {
			b.lookUp(row, p, x0, y0+y, 0, 0)
			b.put(to, part, y, row)
		}
		return
	}
	columns, rows := inRow(across.taps(part.Dx()), 0), down.taps(part.Dy())
	stride := max(x1-x0, columns.Reach())
	fine := newPlanesOf(len(p.planes), (y1-y0+1)*stride) // a row more, for an even number of weights
	line := make([][]byte, len(fine))
	for y := range y1 - y0 {
		for i, plane := range fine {
			line[i] = plane[y*stride:][:x1-x0]
		}
		b.lookUp(line, p, x0, y0+y, across.shift, down.shift)
	}
	f := newFilter(columns, 1)
	for y, t := range rows {
		for i, plane := range fine {
			f.row(row[i], plane[t.first*stride:], stride, t.weights)
		}
		b.put(to, part, y, row)
	}
}

// lookUp looks a row of places up, in each plane: from x on, in places of 1 << shiftX to a pixel from the centre of the block's first; likewise y.
func (b *block) lookUp(dst [][]byte, p patch, x, y int, shiftX, shiftY uint) {
	for from := 0; from < len(dst[0]); {
		line, left := b.line(p, x+from, y, shiftX, shiftY)
		n := min(left, len(dst[0])-from)
		for i, plane := range p.planes {
			weigh.LookUp(dst[i][from:from+n], plane, p.stride, line, phases)
		}
		from += n
	}
}

// line is where in the patch a place lies, and those right of it, of which left are in its cell: bilinear between the cell's knots.
func (b *block) line(p patch, x, y int, shiftX, shiftY uint) (line weigh.Line, left int) {
	line.Places = fixedBits + 2*b.shift + shiftX + shiftY
	shiftX, shiftY = shiftX+b.shift, shiftY+b.shift
	i, j := x>>shiftX, y>>shiftY
	x, y = x-i<<shiftX, y-j<<shiftY
	k := (j+b.spare)*b.side + i + b.spare
	along := func(v []int) (at, step int) {
		from := v[k]<<shiftY + (v[k+b.side]-v[k])*y
		to := v[k+1]<<shiftY + (v[k+b.side+1]-v[k+1])*y
		return from<<shiftX + (to-from)*x, to - from
	}
	line.X, line.StepX = along(p.xs)
	line.Y, line.StepY = along(p.ys)
	return line, 1<<shiftX - x
}

// put writes a row of the block's part, y rows below its upper edge, where the picture shows.
func (b *block) put(to *canvas, part image.Rectangle, y int, row [][]byte) {
	y += part.Min.Y
	j := (y-b.corner.Y)>>b.shift + b.spare
	for x := part.Min.X; x < part.Max.X; {
		cell := (x - b.corner.X) >> b.shift
		end := min(part.Max.X, b.corner.X+(cell+1)<<b.shift)
		switch b.cells[j*b.side+cell+b.spare] {
		case all:
			to.put(x, y, row, x-part.Min.X, end-part.Min.X)
			x = end
		case some:
			inside := b.at(float64(x)+0.5, float64(y)+0.5).inside
			// The outline is no nearer than half of what it seems, as in block.shown: so many pixels are like this one.
			alike := max(1, min(end-x, int((math.Abs(inside)-0.5)/2)))
			if share := int(256*max(0, min(1, inside+0.5)) + 0.5); share == 256 {
				to.put(x, y, row, x-part.Min.X, x-part.Min.X+alike)
			} else if share > 0 {
				to.mix(x, y, row, x-part.Min.X, share)
			}
			x += alike
		default:
			x = end
		}
	}
}
