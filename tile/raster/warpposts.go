package raster

import (
	"image"
	"math"
)

// Posts are places of the map that lie further apart than knots. Well within the print, where the map is smooth, the knots of a block are taken between them on a curve through four posts each way, which
// costs a fraction of asking for each.
const (
	maxPostShift = 5
	minPostShift = maxKnotShift + 1
	// postErrorPx is by how much a curve may miss the map half-way between posts, as knotErrorPx is for knots.
	postErrorPx = 0.002
	// postsAbout is how many posts a curve takes to either side.
	postsAbout = 2
)

// postShift is how far apart posts may lie: 1 << postShift pixels. It is 0 where the map isn't smooth enough for any.
func (w *warp) postShift() uint {
	for shift := uint(maxPostShift); shift >= minPostShift; shift-- {
		if w.bendOver(float64(int(1)<<shift), cubic(0.5)) <= postErrorPx {
			return shift
		}
	}
	return 0
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

// posts are those of a block, row by row, from postsAbout before its corner on, if all of them lie well within the print; nil otherwise.
func (w *warp) posts(corner image.Point) []place {
	if w.curve == 0 {
		return nil
	}
	far := 3*float64(int(1)<<w.curve) + 1 // as block.shown has it
	n := w.postsAcross()
	all := make([]place, 0, n*n)
	for j := range n {
		for i := range n {
			at := func(k, corner int) float64 { return float64(corner+(k-postsAbout)<<w.curve) + 0.5 }
			p := w.at(at(i, corner.X), at(j, corner.Y))
			if !p.known || p.inside <= far {
				return nil
			}
			all = append(all, p)
		}
	}
	return all
}

func (w *warp) postsAcross() int { return 1<<(blockShift-w.curve) + 2*postsAbout + 1 }

// fill works the knots out from a block's posts: first each row of posts at the knots' columns, then each column.
func (b *block) fill(posts []place) {
	n := b.postsAcross()
	type point struct{ u, v float64 }
	// The posts about a knot, and their weights.
	about := func(i int) (first int, weights [2 * postsAbout]float64) {
		px := (i-b.spare)<<b.shift + postsAbout<<b.curve
		part := float64(px&(1<<b.curve-1)) / float64(int(1)<<b.curve)
		return px>>b.curve - 1, cubic(part)
	}
	rows := make([]point, n*b.side)
	for i := range b.side {
		first, weights := about(i)
		for j := range n {
			sum := &rows[j*b.side+i]
			for k, w := range weights {
				p := &posts[j*n+first+k]
				sum.u, sum.v = sum.u+w*p.u, sum.v+w*p.v
			}
		}
	}
	b.knots = make([]knot, b.side*b.side)
	for j := range b.side {
		first, weights := about(j)
		for i := range b.side {
			to := knot{inside: math.Inf(1), known: true}
			for k, w := range weights {
				p := &rows[(first+k)*b.side+i]
				to.u, to.v = to.u+w*p.u, to.v+w*p.v
			}
			b.knots[j*b.side+i] = to
			b.cells[j*b.side+i] = all
		}
	}
	b.part, b.slopes = image.Rect(0, 0, b.side-1, b.side-1), posts
}
