package rehearsal

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/tile/job"
)

// mostPictureBytes bounds a picture that is dropped on the page.
const mostPictureBytes = 1 << 30

// pictureTime is how long one may take to come and to be decoded, on a slow machine too.
const pictureTime = 10 * time.Minute

// endings are what names of pictures end in.
var endings = []string{".jpg", ".jpeg", ".png", ".tif", ".tiff", ".bmp", ".gif", ".webp", ".pdf"}

// takePicture puts a picture on the bench that was dropped on the page. Its bytes are the body; its name comes with it,
// of which only the last part counts. It lies in a folder of its own until the program ends, and in the jobs that are
// made of it.
func (s *server) takePicture(w http.ResponseWriter, r *http.Request) {
	if r.Header.Get("Content-Type") != "application/octet-stream" {
		refuse(w, http.StatusUnsupportedMediaType)
		return
	}
	if r.ContentLength > mostPictureBytes {
		refuse(w, http.StatusRequestEntityTooLarge)
		return
	}
	control := http.NewResponseController(w)
	until := time.Now().Add(pictureTime)
	_, _ = control.SetReadDeadline(until), control.SetWriteDeadline(until)
	name, err := pictureName(r.Header.Get("Picture-Name"))
	if err == nil {
		err = s.bench.takePicture(name, http.MaxBytesReader(w, r.Body, mostPictureBytes))
	}
	if err != nil {
		answerJSON(w, newErrorRecord(err, nil))
		return
	}
	s.start(w, r)
}

// pictureName is the name of a picture without anything that leads elsewhere.
func pictureName(escaped string) (string, error) {
	name, err := url.PathUnescape(escaped)
	if err != nil {
		return "", errors.New("the picture's name can't be read\nhint: name it anew")
	}
	name = name[strings.LastIndexAny(name, `/\`)+1:]
	ending := strings.ToLower(filepath.Ext(name))
	if !slices.Contains(endings, ending) {
		return "", fmt.Errorf("%.60q is no picture that can be taken\n"+
			"hint: drop a JPEG, PNG, TIFF, BMP, GIF, WebP or PDF", name)
	}
	base := strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) || unicode.IsDigit(c) || strings.ContainsRune("-_ ", c) {
			return c
		}
		return '-'
	}, strings.TrimSuffix(name, filepath.Ext(name)))
	if runes := []rune(base); len(runes) > longestName {
		base = string(runes[:longestName])
	}
	if base = strings.Trim(base, " -"); base == "" {
		base = "picture"
	}
	return base + ending, nil
}

// takePicture keeps a picture, and puts it on the bench if it can be decoded.
func (b *bench) takePicture(name string, from io.Reader) (err error) {
	was, _ := b.now()
	folder, err := os.MkdirTemp("", "dropsheet-rehearse-")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.RemoveAll(folder)
		}
	}()
	path := filepath.Join(folder, name)
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(f, from)
	if err = errors.Join(err, f.Close()); err != nil {
		return errors.New("the picture did not come whole\nhint: drop it again")
	}
	extent, err := job.ReadExtent(path, 0, was.Limits)
	if err != nil {
		if _, first := job.ReadExtent(path, 1, was.Limits); first == nil {
			return fmt.Errorf("%q has several pages\n"+
				"hint: save the one that you want as a PDF of its own and drop that, or start "+
				"rehearse anew with --page", name)
		}
		return err
	}
	whole, err := extent.Open(path, "", was.Limits)
	if err != nil {
		return err
	}
	words := maps.Clone(was.Words)
	delete(words, "page")
	b.put(Subject{Artwork: path, Extent: extent, Limits: was.Limits, Dropped: true,
		Folder: filepath.Join(filepath.Dir(was.Folder), ask.BackdropFolder(name)), Words: words}, whole, folder)
	return nil
}
