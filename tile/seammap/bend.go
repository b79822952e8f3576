package seammap

import (
	"math"
	"slices"

	"dropsheet/flip"
	"dropsheet/layout"
)

// bend finds where in the drop a point or a line of the board shows, by tracing rays and halving intervals.
// Of a body it asks only what holds for every one of them: along a row of the drop's plane the landing moves
// one way, and so it does along a bent line.
//
// It works along one axis of the board: "across" is the coordinate that a line holds still, "along" the one
// in which it runs.
type bend struct {
	sight         flip.Sight
	tracer        flip.Tracer
	board         layout.Rect
	swapped       bool // across is y and along is x, instead of the other way round
	across, along direction
	stepMM        float64 // between the points of a bent line, in the drop's plane
}

// direction is one axis of the drop's plane.
type direction struct {
	sign   float64 // -1 where the drop reverses it, else 1
	halfMM float64 // how far from the middle the drop shows
	// closesMM is how far along the other axis the drop's outline closes in; 0 where it does not.
	closesMM float64
}

// extentMM is how far the drop shows on the row that far from the middle, kept a hair inside the outline,
// where rays graze.
func (d direction) extentMM(rowMM float64) float64 {
	const inside = 1 - 1e-9
	if d.closesMM == 0 {
		return d.halfMM * inside
	}
	return d.halfMM / d.closesMM * math.Sqrt(max(0, d.closesMM*d.closesMM-rowMM*rowMM)) * inside
}

// newBend is the bend for lines of constant x ("x") or constant y ("y"). Of a rod, halfMM of its length show
// to either side.
func newBend(p layout.Plan, axis string, halfMM, stepMM float64) bend {
	sight, turn := p.Sight(), p.Drop.Reverses.Turn()
	of := func(reversed bool, outlineMM, otherMM float64) direction {
		d := direction{sign: 1, halfMM: outlineMM}
		if reversed {
			d.sign = -1
		}
		switch {
		case !sight.Drop.Body.Rod():
			d.closesMM = otherMM
		case math.IsInf(outlineMM, 1):
			d.halfMM = halfMM
		}
		return d
	}
	halfWidthMM, halfHeightMM := sight.OutlineMM()
	x, y := of(turn.ReverseX, halfWidthMM, halfHeightMM), of(turn.ReverseY, halfHeightMM, halfWidthMM)
	b := bend{sight: sight, tracer: sight.Tracer(), board: p.Backdrop.Board(), across: x, along: y, stepMM: stepMM}
	if axis == "y" {
		b.swapped, b.across, b.along = true, y, x
	}
	return b
}

// lands traces the ray through a point of the drop's plane to the board.
// ok is false beside the drop and where the drop looks backwards.
func (b *bend) lands(acrossMM, alongMM float64) (boardAcrossMM, boardAlongMM float64, ok bool) {
	p := b.point(acrossMM, alongMM)
	l, ok := b.tracer.Trace(b.sight.PinholeRay(p.XMM, p.YMM))
	x, y := l.XMM+b.board.WidthMM/2, l.YMM+b.board.HeightMM/2
	if b.swapped {
		x, y = y, x
	}
	// a camera inside the drop makes no sense, but a plan read from a file may hold one
	return x, y, ok && l.Through && !math.IsNaN(x+y)
}

// point puts the two coordinates in their order.
func (b *bend) point(acrossMM, alongMM float64) layout.Point {
	if b.swapped {
		return layout.Point{XMM: alongMM, YMM: acrossMM}
	}
	return layout.Point{XMM: acrossMM, YMM: alongMM}
}

// crosses finds where a row of the drop's plane, alongMM from the middle, meets the board line at atMM, and
// where along the line that is.
func (b *bend) crosses(atMM, alongMM float64) (acrossMM, boardAlongMM float64, ok bool) {
	past := func(acrossMM float64) bool {
		boardMM, _, ok := b.lands(acrossMM, alongMM)
		if !ok {
			return acrossMM > 0 // toward its rim the drop looks past everything
		}
		return b.across.sign*(boardMM-atMM) > 0
	}
	extentMM := b.across.extentMM(alongMM)
	if past(-extentMM) || !past(extentMM) {
		return 0, 0, false
	}
	acrossMM, _ = halve(extentMM, past)
	_, boardAlongMM, ok = b.lands(acrossMM, alongMM)
	return acrossMM, boardAlongMM, ok
}

// find finds where a point of the board shows. When ok is false it does not, and the point returned is where
// the line at atMM goes out of sight on the way to it.
func (b *bend) find(atMM, boardAlongMM float64) (acrossMM, alongMM float64, ok bool) {
	past := func(alongMM float64) bool {
		_, landsMM, ok := b.crosses(atMM, alongMM)
		if !ok {
			return alongMM > 0
		}
		return b.along.sign*(landsMM-boardAlongMM) > 0
	}
	extentMM := b.along.extentMM(0)
	before, after := halve(extentMM, past)
	_, _, afterOK := b.crosses(atMM, after)
	acrossMM, _, ok = b.crosses(atMM, before)
	// Where the line goes out of sight, the search ends between a row that it crosses and one that it does
	// not, or at the last row.
	return acrossMM, before, ok && afterOK && past(extentMM) && !past(-extentMM)
}

// line follows the board line at atMM from one place along it to a further one, as far as it shows. Points
// are of the drop's plane.
func (b *bend) line(atMM, fromMM, toMM float64) []layout.Point {
	if b.along.sign < 0 {
		points := b.rising(atMM, toMM, fromMM)
		slices.Reverse(points)
		return points
	}
	return b.rising(atMM, fromMM, toMM)
}

// rising is line from the end that shows further left or up to the other.
func (b *bend) rising(atMM, fromMM, toMM float64) []layout.Point {
	var points []layout.Point
	acrossMM, startMM, ok := b.find(atMM, fromMM)
	if ok {
		points = append(points, b.point(acrossMM, startMM))
	}
	lastAcrossMM, endMM, lastOK := b.find(atMM, toMM)
	for i := math.Floor(startMM/b.stepMM) + 1; i*b.stepMM < endMM; i++ {
		if acrossMM, _, ok := b.crosses(atMM, i*b.stepMM); ok {
			points = append(points, b.point(acrossMM, i*b.stepMM))
		}
	}
	if lastOK {
		points = append(points, b.point(lastAcrossMM, endMM))
	}
	return points
}

// halve finds where past turns from false to true between -extent and extent, to a quarter of a millionth of it.
func halve(extent float64, past func(float64) bool) (before, after float64) {
	before, after = -extent, extent
	for range 23 {
		if middle := (before + after) / 2; past(middle) {
			after = middle
		} else {
			before = middle
		}
	}
	return before, after
}
