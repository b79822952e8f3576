package job

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"time"

	"dropsheet/layout/shot"
	"dropsheet/tile/film"
	"dropsheet/tile/job/place"
	"dropsheet/tile/proof"
	"dropsheet/tile/readfile"
)

// Film is the drops' passage, rendered into a folder of its own: a picture for each frame, and a film of them all.
type Film struct {
	Scene       proof.Scene // as it is recorded, the drops in their places
	Passage     shot.Passage
	PlaybackFPS float64
	Folder      string
	Force       bool // replace the film of other words that is there
}

// FilmFile is what the film is called in its folder.
const FilmFile = "film.webm"

// What else the folder holds.
const (
	wordsFile  = "film.json"
	frameNames = "frame-*.png"
)

// frameName is what a frame's file is called; frames are counted from 0, their files from 1.
func frameName(frame int) string { return fmt.Sprintf("frame-%04d.png", frame+1) }

// mostFilmFrames bounds a film: shown at 25 a second it runs for 80 seconds, and a frame takes some.
const mostFilmFrames = 2000

// Check tells why there can be no such film.
func (f Film) Check() error {
	if n := f.Passage.Frames(); n > mostFilmFrames {
		return WrongWords(fmt.Errorf("the drop is in the frame for %d frames, and a film has at most %d\n"+
			"hint: give a frame rate "+
			"of at most %.0f a second, with --shutter to keep the exposure", n, mostFilmFrames,
			roundRate(f.Passage.FrameRate*mostFilmFrames/float64(n))))
	}
	return WrongWords(film.Check(f.Scene.Camera.WidthPx, f.Scene.Camera.HeightPx, f.PlaybackFPS))
}

// roundRate is a frame rate of two figures, as cameras have them, that is no higher.
func roundRate(perSecond float64) float64 {
	place := math.Pow(10, math.Floor(math.Log10(perSecond))-1)
	return math.Floor(perSecond/place) * place
}

// WriteFilm renders the film of a job that was read. Frames that the same words made before are taken as they are. When
// it fails or ctx ends the frames made so far stay, each whole, and the same words go on from there.
func (j Job) WriteFilm(ctx context.Context, f Film, w Watch) error {
	if err := f.Check(); err != nil {
		return err
	}
	words, err := j.filmWords(f)
	if err != nil {
		return err
	}
	if err := f.makeFolder(words); err != nil {
		return err
	}
	n := f.Passage.Frames()
	w.note("%d frames of %d x %d pixels, for as long as any of the drop is in the frame: %.3g s at %g a second", n,
		f.Scene.Camera.WidthPx, f.Scene.Camera.HeightPx, float64(n)/f.PlaybackFPS, f.PlaybackFPS)
	// The film itself is held from the first frame on, so that no other run comes into the folder.
	err = place.WriteSeekableIf(filepath.Join(f.Folder, FilmFile), true, func(out io.WriteSeeker) error {
		if err := f.openFolder(words); err != nil {
			return err
		}
		return j.fillFilm(ctx, f, out, w)
	}, j.read.stands)
	if ctx.Err() != nil && errors.Is(err, ctx.Err()) {
		return fmt.Errorf("stopped; %d of %d frames are in %q, and the same words go on from there", f.done(), n, f.Folder)
	}
	return forFilm(err)
}

// done is how many frames there are.
func (f Film) done() (n int) {
	for frame := range f.Passage.Frames() {
		if _, err := os.Stat(filepath.Join(f.Folder, frameName(frame))); err == nil {
			n++
		}
	}
	return n
}

// fillFilm renders what frames there are not yet and puts all of them into the film.
func (j Job) fillFilm(ctx context.Context, f Film, out io.WriteSeeker, w Watch) (err error) {
	c := f.Scene.Camera
	writer, err := film.New(out, c.WidthPx, c.HeightPx, f.PlaybackFPS)
	if err != nil {
		return err
	}
	defer func() {
		if closing := writer.Close(); err == nil {
			err = closing
		}
	}()
	n := f.Passage.Frames()
	// First the one with the drops in their places, which takes about the longest: it tells how long all will take.
	began := time.Now()
	_, rendered, err := j.frame(ctx, f, min(max(-f.Passage.First, 0), n-1))
	if err != nil {
		return err
	}
	if rendered {
		w.tellHowLong(time.Since(began), n-1)
	}
	var tones proof.Tones
	for frame := range n {
		picture, _, err := j.frame(ctx, f, frame)
		if err == nil {
			err = cmp.Or(ctx.Err(), writer.Add(picture))
		}
		if err != nil {
			return err
		}
		t := proof.TonesOf(picture)
		tones.ClippedShare += t.ClippedShare / float64(n)
		tones.BlackShare += t.BlackShare / float64(n)
		w.progress("frame", frame+1, n)
	}
	w.noteTones(f.Scene, "film", tones)
	return nil
}

// frame is a frame of the film: the one that stands in its folder, or else rendered and put there.
func (j Job) frame(ctx context.Context, f Film, frame int) (picture *image.RGBA, rendered bool, err error) {
	path := filepath.Join(f.Folder, frameName(frame))
	if picture = frameOf(path, f.Scene.Camera.WidthPx, f.Scene.Camera.HeightPx); picture != nil {
		return picture, false, nil
	}
	picture, err = f.Scene.At(f.Passage.At(frame)).Render(ctx, nil)
	if err != nil {
		return nil, false, err
	}
	return picture, true, j.writeFile(path, true, writePNG(func() image.Image { return picture }))
}

// frameOf is the picture that stands in a frame's file; nil where there is none of that size.
func frameOf(path string, widthPx, heightPx int) *image.RGBA {
	file, _, err := readfile.Open(path)
	if err != nil {
		return nil
	}
	defer file.Close()
	told, err := png.DecodeConfig(file)
	if err != nil || told.Width != widthPx || told.Height != heightPx {
		return nil
	}
	if _, err := file.Seek(0, io.SeekStart); err != nil {
		return nil
	}
	read, err := png.Decode(file)
	if err != nil {
		return nil
	}
	picture := image.NewRGBA(read.Bounds())
	draw.Draw(picture, picture.Rect, read, image.Point{}, draw.Src)
	return picture
}

// tellHowLong says how long the rest takes, by one frame, if that is worth telling.
func (w Watch) tellHowLong(one time.Duration, left int) {
	const worthTelling = 20 * time.Second
	if rest := one * time.Duration(left); rest > worthTelling {
		w.note("about %s at most for the other %d frames; Ctrl-C stops, and the same words go on from there. A smaller "+
			"--pixels is sooner done", rest.Round(10*time.Second), left)
	}
}

// forFilm has an error speak of the flag that names a film's folder, in place of that for a file.
func forFilm(err error) error {
	if err == nil {
		return nil
	}
	return filmError{err}
}

type filmError struct{ error }

func (e filmError) Error() string { return strings.ReplaceAll(e.error.Error(), "--out", "--film") }
func (e filmError) Unwrap() error { return e.error }
