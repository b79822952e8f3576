package rehearsal

import (
	"image/color"
	"image/png"
	"net/http"
	"path/filepath"
	"slices"
	"strconv"

	"dropsheet/tile/artwork/page"
	"dropsheet/tile/readfile"
)

// madeKinds are what may be looked at of a job that was made.
var madeKinds = map[string]string{"sheets.pdf": "application/pdf", "guide.pdf": "application/pdf",
	"proof.png": "image/png", "seams.png": "image/png", "closeup.png": "image/png", "rays.pdf": "application/pdf"}

// made answers with a file of the job that was made last.
func (s *server) made(w http.ResponseWriter, r *http.Request) {
	s.making.mutex.Lock()
	folder, names := s.making.folder, s.making.names
	s.making.mutex.Unlock()
	name := r.PathValue("name")
	kind, ok := madeKinds[name]
	if !ok || !slices.Contains(names, name) {
		refuse(w, http.StatusNotFound)
		return
	}
	f, info, err := readfile.Open(filepath.Join(folder, name))
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	defer f.Close()
	w.Header().Set("Content-Type", kind)
	if kind == "application/pdf" { // which the page's policy lets no viewer in the browser draw
		w.Header().Set("Content-Disposition", `attachment; filename="`+name+`"`)
	}
	http.ServeContent(w, r, "", info.ModTime(), f)
}

// mostSheetsBytes bounds the sheets that are read to draw one of them.
const mostSheetsBytes = 1 << 30

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
	data, err := readfile.All(filepath.Join(folder, "sheets.pdf"), mostSheetsBytes)
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
	drawn, err := file.Render(number, px(widthMM), px(heightMM), color.RGBA{0xff, 0xff, 0xff, 0xff})
	if err != nil {
		refuse(w, http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", "image/png")
	_ = (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(w, drawn)
}
