package texture

// The first level has a quarter of the artwork's pixels, three times what all above it have, and only pictures that
// look closely read it. It is made when it is first read, and of an artwork of more than mostHeldPx pixels never: each
// pixel is then made again whenever it is read, which takes some ten times as long and next to no memory.
const mostHeldPx = 32 << 20

// holdsFirst tells whether the first level is held.
func (t *Texture) holdsFirst() bool { return t.width*t.height <= mostHeldPx }

// firstRow makes a row of the first level in buffer.
func (t *Texture) firstRow(y int, buffer []uint8) []uint8 {
	n := t.width * t.channels()
	rows := make([]uint8, 2*n)
	t.mean(buffer, t.artworkRow(2*y, rows[:n]), t.artworkRow(min(2*y+1, t.height-1), rows[n:]), t.width, t.channels())
	return buffer
}

// half is a level from 1 on.
func (t *Texture) half(number int) *level {
	if number == 1 {
		t.first.Do(func() {
			t.halves[0].pix = shrink(t.width, t.height, t.channels(), t.artworkRow, t.mean).pix
		})
	}
	return &t.halves[number-1]
}

// firstPixel makes a pixel of the first level.
func (t *Texture) firstPixel(x, y int) (pixel [4]uint8) {
	n := t.channels()
	var rows [2][6]uint8
	across := min(2, t.width-2*x)
	for i := range rows {
		for k := range across {
			c := t.artworkAt(2*x+k, min(2*y+i, t.height-1))
			copy(rows[i][n*k:n*(k+1)], []uint8{c.R, c.G, c.B})
		}
	}
	t.mean(pixel[:n], rows[0][:], rows[1][:], across, n)
	return pixel
}

// bilinearFirst reads the first level, which is not held, between its four nearest pixels.
func (t *Texture) bilinearFirst(u, v float64) Light {
	first := &t.halves[0]
	left, right, fx := neighbours(u, first.width)
	top, bottom, fy := neighbours(v, first.height)
	a, b := t.firstPixel(left, top), t.firstPixel(right, top)
	c, d := t.firstPixel(left, bottom), t.firstPixel(right, bottom)
	return blend(a[:], b[:], c[:], d[:], first.channels, fx, fy)
}
