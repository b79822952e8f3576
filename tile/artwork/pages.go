package artwork

import (
	"crypto/sha256"
	"fmt"
	"image/color"
	"io"
	"strings"

	"dropsheet/tile/artwork/page"
)

// pdfMagic begins a PDF file; readers take up to pdfWithin bytes before it (ISO 32000-1, annex H, implementation note
// 13, recalled from memory).
const (
	pdfMagic  = "%PDF-"
	pdfWithin = 1024
)

// Page is a page of a PDF file, which has no pixels of its own.
type Page struct {
	Number            int // from 1
	WidthMM, HeightMM float64
}

// IsPDF tells whether a file is a PDF, by its first bytes. Errors are those of Open.
func IsPDF(path string) (bool, error) {
	f, src, err := openFile(path)
	if err != nil {
		return false, fmt.Errorf("picture %q: %w", path, err)
	}
	defer f.Close()
	return startsPDF(src), nil
}

func startsPDF(src source) bool {
	start, err := src.bytes(0, min(src.size, pdfWithin))
	return err == nil && strings.Contains(string(start), pdfMagic)
}

// ReadPage reads the size of a page of a PDF file: of the only one where number is 0. Errors quote the path, and say
// which pages there are.
func ReadPage(path string, number int, limits Limits) (p Page, err error) {
	err = withPDF(path, path, limits, func(f *page.File, _ []byte) error {
		p, err = pageOf(f, number)
		return err
	})
	return p, err
}

// OpenPage draws a page of a PDF file on so many pixels, upright, in sRGB, its bare ground as transparent parts of a
// picture are. original is the path that errors quote, of which path may be a copy. The same file, page and size give
// the same pixels.
func OpenPage(path, original string, number, widthPx, heightPx int, r Reading) (drawn *Picture, err error) {
	if widthPx > r.Pixels/heightPx { // by division: the product may not fit
		return nil, fmt.Errorf("picture %q: %w", original, &TooManyPixelsError{widthPx, heightPx, r.Pixels})
	}
	err = withPDF(path, original, r.Limits, func(f *page.File, data []byte) error {
		p, err := pageOf(f, number)
		if err != nil {
			return err
		}
		drawn = &Picture{SHA256: sha256.Sum256(data), Format: "pdf"}
		if drawn.Transparent, err = f.BareGround(p.Number); err != nil {
			return err
		}
		ground := r.Under
		if ground == (color.RGBA{}) {
			ground = color.RGBA{0xff, 0xff, 0xff, 0xff} // paper, which is no change worth a word
		} else if drawn.Transparent {
			drawn.Warnings = []string{"what the page leaves bare is printed in the background's colour: paint it white in the " +
				"PDF to have it white"}
		}
		drawn.Image, err = f.Render(p.Number, widthPx, heightPx, ground)
		return err
	})
	return drawn, err
}

// withPDF opens a PDF file for a while.
func withPDF(path, original string, limits Limits, do func(*page.File, []byte) error) error {
	read := func() error {
		f, src, err := openFile(path)
		if err != nil {
			return err
		}
		defer f.Close()
		data, err := readAll(io.Reader(f), src.size, limits)
		if err != nil {
			return err
		}
		file, err := page.Open(data)
		if err != nil {
			return err
		}
		defer file.Close()
		return do(file, data)
	}
	if err := read(); err != nil {
		return fmt.Errorf("picture %q: %w", original, err)
	}
	return nil
}

// pageOf is the page of that number, or the only one.
func pageOf(f *page.File, number int) (Page, error) {
	switch {
	case number == 0 && f.Pages() == 1:
		number = 1
	case number == 0:
		return Page{}, fmt.Errorf("this PDF has %d pages\nhint: say which, with --page: %s", f.Pages(), listPages(f))
	case number > f.Pages():
		return Page{}, fmt.Errorf("there is no page %d\nhint: this PDF has %s", number, listPages(f))
	}
	w, h, err := f.SizeMM(number)
	return Page{number, w, h}, err
}

// mostListed is how many pages an error lists.
const mostListed = 12

// listPages tells the pages with their sizes.
func listPages(f *page.File) string {
	var list []string
	for number := 1; number <= min(f.Pages(), mostListed); number++ {
		w, h, err := f.SizeMM(number)
		if err != nil {
			list = append(list, fmt.Sprintf("%d (of no use)", number))
			continue
		}
		list = append(list, fmt.Sprintf("%d (%.0f x %.0f mm)", number, w, h))
	}
	if f.Pages() > mostListed {
		list = append(list, fmt.Sprintf("and so on to %d", f.Pages()))
	}
	return strings.Join(list, ", ")
}
