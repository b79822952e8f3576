package layout

import (
	"math"

	"dropsheet/flip"
)

// Hanging says what part of the picture each place of the board shows. It is made once by Plan.Hang and safe
// for use by many goroutines.
//
// From-space: board mm. To-space: picture coordinates, 0 to 1 across and down, upright as it appears in the drop.
type Hanging struct {
	on   Rect // the printed picture on the board
	turn flip.Turn
	// shares of a plain picture's width and height for a millimetre of board
	perMMAcross, perMMDown float64

	bent *bentOnBoard // nil for a plain picture
}

// bentOnBoard is a bent picture, and where the drop looks through to each place, worked out beforehand.
type bentOnBoard struct {
	bent
	middle                    Point // of the board, which the axis meets
	sin, cos                  float64
	halfWidthMM, halfHeightMM float64 // of the drop's outline
	u, v                      coordinate
	through                   *lattice
	depth                     depths
}

// Shown is what a place shows.
type Shown struct {
	U, V float64 // picture coordinates
	// How much U and V change for a millimetre of board, across and down.
	UX, UY, VX, VY float64
	// InsideMM is how far inside the printed picture's outline the place lies, below 0 beyond it: near the
	// outline exact to first order.
	InsideMM float64
}

// beyondMM stands for a place that is nowhere near the picture.
const beyondMM = -1e9

// Hang prepares what each place shows.
func (p Plan) Hang() *Hanging {
	h := p.hang()
	if b := h.bent; b != nil {
		b.through = newLattice(p.Picture.WidthMM/2+latticeMarginMM, p.Picture.HeightMM/2+latticeMarginMM, p.Drop.DistanceMM,
			p.Drop.Body != flip.Hanging, b.bend.Sight.SeenThrough)
		b.depth = b.depths()
	}
	return h
}

// hang is a Hanging for Board and exactly alone, without what is worked out beforehand for At.
func (p Plan) hang() *Hanging {
	h := &Hanging{on: p.PictureOnBoard(), turn: p.Drop.Reverses.Turn()}
	h.perMMAcross, h.perMMDown = 1/h.on.WidthMM, 1/h.on.HeightMM
	if p.Picture.Plain() {
		return h
	}
	b := p.bent()
	on := &bentOnBoard{bent: b, middle: Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}}
	on.sin, on.cos = math.Sincos(p.Picture.Framing.TurnDeg * math.Pi / 180)
	on.halfWidthMM, on.halfHeightMM = b.bend.Sight.OutlineMM()
	on.u, on.v = on.coordinates()
	h.bent = on
	return h
}

// Plain tells whether the picture hangs flat, upright and whole.
func (h *Hanging) Plain() bool { return h.bent == nil }

// At is what a place shows. A plain picture goes on beyond its outline, past 0 to 1.
func (h *Hanging) At(xMM, yMM float64) Shown { return h.Near(xMM, yMM, math.Inf(1)) }

// Near is At for those whom the outline is of no matter to further off than reachMM: where InsideMM is more
// than that, what is given may be less than it is, though still more than reachMM. Far inside that takes
// about half the time.
func (h *Hanging) Near(xMM, yMM, reachMM float64) Shown {
	if h.bent != nil {
		return h.bent.at(xMM-h.bent.middle.XMM, yMM-h.bent.middle.YMM, reachMM)
	}
	s := Shown{
		U: (xMM - h.on.XMM) / h.on.WidthMM, V: (yMM - h.on.YMM) / h.on.HeightMM,
		UX: h.perMMAcross, VY: h.perMMDown,
		InsideMM: min(xMM-h.on.XMM, h.on.RightMM()-xMM, yMM-h.on.YMM, h.on.BottomMM()-yMM),
	}
	if h.turn.ReverseX {
		s.U, s.UX = 1-s.U, -s.UX
	}
	if h.turn.ReverseY {
		s.V, s.VY = 1-s.V, -s.VY
	}
	return s
}

// PictureAt is the point of the picture that a place of the board shows, traced exactly: for a few places, where
// Hang is for many. ok is false where the drop does not look.
func (p Plan) PictureAt(board Point) (u, v float64, ok bool) { return p.hang().exactly(board) }

// exactly is the point of the picture that a place shows, without At's shortcuts and its care for the
// outline. ok is false where the drop does not look.
func (h *Hanging) exactly(at Point) (u, v float64, ok bool) {
	b := h.bent
	if b == nil {
		s := h.At(at.XMM, at.YMM)
		return s.U, s.V, true
	}
	x, y, ok := b.bend.Flat(at.XMM-b.middle.XMM, at.YMM-b.middle.YMM)
	u, v = b.picture(turned(b.bend.Sight.Drop, Point{x, y}))
	uAxis, vAxis := b.onAxis()
	return u + uAxis, v + vAxis, ok
}

// onAxis are the picture coordinates of the point on the axis.
func (b *bentOnBoard) onAxis() (u, v float64) {
	return b.frame.away[3] * b.flat / b.width(), b.frame.away[0]
}

// picture turns millimetres of the flat picture as it appears in the drop into picture coordinates, both from
// the point on the axis.
func (b *bentOnBoard) picture(p Point) (u, v float64) {
	return (p.XMM*b.cos + p.YMM*b.sin) / b.width(), (p.YMM*b.cos - p.XMM*b.sin) / b.flat
}

// at is what Near gives, optical mm from the axis.
func (b *bentOnBoard) at(xMM, yMM, reachMM float64) Shown {
	through, dx, dy, cell, ok := b.through.at(xMM, yMM)
	if !ok {
		return Shown{U: 0.5, V: 0.5, InsideMM: beyondMM}
	}
	shown := Shown{InsideMM: b.depth[cell]}
	if !(shown.InsideMM > reachMM) {
		shown.InsideMM = b.insideMM(Point{xMM, yMM}, through, dx, dy)
	}
	shown.U, shown.UX, shown.UY = b.u.at(xMM, yMM, through, dx, dy)
	shown.V, shown.VX, shown.VY = b.v.at(xMM, yMM, through, dx, dy)
	return shown
}

// length is what math.Hypot gives, without its care for figures beyond any here; it is asked for at every ray.
func length(x, y float64) float64 { return math.Sqrt(x*x + y*y) }

// width is the flat picture's width in mm.
func (b bent) width() float64 { return (b.frame.away[1] + b.frame.away[3]) * b.flat }

// Board is the place of the board that shows a point of the picture. ok is false when none does; the print
// may end before it all the same.
func (h *Hanging) Board(u, v float64) (at Point, ok bool) {
	if h.bent != nil {
		return h.bent.board(u, v)
	}
	if h.turn.ReverseX {
		u = 1 - u
	}
	if h.turn.ReverseY {
		v = 1 - v
	}
	return Point{h.on.XMM + u*h.on.WidthMM, h.on.YMM + v*h.on.HeightMM}, true
}

func (b *bentOnBoard) board(u, v float64) (at Point, ok bool) {
	x, y := u*b.width()-b.frame.away[3]*b.flat, v*b.flat-b.frame.away[0]*b.flat
	flat := turned(b.bend.Sight.Drop, Point{x*b.cos - y*b.sin, x*b.sin + y*b.cos})
	at.XMM, at.YMM, ok = b.bend.Board(flat.XMM, flat.YMM)
	at.XMM, at.YMM = at.XMM+b.middle.XMM, at.YMM+b.middle.YMM
	return at, ok
}
