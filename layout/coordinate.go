package layout

import "dropsheet/flip"

// coordinate is one of the picture's two at a place of a bent print: even in the place and in the point of
// the drop's plane that it is seen through.
//
// From-space: optical mm from the axis, on the board and in the drop's plane. To-space: picture coordinates.
type coordinate struct {
	x, y               float64 // for a millimetre of board
	throughX, throughY float64 // for one of the drop's plane
	onAxis             float64
}

// coordinates are u and v.
func (b *bentOnBoard) coordinates() (u, v coordinate) {
	u.x, v.x = b.picture(b.flatAt(Point{1, 0}, Point{}))
	u.y, v.y = b.picture(b.flatAt(Point{0, 1}, Point{}))
	u.throughX, v.throughX = b.picture(b.flatAt(Point{}, Point{1, 0}))
	u.throughY, v.throughY = b.picture(b.flatAt(Point{}, Point{0, 1}))
	u.onAxis, v.onAxis = b.onAxis()
	return u, v
}

// at is the coordinate at a place and its change with a millimetre across and down, with which what it is
// seen through changes by dx and dy.
func (c *coordinate) at(xMM, yMM float64, through, dx, dy Point) (at, across, down float64) {
	at = c.x*xMM + c.y*yMM + c.throughX*through.XMM + c.throughY*through.YMM + c.onAxis
	return at, c.x + c.throughX*dx.XMM + c.throughY*dx.YMM, c.y + c.throughX*dy.XMM + c.throughY*dy.YMM
}

// flatAt is the place of the flat picture as it appears in the drop, for a place of the board and what that
// is seen through.
func (b *bentOnBoard) flatAt(on, through Point) Point {
	x, y := b.bend.Mix(flip.Landing{XMM: on.XMM, YMM: on.YMM}, through.XMM, through.YMM)
	return turned(b.bend.Sight.Drop, Point{x, y})
}
