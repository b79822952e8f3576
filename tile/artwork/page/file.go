package page

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"time"

	pdferrors "github.com/klippa-app/go-pdfium/errors"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"dropsheet/flip/units"
	"dropsheet/tile/pdfium"
)

// What a file may take, so that a hostile one can't take all. An honest map of 8,000 lines takes a tenth of it.
const (
	memoryMB  = 512
	longest   = 2 * time.Minute
	cacheName = "dropsheet" // PDFium's machine code, in the user's cache folder
)

// mostPagePt is the longest side of a page (ISO 32000-1, annex C.2, recalled from memory): 5 m.
const mostPagePt = 14400

// File is a PDF file that is open. Close it. It serves one goroutine at a time.
type File struct {
	ctx    context.Context
	stop   context.CancelFunc
	engine *pdfium.Engine
	ref    references.FPDF_DOCUMENT
	pages  int
}

// Open opens a whole PDF file that is in memory. It reads none that is locked, and none that holds no page.
func Open(data []byte) (*File, error) { return openWithin(data, pdfium.Bounds{MemoryMB: memoryMB}) }

func openWithin(data []byte, bounds pdfium.Bounds) (*File, error) {
	f := &File{}
	f.ctx, f.stop = context.WithTimeout(context.Background(), longest)
	var err error
	f.engine, err = pdfium.Start(f.ctx, pdfium.CompiledFolder(cacheName), bounds)
	if err != nil {
		f.stop()
		return nil, fmt.Errorf("PDFium, which reads PDF files, can't start: %w", err)
	}
	if err := f.open(data); err != nil {
		f.Close()
		return nil, err
	}
	return f, nil
}

func (f *File) open(data []byte) error {
	opened, err := guarded(func() (references.FPDF_DOCUMENT, error) {
		opened, err := f.engine.OpenDocument(&requests.OpenDocument{File: &data})
		if err != nil {
			return "", err
		}
		return opened.Document, nil
	})
	switch {
	case errors.Is(err, pdferrors.ErrPassword), errors.Is(err, pdferrors.ErrSecurity):
		return errors.New("this PDF is locked with a password\nhint: save a copy without one")
	case err != nil:
		return f.why(err)
	}
	f.ref = opened
	f.pages, err = guarded(func() (int, error) {
		count, err := f.engine.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: f.ref})
		if err != nil {
			return 0, err
		}
		return count.PageCount, nil
	})
	switch {
	case err != nil:
		return f.why(err)
	case f.pages < 1:
		return errors.New("this PDF has no page\nhint: save it anew from the program that made it")
	}
	return nil
}

// Pages is how many there are.
func (f *File) Pages() int { return f.pages }

// SizeMM is a page's size as a reader shows it.
func (f *File) SizeMM(page int) (widthMM, heightMM float64, err error) {
	size, err := guarded(func() ([2]float64, error) {
		s, err := f.engine.FPDF_GetPageSizeByIndexF(&requests.FPDF_GetPageSizeByIndexF{Document: f.ref, Index: page - 1})
		if err != nil {
			return [2]float64{}, err
		}
		return [2]float64{float64(s.Size.Width), float64(s.Size.Height)}, nil
	})
	if err != nil {
		return 0, 0, f.why(err)
	}
	widthMM, heightMM = units.PointsToMM(size[0]), units.PointsToMM(size[1])
	if !(min(size[0], size[1]) >= 1 && max(size[0], size[1]) <= mostPagePt) || math.IsNaN(size[0]+size[1]) {
		return 0, 0, fmt.Errorf("page %d is %.3g x %.3g mm, and a page of a PDF has sides of %.2g to %.0f mm\n"+
			"hint: save it on a "+
			"page of a usual size", page, widthMM, heightMM, units.PointsToMM(1), units.PointsToMM(mostPagePt))
	}
	return widthMM, heightMM, nil
}

// Close frees what the file takes.
func (f *File) Close() {
	f.stop()
	f.engine.Close() // its memory is gone either way
}

// why says what went wrong with a file in words of use to whoever has it.
func (f *File) why(err error) error {
	if f.ctx.Err() != nil {
		return fmt.Errorf("this PDF takes over %.0f minutes to draw\nhint: save the page as a picture, or simplify it",
			longest.Minutes())
	}
	if strings.Contains(err.Error(), "\n") {
		what, _, _ := strings.Cut(err.Error(), "\n")
		err = errors.New(what)
	}
	return fmt.Errorf("this PDF can't be read (%w)\n"+
		"hint: save it anew from the program that made it, or save the page as a "+
		"picture", err)
}

// guarded runs a call of PDFium. Where its memory is spoilt or used up the call ends in a panic, which only a hostile
// or a giant file brings about.
func guarded[T any](call func() (T, error)) (result T, err error) {
	defer func() {
		if v := recover(); v != nil {
			what, _, _ := strings.Cut(fmt.Sprint(v), "\n") // what follows is for whoever mends the reader
			err = fmt.Errorf("its reader failed: %.120s", what)
		}
	}()
	return call()
}
