package raster

import (
	"image"
	"math"

	"dropsheet/layout"
)

// warp is how a bent picture hangs. Its pixels are made block by block, of blocks that lie fixed on the grid,
// so that a pixel comes out alike in every sheet that shows it.
//
// From-space: grid pixels. To-space: the artwork's own, upright: the picture coordinates of a place of the
// board times the artwork's size.
//
// A block's part of the artwork is shrunk first, as far as the picture there can bear it, and looked up with
// a Lanczos kernel on the artwork's own axes, which blurs nothing. Where the map still shrinks, the block is
// looked up on a finer lattice, and that filtered down along the grid's axes: no more and no less goes than
// the grid can't show, whichever way the map stretches.
type warp struct {
	hanging *layout.Hanging
	picture layout.Rect // where the grid lies on the board
	grid    Grid
	upright Source // the artwork; its grid is set for each block
	// How wide and how high a grid pixel is, of the mean of both: distances from the outline are counted in that.
	across, down float64

	shift uint // knots lie 1 << shift pixels apart
	curve uint // and posts, from which knots are taken, up to 1 << curve
}

// Hang has the picture hang bent, turned or framed, and returns s, unchanged where the picture is plain;
// picture is where the grid lies on the board. Beyond the printed picture's outline the surround's colour
// stands, or white where there is none. The turn that NewSource was given then counts for nothing. It must
// not be called any more once Cut has been.
func (s *Source) Hang(h *layout.Hanging, picture layout.Rect) *Source {
	s.warp = nil
	if h.Plain() {
		return s
	}
	if s.planes != nil {
		s.planes.hang(h, picture)
	}
	upright := Source{art: s.art, turn: s.upright}
	upright.width, upright.height = s.upright.Size(s.art.Bounds().Dx(), s.art.Bounds().Dy())
	perX, perY := s.grid.perMM(picture)
	s.warp = &warp{hanging: h, picture: picture, grid: s.grid, upright: upright, across: math.Sqrt(perY / perX),
		down: math.Sqrt(perX / perY)}
	s.warp.shift, s.warp.curve = s.warp.knotShift(), s.warp.postShift()
	return s
}

// place is what of the artwork a place of the grid shows.
type place struct {
	u, v           float64 // picture coordinates
	ux, uy, vx, vy float64 // artwork pixels for a grid pixel across and down
	inside         float64 // how far within the outline, in grid pixels of mean size
	known          bool    // whether the drop looks there, as far as was worked out
}

// at is the place at grid coordinates. Where it lies more than reach grid pixels inside the outline, inside
// may be less than it is, but no less than reach.
func (w *warp) at(x, y, reach float64) place {
	perX, perY := w.grid.perMM(w.picture)
	xMM, yMM, perMM := w.picture.XMM+x/perX, w.picture.YMM+y/perY, math.Sqrt(perX*perY)
	shown := w.hanging.Near(xMM, yMM, reach/perMM)
	p := place{inside: shown.InsideMM * perMM, known: shown.InsideMM > nowhere}
	if !p.known {
		// Well beyond the print what stands at its edge goes on, for kernels that reach there.
		p.inside = nowhere
		shown = w.hanging.Near(
			max(w.picture.XMM, min(xMM, w.picture.RightMM())),
			max(w.picture.YMM, min(yMM, w.picture.BottomMM())),
			nowhere,
		)
	}
	width, height := float64(w.upright.width), float64(w.upright.height)
	p.u, p.v = shown.U, shown.V
	p.ux, p.uy, p.vx, p.vy = shown.UX*width/perX, shown.UY*width/perY, shown.VX*height/perX, shown.VY*height/perY
	return p
}

// nowhere lies further beyond an outline than anything that was worked out, in mm and in pixels. As a reach it says
// that the outline is of no matter.
const nowhere = -1e8

// Knots of the map.
const (
	maxKnotShift = 3
	// knotReachMM is how far beyond the print a knot may be needed: a Hanging knows what the drop sees for 2 mm about it.
	knotReachMM = 1.9
	// knotErrorPx is by how much a straight line between two knots may miss the map half-way, in pixels of the
	// artwork or of the grid, whichever are coarser there. Both axes may add up, and places between those that
	// are tried may be a little worse: with 1/256 of a pixel for the kernel's phases under 0.02 in all.
	knotErrorPx = 0.006
	knotTries   = 48
)

// knotShift is how far apart the map's knots may lie.
func (w *warp) knotShift() uint {
	shift := uint(maxKnotShift)
	for shift > 0 && w.mm(1<<shift) > knotReachMM {
		shift--
	}
	for ; shift > 0; shift-- {
		if !w.bendsOver(float64(int(1)<<shift), [4]float64{0, 0.5, 0.5, 0}, knotErrorPx) {
			break
		}
	}
	return shift
}

// mm is how long so many grid pixels are, the longer way.
func (w *warp) mm(px int) float64 {
	perX, perY := w.grid.perMM(w.picture)
	return float64(px) / min(perX, perY)
}

// bendsOver tells whether a line misses the map half-way between two places that many grid pixels apart by more than
// mostPx anywhere, in pixels of the artwork or of the grid. The line is that of four such places in a row, with these
// weights. It does where the print has no room for any.
func (w *warp) bendsOver(apart float64, weights [4]float64, mostPx float64) bool {
	width, height, tried := float64(w.upright.width), float64(w.upright.height), false
	for j := range knotTries {
		for i := range knotTries {
			x := (float64(i) + 0.5) / knotTries * float64(w.grid.WidthPx)
			y := (float64(j) + 0.5) / knotTries * float64(w.grid.HeightPx)
			middle := w.at(x, y, 0)
			if middle.inside < 0 {
				continue
			}
			for _, way := range [2][2]float64{{apart, 0}, {0, apart}} {
				u, v, known := 0.0, 0.0, true
				for k, weight := range weights {
					if weight != 0 {
						at := float64(k) - 1.5
						p := w.at(x+at*way[0], y+at*way[1], nowhere)
						u, v, known = u+weight*p.u, v+weight*p.v, known && p.known
					}
				}
				if !known {
					continue
				}
				off := max(math.Abs(u-middle.u)*width, math.Abs(v-middle.v)*height)
				if off/max(1, longest(middle.ux, middle.uy, middle.vx, middle.vy)) > mostPx {
					return true
				}
				tried = true
			}
		}
	}
	return !tried
}

// longest is by how much a map of slopes ux, uy, vx, vy stretches the way that it stretches most: the larger
// singular value.
func longest(ux, uy, vx, vy float64) float64 {
	// Of any map half the sum and half the difference of its singular values are these lengths.
	return (math.Hypot(ux+vy, vx-uy) + math.Hypot(ux-vy, vx+uy)) / 2
}

// cutWarped makes the pixels of a rectangle of a bent picture.
func (s *Source) cutWarped(r image.Rectangle) image.Image {
	paper := s.paper
	if s.beyond != nil {
		paper = *s.beyond
	}
	to := newCanvas(r, s.Gray(), paper)
	for y := r.Min.Y >> blockShift; y<<blockShift < r.Max.Y; y++ {
		for x := r.Min.X >> blockShift; x<<blockShift < r.Max.X; x++ {
			b := s.warp.block(image.Pt(x<<blockShift, y<<blockShift))
			if part := b.rect().Intersect(r); b.shows() && !part.Empty() {
				b.draw(to, part)
			}
		}
	}
	return to.Image
}
