package layout

import (
	"math"
	"slices"
)

// Bounds of what counts as picture on a cell, in mm.
const (
	LeastPictureMM = 0.25 // less at a cell's edge is not worth a sheet: no one cuts paper truer
	outlineStepMM  = 0.25
)

// carrying tells, of the cells between edges of columns and rows, row by row, which carry picture.
type carrying func(xs, ys []float64) []bool

// region tells which cells of a board carry picture; it is nil where all do: the picture is plain, or a
// surround fills the board.
func (p Plan) region(board Size) carrying {
	if p.Filled() {
		return nil
	}
	return p.inked().carrying(board)
}

// carrying is a cell's if the outline comes into it, or else if the outline goes round it.
func (b bent) carrying(board Size) carrying {
	outline := onBoard(b.outline(), board)
	return func(xs, ys []float64) []bool {
		columns, rows := len(xs)-1, len(ys)-1
		carries := make([]bool, columns*rows)
		within := func(edges []float64, mm float64) (cell int, ok bool) {
			cell, _ = slices.BinarySearch(edges, mm)
			cell--
			return cell, cell >= 0 && cell < len(edges)-1 && mm > edges[cell]+LeastPictureMM && mm < edges[cell+1]-LeastPictureMM
		}
		for _, at := range outline {
			column, okX := within(xs, at.XMM)
			row, okY := within(ys, at.YMM)
			if okX && okY {
				carries[row*columns+column] = true
			}
		}
		for row := range rows {
			for column := range columns {
				i := row*columns + column
				carries[i] = carries[i] || b.shows((xs[column]+xs[column+1]-board.WidthMM)/2, (ys[row]+ys[row+1]-board.HeightMM)/2)
			}
		}
		return carries
	}
}

// shows tells whether picture is printed at a place, optical mm from the axis.
func (b bent) shows(xMM, yMM float64) bool {
	throughX, throughY, ok := b.bend.Sight.SeenThrough(xMM, yMM)
	if ok {
		_, ok = b.printed(throughX, throughY)
	}
	return ok
}

// inked is the bent picture with what fills up the rest of the fill, if anything does.
func (p Plan) inked() bent {
	b := p.bent()
	if p.Backdrop.FillOnly {
		const anywhere = 1e9 // picture heights: the fill alone ends it
		b.frame.away, b.round = [4]float64{anywhere, anywhere, anywhere, anywhere}, 0
	}
	return b
}

// onBoard is an outline as a close run of places in board mm.
func onBoard(outline []OutlinePlace, board Size) []Point {
	var all []Point
	for i, e := range outline {
		next := outline[(i+1)%len(outline)].At
		steps := max(1, math.Ceil(math.Hypot(next.XMM-e.At.XMM, next.YMM-e.At.YMM)/outlineStepMM))
		for k := range int(steps) {
			part := float64(k) / steps
			all = append(all, Point{
				e.At.XMM + (next.XMM-e.At.XMM)*part + board.WidthMM/2,
				e.At.YMM + (next.YMM-e.At.YMM)*part + board.HeightMM/2,
			})
		}
	}
	return all
}

// BentOutline goes round the printed picture, as far as both picture and fill reach, in the order of azimuths.
// The picture must not be plain.
func (p Plan) BentOutline() []OutlinePlace { return p.bent().outline() }

// InkOutline goes likewise round all that is printed: the picture, and what fills up the rest of the fill.
func (p Plan) InkOutline() []OutlinePlace { return p.inked().outline() }

// OutermostPlace is where the printed picture comes furthest out in the drop, looked for in few directions.
// The picture must not be plain.
func (p Plan) OutermostPlace() (outermost OutlinePlace) {
	for _, place := range p.bent().outlineIn(outlineDirections/10, 24) {
		if place.DropShare > outermost.DropShare {
			outermost = place
		}
	}
	return outermost
}

// PictureOutline is the outline of the printed picture, in board mm and in order round it.
func (p Plan) PictureOutline() []Point {
	if on := p.PictureOnBoard(); p.Picture.Plain() {
		return []Point{{on.XMM, on.YMM}, {on.RightMM(), on.YMM}, {on.RightMM(), on.BottomMM()}, {on.XMM, on.BottomMM()}}
	}
	var all []Point
	for _, e := range p.bent().outline() {
		all = append(all, Point{e.At.XMM + p.Backdrop.WidthMM/2, e.At.YMM + p.Backdrop.HeightMM/2})
	}
	return all
}

// Filled tells whether what is printed goes on to the board's edges: the picture is plain, or a surround
// fills the board.
func (p Plan) Filled() bool {
	return p.Picture.Plain() || p.Backdrop.Surround != "" && !p.Backdrop.FillOnly
}

// CutToFill tells whether the print leaves out what of the picture lies beyond the fill. Of a round subject
// only its circle counts, which never does.
func (p Plan) CutToFill() bool {
	if p.Picture.Plain() || p.Picture.Framing.Round {
		return false
	}
	b := p.bent()
	for _, c := range b.frame.corners {
		at := turned(b.bend.Sight.Drop, Point{c.XMM * b.flat, c.YMM * b.flat})
		x, y, ok := b.bend.Through(at.XMM, at.YMM)
		if !ok || b.bend.Sight.ShareAt(x, y) > b.fill*(1+hardlyCut) {
			return true
		}
	}
	return false
}

// hardlyCut is a share of the fill that no one misses.
const hardlyCut = 1e-4
