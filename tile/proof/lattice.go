package proof

import (
	"context"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// lattice holds slopes in a rod at every few pixels. They change slowly but for the rod's rim: between the nodes they
// lie on straight lines. A ball has rings.
type lattice struct {
	step   int // pixels from node to node; 1 where every pixel is its own
	across int // nodes in a row
	nodes  []node
}

// node is a node of the lattice, at a pixel's middle; ok is false where there is none.
type node struct {
	slopes
	drop layout.Point // whose they are
	ok   bool
}

// A straight line over a step misses a slope by at most 1/8 of the step's square and of the second
// derivative. Across a drop of radius 1, slopes grow about as (1 - u²)^(-3/2) with the distance u from its
// middle, whose second derivative is 82 times itself at u = 0.8: with 70 steps to the radius that is a fifth
// of a per cent, and under half a per cent in a spread, which has squares of slopes. A test holds it against
// traced slopes.
const (
	stepsARadius = 70
	nodesWithin  = 0.8 // of the drop's visible radius
)

// newLattice works the nodes out.
func (v *view) newLattice(ctx context.Context) lattice {
	radiusMM := min(v.outline.WidthMM, v.outline.HeightMM)
	l := lattice{step: max(1, int(radiusMM/v.camera.PixelMM()/stepsARadius))}
	if l.step == 1 || !v.sight.Drop.Body.Rod() {
		return lattice{step: 1}
	}
	l.across = v.camera.WidthPx/l.step + 2
	down := v.camera.HeightPx/l.step + 2
	l.nodes = make([]node, l.across*down)
	texture.Rows(down, func(j int) {
		if ctx.Err() != nil {
			return
		}
		for i := range l.across {
			at := v.camera.At(float64(i*l.step)+0.5, float64(j*l.step)+0.5)
			n := node{drop: v.nearest(at)}
			if v.share(at, n.drop) <= nodesWithin {
				n.slopes, n.ok = v.slopes(at, n.drop)
			}
			l.nodes[j*l.across+i] = n
		}
	})
	return l
}

// at is the slopes at a pixel's middle through a drop; ok is false where a node is missing.
func (l *lattice) at(i, j int, drop layout.Point) (s slopes, ok bool) {
	if l.step == 1 {
		return slopes{}, false
	}
	x, y := i/l.step, j/l.step
	row, next := l.nodes[y*l.across+x:][:2], l.nodes[(y+1)*l.across+x:][:2]
	for _, n := range [4]*node{&row[0], &row[1], &next[0], &next[1]} {
		if !n.ok || n.drop != drop {
			return slopes{}, false
		}
	}
	fx, fy := float64(i%l.step)/float64(l.step), float64(j%l.step)/float64(l.step)
	upper, lower := row[0].to(&row[1].slopes, fx), next[0].to(&next[1].slopes, fx)
	return upper.to(&lower, fy), true
}

// slopesAt is the slopes at a pixel's middle through a drop as they are known without a trace; ok is false where they
// are not.
func (v *view) slopesAt(i, j int, at, drop layout.Point) (s slopes, ok bool) {
	if r := ringsOf(v.rings, drop); r != nil {
		k, ok := r.at(at)
		return k.slopes, ok
	}
	return v.lattice.at(i, j, drop)
}

// throughSpread is the spread of a pixel's rays through a drop: as it is known, or traced.
func (v *view) throughSpread(i, j int, at, drop layout.Point) spread {
	if r := ringsOf(v.rings, drop); r != nil && v.draft {
		if k, ok := r.about(at); ok {
			return v.spread(&k.slopes)
		}
	}
	s, ok := v.slopesAt(i, j, at, drop)
	if !ok {
		s, _ = v.slopes(v.within(at, drop), drop)
	}
	return v.spread(&s)
}
