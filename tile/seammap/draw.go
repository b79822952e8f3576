package seammap

import (
	"image"
	"image/draw"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/board"
	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"
)

// How much white is mixed into the picture: much on the board, where lines must read, and none in the drop,
// which shows it as it looks.
const (
	boardWhite = 0.6
	dropWhite  = 0
)

// seamMap is the map while it is drawn.
type seamMap struct {
	plan   layout.Plan
	told   *report.Report // what there is to tell of it
	seams  []seamsight.Seam
	marks  []fillMark
	faces  faces
	board  boardView
	drop   *dropView
	canvas ink.Canvas
}

func newMap(p layout.Plan) seamMap {
	return seamMap{plan: p, told: report.Of(p), marks: fillMarks(p.Picture.Fill), faces: newFaces()}
}

// Draw draws the map of a plan that Setup.Plan made or Plan.Check passed: the board as it hangs, pale, with
// its seams, rulers and where the drop looks at fills of 0.25, 0.5, 0.75 and the picture's own; the same as
// the camera sees it in the drop; a key and a caption. Seams are what seamsight saw of the plan's; each is
// drawn by its verdicts. The map is 2000 pixels wide and as high as it needs to be, opaque, and the same for
// the same plan, picture and seams.
func Draw(p layout.Plan, picture *texture.Texture, seams []seamsight.Seam) *image.RGBA {
	m := newMap(p)
	m.seams = seams
	a := m.place()
	sheet := image.NewRGBA(image.Rect(0, 0, widthPx, a.height))
	draw.Draw(sheet, sheet.Rect, image.NewUniform(paper), image.Point{}, draw.Src)
	m.canvas = ink.On(sheet)
	m.drawHeading(m.faces.title, ink.Point{X: marginPx, Y: marginPx}, m.title(), m.scene())
	m.drawHeading(m.faces.heading, a.boardHeading, "On the board, as it hangs", m.boardText())
	m.drawHeading(m.faces.heading, a.dropHeading, "In the "+m.body()+", as the camera sees it", m.shows())

	surface := board.NewDrawing(p, picture)
	ground(sheet, m.board, onBoard{surface, p.Backdrop.Board(), bareBoard}, boardWhite)
	ground(sheet, m.drop, onBoard{surface, p.Backdrop.Board(), wall}, dropWhite)
	m.canvas.Within(m.board.frame()).Draw(strokes(paperLine, m.paperEdge())...)
	named := m.drawView(m.board)
	m.canvas.Within(m.board.frame()).Draw(strokes(frameLine, m.frameOnBoard())...)
	m.drawView(m.drop)
	m.canvas.Within(a.drop).Draw(strokes(outlineLine, m.drop.fill(1))...)
	m.drawRulers(m.board)
	if !named {
		m.drawNumbers(m.board)
	}
	notes, _ := m.notes(a.notesWidth)
	m.drawNotes(a.notes, notes)
	return sheet
}

// place finds the two views their places on the map.
func (m *seamMap) place() arrangement {
	board := m.plan.Backdrop.Board()
	m.board = boardView{board: board, sight: m.plan.Sight()}
	a := arrange(board, func(widthPx float64) float64 {
		_, heightPx := m.notes(widthPx)
		return heightPx
	})
	m.board.pxPerMM, m.board.origin = a.pxPerMM, a.boardOrigin
	m.drop = newDropView(m.plan, a.drop)
	return a
}

// drawHeading writes a heading and a line under it, from their top left corner.
func (m seamMap) drawHeading(face ink.Face, at ink.Point, heading, under string) {
	m.canvas.Text(face, ink.Point{X: at.X, Y: at.Y + face.CapPx()}, black, heading)
	m.canvas.Text(m.faces.text, ink.Point{X: at.X, Y: at.Y + face.CapPx() + 20 + m.faces.text.CapPx()}, grey, under)
}
