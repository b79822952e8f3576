package guide

import (
	"errors"
	"fmt"
	"image"
	"io"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
	"dropsheet/tile/texture"
)

// Job is all that a guide tells of.
type Job struct {
	Name      string // UTF-8; letters that the guide's font lacks show as question marks
	CheckCode string // as on the sheets' labels
	Plan      layout.Plan
	PPI       float64          // pixels on an inch of the print, as placed
	Picture   *texture.Texture // the artwork
	SeamMap   image.Image      // the picture of seams.png
	DropView  image.Image      // a square close-up of what the drop shows
}

// Write writes the guide as a PDF. The same job gives the same bytes.
func Write(w io.Writer, j Job) error {
	if err := j.check(); err != nil {
		return fmt.Errorf("assembly guide: %w", err)
	}
	// A first drawing only counts pages: the contents list and every footer need to know them.
	draft := newBook(j, nil, 0)
	draft.draw()
	b := newBook(j, draft.starts, draft.page)
	b.draw()
	if err := b.doc.Stream(w, b.picture); err != nil {
		return fmt.Errorf("assembly guide: %w", err)
	}
	return nil
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
	case j.SeamMap == nil || j.SeamMap.Bounds().Empty():
		return errors.New("the seam map is missing")
	case j.DropView == nil || j.DropView.Bounds().Empty():
		return errors.New("the view of the drop is missing")
	}
	return nil
}

// section is a numbered part of the guide.
type section struct {
	title string
	// fresh starts it on a new page; the others follow on where there is room.
	fresh bool
	draw  func(*book)
}

// sections lists the guide in the order of work. The overview, without a number, comes before them.
var sections = []section{
	{"What to buy", true, (*book).shopping},
	{"Setting up", true, (*book).setup},
	{"Sharpness and exposure", true, (*book).sharpness},
	{"Light", true, (*book).light},
	{"Printing", true, (*book).printing},
	{"The board as it must hang", true, (*book).board},
	{"The pencil grid", true, (*book).grid},
	{"The order of pasting", false, (*book).order},
	{"Cutting and pasting one sheet", true, (*book).paste},
	{"If a sheet is spoiled", false, (*book).spoiled},
	{"Where the seams fall", true, (*book).seams},
	{"Cautions", true, (*book).cautions},
}

// draw draws every page.
func (b *book) draw() {
	b.newPage()
	b.overview()
	for i, s := range sections {
		b.begin(i+1, s)
		s.draw(b)
	}
	b.endPage()
}

// book is a guide that is being drawn.
type book struct {
	job   Job
	doc   *pdf.Document
	geo   geometry
	latin func(string) string

	page  int     // the current page, from 1
	y     float64 // where the next block starts
	floor float64 // below the last side heading; a heading or figure must not start above it

	starts   []int // the page on which each section starts, as drawn so far
	listed   []int // likewise from the first drawing; nil in the first
	pages    int   // in all, from the first drawing
	pictures []func() (pdf.Picture, error)
}

func newBook(j Job, listed []int, pages int) *book {
	doc := pdf.New(j.Name + " \u2013 assembly guide")
	return &book{
		job: j, doc: doc, geo: newGeometry(j.Plan.Backdrop), latin: doc.Canvas().UnicodeTranslatorFromDescriptor(""),
		listed: listed, pages: pages,
	}
}

// picture makes the picture that Document.Stream asks for.
func (b *book) picture(id pdf.PictureID) (pdf.Picture, error) { return b.pictures[id-1]() }
