package rehearsal

import (
	"image/color"
	"image/png"
	"io"
	"net/http"
	"strconv"
	"time"

	"dropsheet/tile/artwork/page"
)

// mostPagesBytes bounds a PDF that is read to draw a page of it.
const mostPagesBytes = 1 << 30

// The longer side of the picture of a page that was made: one among the others, and one by itself.
const (
	pageSidePx  = 320
	largeSidePx = 1600
)

// madePDF opens a PDF of the job that was made last. ok is false when it has refused the request. Call done after use:
// until then no other page is drawn.
func (s *server) madePDF(w http.ResponseWriter, r *http.Request) (pdf *page.File, done func(), ok bool) {
	s.drawing.Lock()
	pdf = func() *page.File {
		name := r.PathValue("name")
		f, info := s.making.open(name)
		if f == nil {
			return nil
		}
		defer f.Close()
		if madeKinds[name] != kindPDF || info.Size() > mostPagesBytes {
			return nil
		}
		data, err := io.ReadAll(io.LimitReader(f, mostPagesBytes))
		if err != nil {
			return nil
		}
		pdf, err := page.Open(data)
		if err != nil {
			return nil
		}
		return pdf
	}()
	allow(w)
	if pdf == nil {
		s.drawing.Unlock()
		refuse(w, http.StatusNotFound)
		return nil, nil, false
	}
	return pdf, func() {
		pdf.Close()
		s.drawing.Unlock()
	}, true
}

// allow gives the page its time to fetch an answer, however long that took to come: others are drawn before it, and
// for the first of all PDFium is made ready, which takes a busy machine a minute.
func allow(w http.ResponseWriter) {
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(recordTime))
}

// madePages answers with how many pages a PDF has that was made.
func (s *server) madePages(w http.ResponseWriter, r *http.Request) {
	pdf, done, ok := s.madePDF(w, r)
	if !ok {
		return
	}
	pages := pdf.Pages()
	done()
	answerJSON(w, struct {
		Pages int `json:"pages"`
	}{pages})
}

// madePage answers with a picture of a page, whose longer side is so many pixels.
func (s *server) madePage(sidePx int) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		number, err := strconv.Atoi(r.PathValue("number"))
		if err != nil || number < 1 {
			refuse(w, http.StatusNotFound)
			return
		}
		pdf, done, ok := s.madePDF(w, r)
		if !ok {
			return
		}
		defer done()
		if number > pdf.Pages() {
			refuse(w, http.StatusNotFound)
			return
		}
		widthMM, heightMM, err := pdf.SizeMM(number)
		if err != nil {
			refuse(w, http.StatusNotFound)
			return
		}
		px := func(mm float64) int { return max(1, int(mm/max(widthMM, heightMM)*float64(sidePx))) }
		drawn, err := pdf.Render(number, px(widthMM), px(heightMM), color.RGBA{0xff, 0xff, 0xff, 0xff})
		if err != nil {
			refuse(w, http.StatusNotFound)
			return
		}
		allow(w)
		w.Header().Set("Content-Type", kindPNG)
		_ = (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(w, drawn)
	}
}
