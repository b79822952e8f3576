package raster

import (
	"image"
	"math"
)

// blockShift: blocks are 128 pixels across and down, from the grid's corner on.
const blockShift = 7

// block is a block of the grid and the knots of its map. Knot (i, j) is the place of the centre of the pixel
// that lies i steps right and j down of the block's corner; the knots go on beyond the block as far as
// kernels reach.
type block struct {
	*warp
	corner image.Point
	spare  int // how many knots there are before the block's corner
	side   int // knots to a row
	knots  []knot
	cells  []showing       // right of and below each knot
	part   image.Rectangle // of the cells, those that may show picture
	slopes []place         // places all about what shows
}

// knot is what of a place each knot needs.
type knot struct {
	u, v  float64
	known bool
}

func (w *warp) block(corner image.Point) *block {
	b := &block{warp: w, corner: corner, spare: w.knotsSpare()}
	b.side = 1<<(blockShift-w.shift) + 2*b.spare + 1
	b.knots, b.cells = make([]knot, b.side*b.side), make([]showing, b.side*b.side)
	posts := w.posts(corner)
	stands := make([]stand, b.side) // of the knots, across and down alike
	for i := range stands {
		stands[i] = posts.stand((i - b.spare) << b.shift)
	}
	var seen image.Rectangle // of the cells between posts, those that may show picture
	for j, down := range stands[:b.side-1] {
		for i, across := range stands[:b.side-1] {
			cell := posts.shown(across.post, down.post)
			if b.cells[j*b.side+i] = cell; cell != none {
				b.part = b.part.Union(image.Rect(i, j, i+1, j+1))
				seen = seen.Union(image.Rect(across.post, down.post, across.post+1, down.post+1))
			}
		}
	}
	if !b.shows() {
		return b
	}
	for j := range stands {
		for i := range stands {
			u, v, known := posts.between(&stands[i], &stands[j])
			if !known {
				at := b.at(b.centre(i, corner.X), b.centre(j, corner.Y), nowhere)
				u, v, known = at.u, at.v, at.known
			}
			b.knots[j*b.side+i] = knot{u, v, known}
		}
	}
	b.slopes = posts.knownAbout(seen)
	return b
}

// knotsSpare is how many knots there are before a block's corner, and beyond its far one.
func (w *warp) knotsSpare() int { return max(1, (lobes+1)>>w.shift) }

// centre is the grid coordinate of a knot.
func (b *block) centre(i, corner int) float64 { return float64(corner+(i-b.spare)<<b.shift) + 0.5 }

func (b *block) rect() image.Rectangle {
	return image.Rectangle{b.corner, b.corner.Add(image.Pt(1<<blockShift, 1<<blockShift))}
}

// shows tells whether the block shows anything of the picture.
func (b *block) shows() bool { return !b.part.Empty() }

// shrunk chooses how far to shrink the artwork for the block, and how finely to look it up. What the grid can
// show of the artwork has frequencies up to half a cycle a grid pixel, an ellipse in the artwork's; to either
// side it reaches as far as the slopes' inverse says. The least shrinking anywhere in the block counts.
func (b *block) shrunk() (size Grid, across, down finer) {
	byX, byY := math.Inf(1), math.Inf(1)
	for _, p := range b.slopes {
		area := math.Abs(p.ux*p.vy - p.uy*p.vx)
		byX, byY = min(byX, area/math.Hypot(p.vx, p.vy)/roomier), min(byY, area/math.Hypot(p.ux, p.uy)/roomier)
	}
	byX, byY = atLeastOne(byX), atLeastOne(byY)
	measure := func() (x, y load) {
		x, y = load{}, load{}
		for _, p := range b.slopes {
			x, y = x.add(p.ux/byX, p.vx/byY), y.add(p.uy/byX, p.vy/byY)
		}
		return x, y
	}
	x, y := measure()
	if over := max(x.corner, y.corner) / (foldsAt * (1 << maxFiner)); over > 1 {
		byX, byY = byX*over, byY*over // squeezed so unevenly that it may as well blur a little
		x, y = measure()
	}
	shrink := func(px int, by float64) int { return max(1, int(math.Ceil(float64(px)/by))) }
	return Grid{shrink(b.upright.width, byX), shrink(b.upright.height, byY)}, newFiner(x), newFiner(y)
}

// atLeastOne takes what is not a number for 1 too.
func atLeastOne(v float64) float64 {
	if v > 1 && !math.IsInf(v, 1) {
		return v
	}
	return 1
}

// cellsAbout are the cells that a part of the block and the kernels about it touch, of those that may show picture.
func (b *block) cellsAbout(part image.Rectangle) image.Rectangle {
	px := part.Sub(b.corner).Inset(-lobes - 1)
	return image.Rect(px.Min.X>>b.shift, px.Min.Y>>b.shift, px.Max.X>>b.shift+1, px.Max.Y>>b.shift+
		1).Add(image.Pt(b.spare, b.spare)).Intersect(b.part)
}

// each goes through the knots about cells, where they are known.
func (b *block) each(cells image.Rectangle, do func(k int)) {
	for j := cells.Min.Y; j <= cells.Max.Y; j++ {
		for i := cells.Min.X; i <= cells.Max.X; i++ {
			if k := j*b.side + i; b.knots[k].known {
				do(k)
			}
		}
	}
}
