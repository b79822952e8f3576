package seamsight

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// paint is the light that the printed board sends back in full light, and how busy it is, at every scale: a stack of ever coarser copies.
type paint struct {
	picture          layout.Rect // on the board
	reverseX, revY   bool
	mmPerPx          float64 // of the finest copy
	levels           []level
	surround         float32 // luminance of a surround of one colour
	plain            bool    // whether it has one
	perWide, perHigh float64
}

// level is one copy: luminance, and its standard deviation over the windowPx pixels each way round a pixel.
type level struct {
	width, height int
	mean, spread  []float32
}

const (
	// finestPx bounds the finest copy. Of a metre of board it knows half a millimetre, about the width of a seam.
	finestPx = 2048
	// windowPx is how far round a line detail counts as its surroundings, in widths of the line as it shows. Within two or three widths to
	// either side detail masks most (our model).
	windowPx = 5
)

func newPaint(p layout.Plan, picture *texture.Texture) paint {
	turn := p.Drop.Reverses.Turn()
	on := p.PictureOnBoard()
	m := paint{picture: on, reverseX: turn.ReverseX, revY: turn.ReverseY}
	if c, ok := p.Backdrop.Surround.Colour(); ok {
		m.plain, m.surround = true, texture.FromSRGB(c).Luminance()
	}
	finest := picture.Reduced(finestPx)
	w, h := finest.Rect.Dx(), finest.Rect.Dy()
	l := level{width: w, height: h, mean: make([]float32, w*h)}
	texture.Rows(h, func(y int) {
		for x := range w {
			l.mean[y*w+x] = texture.FromSRGB(finest.RGBAAt(x, y)).Luminance()
		}
	})
	m.mmPerPx = on.WidthMM / float64(w)
	for {
		l.spread = l.spreads()
		m.levels = append(m.levels, l)
		if l.width == 1 && l.height == 1 {
			break
		}
		l = l.halved()
	}
	return m
}

// halved is the copy at half the size, rounding up.
func (l level) halved() level {
	out := level{width: (l.width + 1) / 2, height: (l.height + 1) / 2}
	out.mean = make([]float32, out.width*out.height)
	texture.Rows(out.height, func(y int) {
		upper := l.mean[2*y*l.width:][:l.width]
		lower := l.mean[min(2*y+1, l.height-1)*l.width:][:l.width]
		row := out.mean[y*out.width:][:out.width]
		for x := range row {
			left, right := 2*x, min(2*x+1, l.width-1)
			row[x] = (upper[left] + upper[right] + lower[left] + lower[right]) / 4
		}
	})
	return out
}

// spreads is the standard deviation round each pixel. Beyond the edge there is nothing to count.
func (l level) spreads() []float32 {
	const side = windowPx / 2
	spread := make([]float32, len(l.mean))
	texture.Rows(l.height, func(y int) {
		// Sums of each column of the window, then sums of those along the row.
		sums, squares := make([]float64, l.width), make([]float64, l.width)
		top, bottom := max(0, y-side), min(l.height-1, y+side)
		for j := top; j <= bottom; j++ {
			for x, v := range l.mean[j*l.width:][:l.width] {
				sums[x] += float64(v)
				squares[x] += float64(v) * float64(v)
			}
		}
		var sum, square float64
		for x := range min(side, l.width) {
			sum, square = sum+sums[x], square+squares[x]
		}
		for x := range l.width {
			if in := x + side; in < l.width {
				sum, square = sum+sums[in], square+squares[in]
			}
			if out := x - side - 1; out >= 0 {
				sum, square = sum-sums[out], square-squares[out]
			}
			n := float64((bottom - top + 1) * (min(l.width-1, x+side) - max(0, x-side) + 1))
			mean := sum / n
			spread[y*l.width+x] = float32(math.Sqrt(max(0, square/n-mean*mean)))
		}
	})
	return spread
}

// at is the luminance at a place in board mm averaged over about spanMM, and its standard deviation around there at that scale.
func (m *paint) at(xMM, yMM, spanMM float64) (mean, spread float64) {
	u, v := (xMM-m.picture.XMM)/m.picture.WidthMM, (yMM-m.picture.YMM)/m.picture.HeightMM
	if m.plain && (u < 0 || u > 1 || v < 0 || v > 1) {
		return float64(m.surround), 0
	}
	if m.reverseX {
		u = 1 - u
	}
	if m.revY {
		v = 1 - v
	}
	i := 0
	for span := spanMM / m.mmPerPx; span > math.Sqrt2 && i+1 < len(m.levels); span /= 2 {
		i++
	}
	return m.levels[i].read(u, v)
}

// read is the copy's figures at picture coordinates, between its pixels. Beyond the picture its outermost pixels go on.
func (l *level) read(u, v float64) (mean, spread float64) {
	x, y := u*float64(l.width)-0.5, v*float64(l.height)-0.5
	left, top := math.Floor(x), math.Floor(y)
	fx, fy := x-left, y-top
	x0, x1 := clamp(left, l.width), clamp(left+1, l.width)
	upper, lower := clamp(top, l.height)*l.width, clamp(top+1, l.height)*l.width
	blend := func(of []float32) float64 {
		a, b := float64(of[upper+x0]), float64(of[upper+x1])
		c, d := float64(of[lower+x0]), float64(of[lower+x1])
		a += (b - a) * fx
		c += (d - c) * fx
		return a + (c-a)*fy
	}
	return blend(l.mean), blend(l.spread)
}

// clamp makes a pixel number of v on an axis of n pixels.
func clamp(v float64, n int) int { return int(max(0, min(v, float64(n-1)))) }
