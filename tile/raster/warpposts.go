package raster

import (
	"image"
	"math"
)

// Posts are places of the map that lie further apart than knots: the knots are taken between them, on a curve
// through four posts each way, which costs a fraction of asking for each.
const (
	maxPostShift = 5
	minPostShift = maxKnotShift + 1
	// postErrorPx is by how much a curve may miss the map half-way between posts, as knotErrorPx is for knots.
	postErrorPx = 0.002
	// postsAbout is how many posts a curve takes to either side.
	postsAbout = 2
)

// postShift is how far apart posts may lie at most: 1 << postShift pixels. Where the map is too bent for any,
// it is as far as knots.
func (w *warp) postShift() uint {
	apart := w.shift
	// Upward, since a small print has room for few tries of posts far apart.
	for shift := uint(minPostShift); shift <= maxPostShift &&
		!w.bendsOver(float64(int(1)<<shift), cubic(0.5), postErrorPx); shift++ {
		apart = shift
	}
	return apart
}

// cubic are the weights of four values, one apart from -1 on, on the cubic through them at t (Lagrange's formula).
func cubic(t float64) [2 * postsAbout]float64 {
	return [2 * postsAbout]float64{
		-t * (t - 1) * (t - 2) / 6,
		(t + 1) * (t - 1) * (t - 2) / 2,
		-(t + 1) * t * (t - 2) / 2,
		(t + 1) * t * (t - 1) / 6,
	}
}

// posts are those of a block, row by row, from before their corner on.
type posts struct {
	all    []place
	before int // how many stand before the corner
	across int
	shift  uint // they lie 1 << shift pixels apart
	// far is a distance from the outline at which a cell between posts lies wholly on one side of it: far off
	// it is known to first order only, and twice the cell's diagonal leaves room for that.
	far   float64
	cells []showing
}

// posts asks for those of a block. They lie as far apart as they may where all of them are well within the
// print, and closer where its outline is to be found.
func (w *warp) posts(corner image.Point) posts {
	p, ok := w.postsApart(corner, w.curve, true)
	if !ok {
		p, _ = w.postsApart(corner, min(w.curve, minPostShift), false)
	}
	p.cells = make([]showing, len(p.all))
	for j := range p.across - 1 {
		for i := range p.across - 1 {
			p.cells[j*p.across+i] = p.look(i, j)
		}
	}
	return p
}

// postsApart asks for posts so far apart. ok is false if all of them must be well within the print and one isn't.
func (w *warp) postsApart(corner image.Point, shift uint, within bool) (p posts, ok bool) {
	apart := float64(int(1) << shift)
	p = posts{before: max(postsAbout, w.knotsSpare()<<w.shift>>shift), shift: shift,
		far: 2*math.Hypot(apart*w.across, apart*w.down) + 1}
	p.across = 1<<(blockShift-shift) + 2*p.before + 1
	p.all = make([]place, 0, p.across*p.across)
	for j := range p.across {
		for i := range p.across {
			at := func(k, corner int) float64 { return float64(corner+(k-p.before)<<shift) + 0.5 }
			post := w.at(at(i, corner.X), at(j, corner.Y), p.far)
			if within && !(post.known && post.inside > p.far) {
				return posts{}, false
			}
			p.all = append(p.all, post)
		}
	}
	return p, true
}

// showing is how much of a cell lies within the printed picture's outline.
type showing uint8

const (
	none showing = iota
	some         // or all or none: it must be looked at pixel by pixel
	all
)

// look looks at the cell right of and below a post.
func (p posts) look(i, j int) showing {
	nearest, furthest, known := math.Inf(1), math.Inf(-1), 0
	for _, k := range [4]int{0, 1, p.across, p.across + 1} {
		post := p.all[j*p.across+i+k]
		nearest, furthest = min(nearest, post.inside), max(furthest, post.inside)
		if post.known {
			known++
		}
	}
	switch {
	case known == 0 || known == 4 && furthest < -p.far:
		return none
	case nearest > p.far:
		return all
	}
	return some
}

// shown tells of the cell right of and below a post.
func (p posts) shown(i, j int) showing { return p.cells[j*p.across+i] }

// knownAbout are the posts about cells that are known.
func (p posts) knownAbout(cells image.Rectangle) []place {
	known := make([]place, 0, (cells.Dx()+1)*(cells.Dy()+1))
	for j := cells.Min.Y; j <= cells.Max.Y; j++ {
		for i := cells.Min.X; i <= cells.Max.X; i++ {
			if post := p.all[j*p.across+i]; post.known {
				known = append(known, post)
			}
		}
	}
	return known
}

// stand is where a knot stands among the posts along one axis: at one of them or beyond it, and then what
// four of them weigh.
type stand struct {
	post    int
	on      bool
	weights [2 * postsAbout]float64
}

// stand is where one stands so many pixels from the block's corner.
func (p posts) stand(px int) stand {
	px += p.before << p.shift
	part := px & (1<<p.shift - 1)
	return stand{px >> p.shift, part == 0, cubic(float64(part) / float64(int(1)<<p.shift))}
}

// between is a place among the posts, in picture coordinates. ok is false where one of the posts about it isn't known.
func (p posts) between(across, down *stand) (u, v float64, ok bool) {
	if across.on && down.on {
		post := &p.all[down.post*p.across+across.post]
		return post.u, post.v, post.known
	}
	for k, weight := range down.weights {
		rowU, rowV := 0.0, 0.0
		row := p.all[(down.post+k-1)*p.across+across.post-1:][:2*postsAbout]
		for l := range row {
			post := &row[l]
			if !post.known {
				return 0, 0, false
			}
			rowU, rowV = rowU+across.weights[l]*post.u, rowV+across.weights[l]*post.v
		}
		u, v = u+weight*rowU, v+weight*rowV
	}
	return u, v, true
}
