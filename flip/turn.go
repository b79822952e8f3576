package flip

// Turn is one of the eight ways to lay a picture down: rows and columns swapped or not, then each axis reversed or not.
//
// From-space: the pixel (x, y) of a result that is w wide and h high. To-space: the pixel of the picture that
// it came from. With SwapXY the picture is h wide and w high, and x and y change places before anything is
// reversed. The zero Turn leaves a picture as it is.
type Turn struct {
	SwapXY   bool
	ReverseX bool // the picture's x (after any swap) runs the other way
	ReverseY bool // the picture's y (after any swap) runs the other way
}

// HalfTurn turns a picture by 180 degrees.
var HalfTurn = Turn{ReverseX: true, ReverseY: true}

// Size returns the result's size for a picture that is w wide and h high.
func (t Turn) Size(w, h int) (int, int) {
	if t.SwapXY {
		return h, w
	}
	return w, h
}

// Source returns the pixel of the picture, itself w wide and h high, that lands on (x, y) of the result:
// (x, y) or, when swapped, (y, x), each coordinate c of a reversed axis of length n becoming n-1-c.
func (t Turn) Source(x, y, w, h int) (int, int) {
	if t.SwapXY {
		x, y = y, x
	}
	if t.ReverseX {
		x = w - 1 - x
	}
	if t.ReverseY {
		y = h - 1 - y
	}
	return x, y
}

// Then returns the one turn that does what t and then next do.
func (t Turn) Then(next Turn) Turn {
	// Going back from the result, next's map comes first; t's reversals act on axes that t's swap may have exchanged.
	rx, ry := next.ReverseX, next.ReverseY
	if t.SwapXY {
		rx, ry = ry, rx
	}
	return Turn{
		SwapXY:   t.SwapXY != next.SwapXY,
		ReverseX: t.ReverseX != rx,
		ReverseY: t.ReverseY != ry,
	}
}
