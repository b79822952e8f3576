package layout

import "math"

// Bounds of what counts as picture on a cell, in mm.
const (
	leastPictureMM = 0.25 // less at a cell's edge is not worth a sheet: no one cuts paper truer
	outlineStepMM  = 0.25
)

// region tells which cells of the plan's board carry picture; it is nil where all do: the picture is plain, or a surround fills the board.
func (p Plan) region(board Size) func(cell Rect) bool {
	if p.Picture.Plain() || p.Backdrop.Surround != "" && !p.Backdrop.FillOnly {
		return nil
	}
	b := p.inked()
	outline := onBoard(b.outline(), board)
	return func(cell Rect) bool {
		for _, at := range outline {
			if at.XMM > cell.XMM+leastPictureMM && at.XMM < cell.RightMM()-leastPictureMM && at.YMM > cell.YMM+leastPictureMM && at.YMM < cell.BottomMM()-leastPictureMM {
				return true
			}
		}
		x, y := cell.XMM+cell.WidthMM/2-board.WidthMM/2, cell.YMM+cell.HeightMM/2-board.HeightMM/2
		throughX, throughY, ok := b.bend.Sight.SeenThrough(x, y)
		if !ok {
			return false
		}
		_, ok = b.printed(throughX, throughY)
		return ok
	}
}

// inked is the bent picture with what fills up the rest of the fill, if anything does.
func (p Plan) inked() bent {
	b := p.bent()
	if p.Backdrop.FillOnly {
		const anywhere = 1e9 // picture heights: the fill alone ends it
		b.frame.away = [4]float64{anywhere, anywhere, anywhere, anywhere}
	}
	return b
}

// onBoard is an outline as a close run of places in board mm.
func onBoard(outline []edge, board Size) []Point {
	var all []Point
	for i, e := range outline {
		next := outline[(i+1)%len(outline)].at
		steps := max(1, math.Ceil(math.Hypot(next.XMM-e.at.XMM, next.YMM-e.at.YMM)/outlineStepMM))
		for k := range int(steps) {
			part := float64(k) / steps
			all = append(all, Point{
				e.at.XMM + (next.XMM-e.at.XMM)*part + board.WidthMM/2,
				e.at.YMM + (next.YMM-e.at.YMM)*part + board.HeightMM/2,
			})
		}
	}
	return all
}

// PictureOutline is the outline of the printed picture, in board mm and in order round it.
func (p Plan) PictureOutline() []Point {
	if on := p.PictureOnBoard(); p.Picture.Plain() {
		return []Point{{on.XMM, on.YMM}, {on.RightMM(), on.YMM}, {on.RightMM(), on.BottomMM()}, {on.XMM, on.BottomMM()}}
	}
	var all []Point
	for _, e := range p.bent().outline() {
		all = append(all, Point{e.at.XMM + p.Backdrop.WidthMM/2, e.at.YMM + p.Backdrop.HeightMM/2})
	}
	return all
}
