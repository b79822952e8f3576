package rehearsal

import (
	"net/http"
	"os"
	"slices"

	"dropsheet/tile/readfile"
)

// What the files are that may be looked at of a job that was made.
const (
	kindPDF = "application/pdf"
	kindPNG = "image/png"
)

var madeKinds = map[string]string{"sheets.pdf": kindPDF, "guide.pdf": kindPDF, "rays.pdf": kindPDF,
	"proof.png": kindPNG, "seams.png": kindPNG, "closeup.png": kindPNG}

// open opens a file of the job that was made last, if it is one of those that may be looked at; nil where it is not, or
// something else lies in its place by now. Close it.
func (m *making) open(name string) (*os.File, os.FileInfo) {
	m.mutex.Lock()
	folder, names := m.folder, m.names
	m.mutex.Unlock()
	if madeKinds[name] == "" || !slices.Contains(names, name) {
		return nil, nil
	}
	f, info, err := readfile.OpenIn(folder, name)
	if err != nil {
		return nil, nil
	}
	return f, info
}

// made answers with a file of the job that was made last.
func (s *server) made(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	f, info := s.making.open(name)
	if f == nil {
		refuse(w, http.StatusNotFound)
		return
	}
	defer f.Close()
	kind := madeKinds[name]
	w.Header().Set("Content-Type", kind)
	if kind == kindPDF { // which the page's policy lets no viewer in the browser draw
		w.Header().Set("Content-Disposition", `attachment; filename="`+name+`"`)
	}
	http.ServeContent(w, r, "", info.ModTime(), f)
}
