package flip

// Bend is how a print is bent beforehand so that the drop shows the picture straight, or bulged less than it would.
//
// From-space: the backdrop, optical mm from the axis. To-space: the flat picture in mm as it would be printed
// without bending, also from the axis and turned as it hangs. A flat print shows at each place itself. A
// straight one shows at a place what is seen through it, in even proportion: the point of the drop's plane
// times -FlatPerDrop, or along a rod, which leaves that way as it is, times FlatPerDrop. A share between
// mixes the two.
type Bend struct {
	Sight       Sight   // that the print is made for
	Straight    float64 // share, 0 to 1: 0 leaves the print flat, 1 makes the picture in the drop straight
	FlatPerDrop float64 // mm of the flat picture for a millimetre of the drop's plane, above 0
}

// Flat is the place of the flat picture that a place of the backdrop shows. ok is false where a bent print is
// asked and the drop does not look.
func (b Bend) Flat(xMM, yMM float64) (flatXMM, flatYMM float64, ok bool) {
	if b.Straight == 0 {
		return xMM, yMM, true
	}
	throughX, throughY, ok := b.Sight.SeenThrough(xMM, yMM)
	if !ok {
		return 0, 0, false
	}
	flatXMM, flatYMM = b.Mix(Landing{XMM: xMM, YMM: yMM}, throughX, throughY)
	return flatXMM, flatYMM, true
}

// Mix is the place of the flat picture for a place of the backdrop and the point of the drop's plane that it
// is seen through.
func (b Bend) Mix(on Landing, throughXMM, throughYMM float64) (flatXMM, flatYMM float64) {
	signX, signY := b.signs()
	return (1-b.Straight)*on.XMM + b.Straight*signX*b.FlatPerDrop*throughXMM, (1-b.Straight)*on.YMM +
		b.Straight*signY*b.FlatPerDrop*throughYMM
}

// signs are -1 for each axis that the body turns over.
func (b Bend) signs() (x, y float64) {
	bendsX, bendsY := b.Sight.Drop.bends()
	x, y = 1, 1
	if bendsX {
		x = -1
	}
	if bendsY {
		y = -1
	}
	return x, y
}

// Through is the point of the drop's plane at which a place of the flat picture appears, in the drop that the
// print is made for. ok is false when that would be at or past the drop's visible edge.
func (b Bend) Through(flatXMM, flatYMM float64) (xMM, yMM float64, ok bool) {
	if b.Straight == 1 {
		signX, signY := b.signs()
		xMM, yMM = signX*flatXMM/b.FlatPerDrop, signY*flatYMM/b.FlatPerDrop
		return xMM, yMM, b.Sight.ShareAt(xMM, yMM) < 1
	}
	return b.Sight.find(flatXMM, flatYMM, b.Mix)
}

// Board is the place of the backdrop that shows a place of the flat picture: Flat undone. ok is false when
// there is none.
func (b Bend) Board(flatXMM, flatYMM float64) (xMM, yMM float64, ok bool) {
	if b.Straight == 0 {
		return flatXMM, flatYMM, true
	}
	throughX, throughY, ok := b.Through(flatXMM, flatYMM)
	if !ok {
		return 0, 0, false
	}
	l, ok := b.Sight.Trace(b.Sight.PinholeRay(throughX, throughY))
	return l.XMM, l.YMM, ok && l.Through
}
