package guide

import (
	"errors"
	"fmt"
	"image"
	"io"
	"sync"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/board"
	"dropsheet/tile/pdf"
	"dropsheet/tile/seammap"
	"dropsheet/tile/sheet"
	"dropsheet/tile/texture"
)

// Job is all that a guide tells of.
type Job struct {
	Name      string // UTF-8; letters that no font of the guide has show as question marks
	CheckCode string // as on the sheets' labels
	Plan      layout.Plan
	Paper     layout.Paper     // what the guide itself comes on; none: UsualPaper
	PPI       float64          // pixels on an inch of the print, as placed
	Picture   *texture.Texture // the artwork
	Told      *report.Report   // what there is to say of the plan; worked out where it is nil
	SeamMap   SeamMap          // what seammap.Draw draws of the plan: seams.png
	// None of these can be seen through.
	DropView image.Image // a square close-up of what the drop shows
	// Looks are square close-ups of the drop with the picture bulged and straight; both or neither, nil then.
	Looks [2]image.Image
}

// UsualPaper is what a guide comes on unless another paper is asked for: what people have, A4 or, where the sheets are
// of a paper that is named in inches, letter.
func UsualPaper(sheets layout.Paper) layout.Paper {
	name := "A4"
	if sheets.InInches() {
		name = "letter"
	}
	paper, err := layout.ParsePaper(name)
	if err != nil {
		panic(err) // a slip in this program, found by any test
	}
	return paper
}

// Write writes the guide as a PDF. The same job gives the same bytes.
func Write(w io.Writer, j Job) error {
	if err := j.check(); err != nil {
		return fmt.Errorf("assembly guide: %w", err)
	}
	b := drawn(j)
	if err := b.Stream(w, b.picture); err != nil {
		return fmt.Errorf("assembly guide: %w", err)
	}
	return nil
}

// drawn is the whole guide, drawn but for its pictures.
func drawn(j Job) *book {
	b := laidOut(j, find(j))
	b.draw()
	return b
}

func (j Job) check() error {
	if err := j.Plan.Check(); err != nil {
		return fmt.Errorf("the plan does not hold together: %w", err)
	}
	switch {
	case !(j.PPI > 0):
		return fmt.Errorf("a print resolution of %g pixels an inch can't be: it must be above 0", j.PPI)
	case j.Picture == nil:
		return errors.New("the artwork is missing")
	case j.SeamMap.size == image.Point{}:
		return errors.New("the seam map is missing")
	case j.SeamMap.size != seammap.Find(j.Plan).Map.Size():
		return fmt.Errorf("the seam map's size, %v, is not that of this plan's", j.SeamMap.size)
	case j.DropView == nil || j.DropView.Bounds().Empty():
		return errors.New("the view of the drop is missing")
	case (j.Looks[0] == nil) != (j.Looks[1] == nil) || j.looks() &&
		(j.Looks[0].Bounds().Empty() || j.Looks[1].Bounds().Empty()):
		return errors.New("of the views of the drop with either look one is missing")
	}
	return nil
}

// section is a numbered part of the guide.
type section struct {
	title string
	// whole keeps it in one piece: its figures are as large as the page, and would shrink behind another section.
	whole bool
	draw  func(*book)
}

// sections lists the guide in the order of work. The overview, without a number, comes before them.
func (j Job) sections() []section {
	if j.uncut() {
		return j.oneSheet()
	}
	var upToTheBoard []section
	if j.looks() {
		upToTheBoard = append(upToTheBoard, section{"Bulged and straight", false, (*book).bothLooks})
	}
	upToTheBoard = append(upToTheBoard, []section{
		{"What to buy", false, (*book).shopping},
		{"Setting up", false, (*book).setup},
	}...)
	if HasRays(j.Plan) {
		upToTheBoard = append(upToTheBoard, section{raysTitle, true, (*book).rays})
	}
	upToTheBoard = append(upToTheBoard, []section{
		{"Sharpness and exposure", false, (*book).sharpness},
		{"Light", false, (*book).light},
		{"Printing", false, (*book).printing},
		{"The board as it must hang", true, (*book).board},
	}...)
	if j.single() {
		return append(upToTheBoard, []section{
			{"Cutting and pasting the sheet", false, (*book).paste},
			{"If the sheet is spoiled", false, (*book).spoiled},
			{"Where the " + j.body() + " looks", true, (*book).seams},
			{cautionsTitle, false, (*book).cautions},
		}...)
	}
	return append(upToTheBoard, []section{
		{"The pencil grid", false, (*book).grid},
		{"The order of pasting", false, (*book).order},
		{"Cutting and pasting one sheet", false, (*book).paste},
		{"If a sheet is spoiled", false, (*book).spoiled},
		{"Where the seams fall", true, (*book).seams},
		{cautionsTitle, false, (*book).cautions},
	}...)
}

// draw draws every page.
func (b *book) draw() {
	b.spacing = b.cover
	b.newPage()
	b.overview()
	for i, s := range b.sections {
		p := b.placements[i]
		if p.follows {
			b.y = b.lowest() + betweenMM
			b.floor = b.y
		} else {
			b.newPage()
		}
		b.spacing = p.spacing
		b.title(i, s)
		s.draw(b)
	}
}

// found is what the guide asks more than once, and takes a while to work out.
type found struct {
	sections []section
	report   *report.Report
	panels   seammap.Panels
	bare     []layout.Rect         // what of the board has no sheet
	surface  func() *board.Surface // made when it is first asked for
	broken   map[wrapped][]pdf.TextLine
	coded    func() (all, any bool) // whether labels have room for the check code
}

func find(j Job) found {
	p, told := j.Plan, j.Told
	if told == nil {
		told = report.Of(p)
	}
	return found{
		j.sections(), told, seammap.Find(p),
		sheet.BareBoard(p), sync.OnceValue(func() *board.Surface { return board.NewDrawing(p, j.Picture) }),
		map[wrapped][]pdf.TextLine{}, sync.OnceValues(j.coded),
	}
}

// book is a guide that is being drawn.
type book struct {
	job Job
	found
	arrangement // none while it is being found
	*pdf.Document
	geo  geometry
	zoom float64

	page  int     // the current page, from 1
	y     float64 // where the next block starts
	floor float64 // below the last side heading; a heading or figure must not start above it

	bottoms []float64 // where each of the pages before ended
	spacing float64   // share of the usual gaps between blocks
	trial   *book     // for what is tried out
	trying  bool      // this one is such a trial

	pictures []func() (pdf.Picture, error)
}

// document is what the guide is drawn in.
func (j Job) document() *pdf.Document { return pdf.New(j.Name + " \u2013 assembly guide") }

// newBook starts a guide in a document, drawn so much smaller than usual.
func newBook(doc *pdf.Document, j Job, f found, zoom float64) *book {
	return &book{job: j, Document: doc, geo: newGeometry(j.paper(), zoom), found: f, zoom: zoom,
		spacing: 1}
}

// picture makes the picture that Document.Stream asks for.
func (b *book) picture(id pdf.PictureID) (pdf.Picture, error) { return b.pictures[id-1]() }
