package rehearsal

import (
	"context"
	"embed"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"log"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"
)

// server answers the page.
type server struct {
	bench  *bench
	turn   turn
	making making
	// drawing keeps pages of what was made from being drawn side by side.
	drawing sync.Mutex
	flags   []heading
	files   map[string][]byte // of the page, by name
}

// Serve serves the page on a listener of the loopback until ctx ends. opened is told its address.
func Serve(ctx context.Context, l net.Listener, s Subject, flags []Heading, opened func(url string)) error {
	files, err := pageFiles()
	if err != nil {
		return err
	}
	in := &server{bench: newBench(s), flags: headings(flags), files: files}
	defer in.bench.clear()
	guard := newGuard(l.Addr().String(), in.routes())
	h := &http.Server{
		Handler: guard, BaseContext: func(net.Listener) context.Context { return ctx },
		ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 30 * time.Second, IdleTimeout: 2 * time.Minute,
		WriteTimeout: 30 * time.Second, MaxHeaderBytes: 16 << 10,
		ErrorLog: log.New(io.Discard, "", 0), // else what strangers send would be told on the terminal
	}
	_, art := in.bench.now()
	go func() { _, _ = art.decoded() }() // while the browser starts
	opened(guard.url())
	served := make(chan error, 1)
	go func() { served <- h.Serve(l) }()
	select {
	case err := <-served:
		return err
	case <-ctx.Done():
	}
	const patience = 10 * time.Second
	leaving, cancel := context.WithTimeout(context.WithoutCancel(ctx), patience)
	defer cancel()
	if h.Shutdown(leaving) != nil {
		_ = h.Close()
	}
	in.making.wait()
	return nil
}

// routes are what may be asked for, behind the guard.
func (s *server) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, _ *http.Request) { s.file(w, "index.html") })
	mux.HandleFunc("GET /page/{name}", func(w http.ResponseWriter, r *http.Request) { s.file(w, r.PathValue("name")) })
	mux.HandleFunc("GET /start", s.start)
	mux.HandleFunc("POST /look", s.inTurn(s.bench.answer))
	mux.HandleFunc("POST /play", s.inTurn(s.bench.play))
	mux.HandleFunc("POST /place", s.place)
	mux.HandleFunc("POST /make", s.make)
	mux.HandleFunc("GET /made/{name}", s.made)
	mux.HandleFunc("GET /made/{name}/pages", s.madePages)
	mux.HandleFunc("GET /made/{name}/{number}", s.madePage(pageSidePx))
	mux.HandleFunc("GET /made/{name}/{number}/large", s.madePage(largeSidePx))
	mux.HandleFunc("POST /takes", s.saveTakes)
	mux.HandleFunc("POST /picture", s.takePicture)
	return mux
}

//go:embed page
var pageFS embed.FS

// kinds are what files of the page are, by what their names end in.
var kinds = map[string]string{".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
	".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml"}

// pageFiles reads the page.
func pageFiles() (map[string][]byte, error) {
	files := map[string][]byte{}
	return files, fs.WalkDir(pageFS, "page", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		files[d.Name()], err = pageFS.ReadFile(path)
		return err
	})
}

// file answers with a file of the page.
func (s *server) file(w http.ResponseWriter, name string) {
	kind := ""
	if dot := strings.LastIndexByte(name, '.'); dot >= 0 {
		kind = kinds[name[dot:]]
	}
	text, ok := s.files[name]
	if !ok || kind == "" {
		refuse(w, http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", kind)
	_, _ = w.Write(text)
}

// mostAskedBytes bounds a question: far more than any set-up has.
const mostAskedBytes = 256 << 10

// receive reads a body of JSON into a value; false when it has answered with what is wrong.
func receive(w http.ResponseWriter, r *http.Request, into any) bool {
	if kind, _, _ := strings.Cut(r.Header.Get("Content-Type"), ";"); kind != "application/json" {
		refuse(w, http.StatusUnsupportedMediaType)
		return false
	}
	decoder := json.NewDecoder(http.MaxBytesReader(w, r.Body, mostAskedBytes))
	decoder.DisallowUnknownFields()
	err := decoder.Decode(into)
	if err == nil {
		if _, err = decoder.Token(); errors.Is(err, io.EOF) {
			return true // one value and nothing behind it
		}
	}
	var tooLarge *http.MaxBytesError
	switch {
	case errors.As(err, &tooLarge):
		refuse(w, http.StatusRequestEntityTooLarge)
	default:
		refuse(w, http.StatusBadRequest)
	}
	return false
}

// inTurn answers a question by words with records, one question at a time: a newer one ends it.
func (s *server) inTurn(answer func(context.Context, question, *records)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var q question
		if !receive(w, r, &q) {
			return
		}
		ctx, done, ok := s.turn.take(r.Context())
		if !ok {
			return
		}
		defer done()
		to, end := newRecords(ctx, w)
		defer end()
		answer(ctx, q, to)
	}
}

// answerJSON answers with a value.
func answerJSON(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(v)
}
