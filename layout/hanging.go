package layout

import (
	"math"

	"dropsheet/flip"
)

// Hanging says what part of the picture each place of the board shows. It is made once by Plan.Hang and safe for use by many goroutines.
//
// From-space: board mm. To-space: picture coordinates, 0 to 1 across and down, upright as it appears in the drop.
type Hanging struct {
	on   Rect // the printed picture on the board
	turn flip.Turn
	bent *bentOnBoard // nil for a plain picture
}

// bentOnBoard is a bent picture, and where the drop looks through to each place, worked out beforehand.
type bentOnBoard struct {
	bent
	middle                    Point // of the board, which the axis meets
	sin, cos                  float64
	halfWidthMM, halfHeightMM float64 // of the drop's outline
	through                   *lattice
}

// Shown is what a place shows.
type Shown struct {
	U, V float64 // picture coordinates
	// How much U and V change for a millimetre of board, across and down.
	UX, UY, VX, VY float64
	// InsideMM is how far inside the printed picture's outline the place lies, below 0 beyond it: near the outline exact to first order.
	InsideMM float64
}

// beyondMM stands for a place that is nowhere near the picture.
const beyondMM = -1e9

// Hang prepares what each place shows.
func (p Plan) Hang() *Hanging {
	h := p.hang()
	if b := h.bent; b != nil {
		b.through = newLattice(p.Picture.WidthMM/2+latticeMarginMM, p.Picture.HeightMM/2+latticeMarginMM, p.Drop.DistanceMM, b.bend.Sight.SeenThrough)
	}
	return h
}

// hang is a Hanging for Board and exactly alone, without what is worked out beforehand for At.
func (p Plan) hang() *Hanging {
	h := &Hanging{on: p.PictureOnBoard(), turn: p.Drop.Reverses.Turn()}
	if p.Picture.Plain() {
		return h
	}
	b := p.bent()
	on := &bentOnBoard{bent: b, middle: Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}}
	on.sin, on.cos = math.Sincos(p.Picture.Framing.TurnDeg * math.Pi / 180)
	on.halfWidthMM, on.halfHeightMM = b.bend.Sight.OutlineMM()
	h.bent = on
	return h
}

// Plain tells whether the picture hangs flat, upright and whole.
func (h *Hanging) Plain() bool { return h.bent == nil }

// At is what a place shows. A plain picture goes on beyond its outline, past 0 to 1.
func (h *Hanging) At(xMM, yMM float64) Shown {
	if h.bent != nil {
		return h.bent.at(xMM-h.bent.middle.XMM, yMM-h.bent.middle.YMM)
	}
	s := Shown{
		U: (xMM - h.on.XMM) / h.on.WidthMM, V: (yMM - h.on.YMM) / h.on.HeightMM,
		UX: 1 / h.on.WidthMM, VY: 1 / h.on.HeightMM,
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

// exactly is the point of the picture that a place shows, without At's shortcuts and its care for the outline. ok is false where the drop does not look.
func (h *Hanging) exactly(at Point) (u, v float64, ok bool) {
	b := h.bent
	if b == nil {
		s := h.At(at.XMM, at.YMM)
		return s.U, s.V, true
	}
	x, y, ok := b.bend.Flat(at.XMM-b.middle.XMM, at.YMM-b.middle.YMM)
	u, v = b.picture(turned(b.bend.Sight.Drop, Point{x, y}))
	return u + b.frame.away[3]*b.flat/b.width(), v + b.frame.away[0], ok
}

// picture turns millimetres of the flat picture as it appears in the drop into picture coordinates, both from the point on the axis.
func (b *bentOnBoard) picture(p Point) (u, v float64) {
	return (p.XMM*b.cos + p.YMM*b.sin) / b.width(), (p.YMM*b.cos - p.XMM*b.sin) / b.flat
}

// at is what a place shows, optical mm from the axis.
func (b *bentOnBoard) at(xMM, yMM float64) Shown {
	through, dx, dy, ok := b.through.at(xMM, yMM)
	if !ok {
		return Shown{U: 0.5, V: 0.5, InsideMM: beyondMM}
	}
	// The fill's outline: the share grows along slope in the drop's plane.
	sx, sy := through.XMM/b.halfWidthMM, through.YMM/b.halfHeightMM
	inside := math.Inf(1)
	if share := length(sx, sy); share > 0 {
		slope := Point{sx / share / b.halfWidthMM, sy / share / b.halfHeightMM}
		inside = (b.fill - share) / length(slope.XMM*dx.XMM+slope.YMM*dx.YMM, slope.XMM*dy.XMM+slope.YMM*dy.YMM)
	}
	// The flat picture as it appears in the drop, and its change with x and y of the board.
	mix := func(on, through Point) Point {
		x, y := b.bend.Mix(flip.Landing{XMM: on.XMM, YMM: on.YMM}, through.XMM, through.YMM)
		return turned(b.bend.Sight.Drop, Point{x, y})
	}
	at, ax, ay := mix(Point{xMM, yMM}, through), mix(Point{1, 0}, dx), mix(Point{0, 1}, dy)
	for i, n := range b.frame.normals {
		away := b.frame.away[i]*b.flat - (n.XMM*at.XMM + n.YMM*at.YMM)
		inside = min(inside, away/length(n.XMM*ax.XMM+n.YMM*ax.YMM, n.XMM*ay.XMM+n.YMM*ay.YMM))
	}
	if b.round > 0 {
		if away := length(at.XMM, at.YMM); away > 0 {
			x, y := at.XMM/away, at.YMM/away
			inside = min(inside, (b.round-away)/length(x*ax.XMM+y*ax.YMM, x*ay.XMM+y*ay.YMM))
		}
	}
	shown := Shown{InsideMM: inside}
	shown.U, shown.V = b.picture(at)
	shown.U, shown.V = shown.U+b.frame.away[3]*b.flat/b.width(), shown.V+b.frame.away[0]
	shown.UX, shown.VX = b.picture(ax)
	shown.UY, shown.VY = b.picture(ay)
	return shown
}

// length is what math.Hypot gives, without its care for figures beyond any here; it is asked for at every ray.
func length(x, y float64) float64 { return math.Sqrt(x*x + y*y) }

// width is the flat picture's width in mm.
func (b bent) width() float64 { return (b.frame.away[1] + b.frame.away[3]) * b.flat }

// Board is the place of the board that shows a point of the picture. ok is false when none does; the print may end before it all the same.
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
