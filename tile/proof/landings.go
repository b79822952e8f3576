package proof

import (
	"context"
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// landings are where rays land that go through a drop that hangs, and how much of their light gets there, interpolated:
// tracing one takes ten times as long as through a ball. The same one of every pixel's rays comes from one place of the
// pupil and looks as far off its pixel's middle, so that its landing changes smoothly from pixel to pixel. It is traced
// for pixels some way apart, nodes, and lies between them on the cubic through four each way. Each cell between nodes
// is tried in its middle, where that is furthest off; where a cubic won't do, rays are traced.
type landings struct {
	step    int // pixels from node to node
	corner  image.Point
	across  int // nodes in a row
	rays    int // to a node
	nodes   []landing
	good    []bool       // of each cell right of and below a node, ray by ray
	weights [][4]float64 // of four nodes in a row, by how many pixels past the second
}

// landing is where a ray lands, optical mm from the drop's middle, and the share of its light that does.
type landing struct {
	xMM, yMM, share float64
	ok              bool
}

const (
	landingStepShare = 0.02 // of the drop's visible radius, from node to node
	mostLandingStep  = 12   // pixels
	// A cubic may miss a ray's landing, in the middle of a cell, by that part of how far the landing moves from a pixel
	// to the next, the way that it moves less; and the share of light by a quarter of a level of 255.
	landingMissPx    = 0.01
	landingMissShare = 0.001
)

// newLandings traces the nodes for a set of rays. There are none for other bodies, which are traced fast, nor where
// drops move.
func (v *view) newLandings(ctx context.Context, aims []aim, box image.Rectangle) *landings {
	step := min(mostLandingStep, int(landingStepShare*v.outline.WidthMM/v.camera.PixelMM()))
	if v.sight.Drop.Body != flip.Hanging || v.moves() || len(v.drops) != 1 || step < 3 {
		return nil
	}
	l := &landings{step: step, corner: box.Min.Sub(image.Pt(step, step)), across: box.Dx()/step + 4, rays: len(aims)}
	for past := range step {
		l.weights = append(l.weights, lagrange(float64(past)/float64(step)))
	}
	down := box.Dy()/step + 4
	l.nodes, l.good = make([]landing, l.across*down*l.rays), make([]bool, l.across*down*l.rays)
	texture.Rows(down, func(j int) {
		for i := range l.across {
			if ctx.Err() != nil {
				return
			}
			for k := range aims {
				l.nodes[l.node(i, j)+k] = v.landing(l.corner.X+i*step, l.corner.Y+j*step, &aims[k])
			}
		}
	})
	half := float64(step) / 2
	texture.Rows(down-3, func(j int) {
		for i := range l.across - 3 {
			if ctx.Err() != nil {
				return
			}
			for k := range aims {
				at := l.node(i+1, j+1) + k
				between, ok := l.between(at, lagrange(0.5), lagrange(0.5))
				if !ok {
					continue
				}
				a := aims[k]
				a.xPx, a.yPx = a.xPx+half, a.yPx+half
				traced := v.landing(l.corner.X+(i+1)*step, l.corner.Y+(j+1)*step, &a)
				off := math.Hypot(traced.xMM-between.xMM, traced.yMM-between.yMM)
				l.good[at] = traced.ok && off <= landingMissPx*l.perPixelMM(at) &&
					math.Abs(traced.share-between.share) <= landingMissShare
			}
		}
	})
	return l
}

// landing traces a ray of a pixel.
func (v *view) landing(i, j int, a *aim) landing {
	drop := v.drops[0]
	l, ok := v.tracer.Trace(fromDrop(v.lens.ray(i, j, a), drop))
	return landing{l.XMM, l.YMM, l.Transmittance, ok && l.Through}
}

// node is the index of the first ray of a node.
func (l *landings) node(i, j int) int { return (j*l.across + i) * l.rays }

// lagrange are the weights of four values, one apart from -1 on, on the cubic through them at t.
func lagrange(t float64) [4]float64 {
	return [4]float64{-t * (t - 1) * (t - 2) / 6, (t + 1) * (t - 1) * (t - 2) / 2, -(t + 1) * t * (t - 2) / 2,
		(t + 1) * t * (t - 1) / 6}
}

// between is a ray's landing between the nodes about a cell, of which at is its node at the upper left; ok is false
// where one of the sixteen is missing.
func (l *landings) between(at int, across, down [4]float64) (sum landing, ok bool) {
	for n, weight := range down {
		row := at + (n-1)*l.across*l.rays
		var x, y, share float64
		for m, w := range across {
			node := &l.nodes[row+(m-1)*l.rays]
			if !node.ok {
				return landing{}, false
			}
			x, y, share = x+float64(w*node.xMM), y+float64(w*node.yMM), share+float64(w*node.share)
		}
		sum.xMM += float64(weight * x)
		sum.yMM += float64(weight * y)
		sum.share += float64(weight * share)
	}
	return sum, true
}

// perPixelMM is how far a ray's landing moves from a pixel to the next, across or down, the way that it moves less.
func (l *landings) perPixelMM(at int) float64 {
	least := math.Inf(1)
	for _, next := range [2]int{at + l.rays, at + l.across*l.rays} {
		a, b := l.nodes[at], l.nodes[next]
		least = min(least, math.Hypot(b.xMM-a.xMM, b.yMM-a.yMM)/float64(l.step))
	}
	return least
}

// at is the landing of one of a pixel's rays; ok is false where it must be traced.
func (l *landings) at(i, j, ray int) (landing, bool) {
	if l == nil {
		return landing{}, false
	}
	i, j = i-l.corner.X, j-l.corner.Y
	x, y := i/l.step, j/l.step
	if i < l.step || j < l.step || x >= l.across-2 {
		return landing{}, false
	}
	at := l.node(x, y) + ray
	if at >= len(l.good) || !l.good[at] {
		return landing{}, false
	}
	return l.between(at, l.weights[i%l.step], l.weights[j%l.step])
}

// throughInside is the light that comes through a drop along one of the rays of a pixel whose rays all meet it.
func (v *view) throughInside(i, j, ray int, at, drop layout.Point, over board.Patch,
	near *board.Expansion) texture.Light {
	if l, ok := v.landings.at(i, j, ray); ok {
		return v.landed(l.xMM+drop.XMM, l.yMM+drop.YMM, over, near).Scale(float32(l.share))
	}
	a := &v.inside[ray]
	return v.through(v.lens.ray(i, j, a), v.met(at, drop, a), over, near)
}
