package raster

import "image"

// draw draws a part of the block.
func (b *block) draw(to *canvas, part image.Rectangle) {
	size, across, down := b.shrunk()
	p := b.patch(size)
	x0, x1 := across.places(part.Min.X-b.corner.X, part.Max.X-b.corner.X)
	y0, y1 := down.places(part.Min.Y-b.corner.Y, part.Max.Y-b.corner.Y)
	row := make([]lanes, part.Dx())
	if across.shift == 0 && down.shift == 0 {
		for y := y0; y < y1; y++ {
			b.lookUp(row, p, x0, y, across.shift, down.shift)
			b.put(to, part, y-y0, row)
		}
		return
	}
	fine := make([]lanes, x1-x0)
	rows := make([]lanes, 0, (y1-y0)*len(row)) // halves, filtered across
	for y := y0; y < y1; y++ {
		b.lookUp(fine, p, x0, y, across.shift, down.shift)
		for i, sum := range fine {
			fine[i] = sum.clip()
		}
		across.across(row, fine)
		if down.shift == 0 {
			b.put(to, part, y-y0, row)
			continue
		}
		for _, sum := range row {
			rows = append(rows, sum.halve())
		}
	}
	if down.shift > 0 {
		for y := range part.Dy() {
			down.down(row, rows[y<<down.shift*len(row):])
			b.put(to, part, y, row)
		}
	}
}

// lookUp looks a row of places up, as sums: from x on, in places of 1 << shiftX to a pixel from the centre of the block's first; likewise y.
func (b *block) lookUp(dst []lanes, p patch, x, y int, shiftX, shiftY uint) {
	for len(dst) > 0 {
		atX, atY, stepX, stepY, left := b.line(p, x, y, shiftX, shiftY)
		n := min(left, len(dst))
		p.run(dst[:n], atX, atY, stepX, stepY, fixedBits+2*b.shift+shiftX+shiftY)
		dst, x = dst[n:], x+n
	}
}

// line is where in the patch a place lies, and the step to the next, of left that there are in its cell: bilinear between the cell's knots, with
// fixedBits + 2 b.shift + shiftX + shiftY binary places.
func (b *block) line(p patch, x, y int, shiftX, shiftY uint) (atX, atY, stepX, stepY, left int) {
	shiftX, shiftY = shiftX+b.shift, shiftY+b.shift
	i, j := x>>shiftX, y>>shiftY
	x, y = x-i<<shiftX, y-j<<shiftY
	k := (j+b.spare)*b.side + i + b.spare
	along := func(v []int) (at, step int) {
		from := v[k]<<shiftY + (v[k+b.side]-v[k])*y
		to := v[k+1]<<shiftY + (v[k+b.side+1]-v[k+1])*y
		return from<<shiftX + (to-from)*x, to - from
	}
	atX, stepX = along(p.xs)
	atY, stepY = along(p.ys)
	return atX, atY, stepX, stepY, 1<<shiftX - x
}

// put writes a row of sums where the picture shows.
func (b *block) put(to *canvas, part image.Rectangle, y int, row []lanes) {
	y += part.Min.Y
	j := (y-b.corner.Y)>>b.shift + b.spare
	for x := part.Min.X; x < part.Max.X; {
		cell := (x - b.corner.X) >> b.shift
		end := min(part.Max.X, b.corner.X+(cell+1)<<b.shift)
		switch b.cells[j*b.side+cell+b.spare] {
		case all:
			for ; x < end; x++ {
				to.put(x, y, row[x-part.Min.X], 256)
			}
		case some:
			for ; x < end; x++ {
				inside := b.at(float64(x)+0.5, float64(y)+0.5).inside
				if share := int(256*max(0, min(1, inside+0.5)) + 0.5); share > 0 {
					to.put(x, y, row[x-part.Min.X], share)
				}
			}
		}
		x = end
	}
}
