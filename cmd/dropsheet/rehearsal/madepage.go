package rehearsal

import (
	"image/png"
	"net/http"
	"os"
	"path/filepath"
	"strconv"

	"dropsheet/tile/artwork/page"
)

// pageSidePx is the longer side of the picture of a page that was made.
const pageSidePx = 320

// madePage answers with a picture of a page of the sheets that were made last.
func (s *server) madePage(w http.ResponseWriter, r *http.Request) {
	s.making.mutex.Lock()
	folder := s.making.folder
	s.making.mutex.Unlock()
	number, err := strconv.Atoi(r.PathValue("number"))
	if folder == "" || err != nil || number < 1 {
		refuse(w, http.StatusNotFound)
		return
	}
	s.drawing.Lock() // one at a time
	defer s.drawing.Unlock()
	data, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	file, err := page.Open(data)
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	defer file.Close()
	if number > file.Pages() {
		refuse(w, http.StatusNotFound)
		return
	}
	widthMM, heightMM, err := file.SizeMM(number)
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	px := func(mm float64) int { return max(1, int(mm/max(widthMM, heightMM)*pageSidePx)) }
	drawn, err := file.Render(number, px(widthMM), px(heightMM))
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", "image/png")
	_ = (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(w, drawn)
}
