package film

import (
	"errors"
	"fmt"
	"image"
	"io"
	"math"
)

const (
	longest = 16383 // pixels a side: VP8's header has 14 bits (RFC 6386, 9.1)

	// Playback, frames a second. Faster ones than that would be less than two of the file's milliseconds apart.
	slowest, fastest = 0.1, 500
)

// A Writer writes one film.
type Writer struct {
	out         io.WriteSeeker
	start       int64 // of the film in out
	size        image.Point
	playbackFPS float64
	encoder     *encoder

	clusters []int64 // where each frame's cluster begins
	length   int64   // of the segment's content so far
	err      error   // that writing ended with
	closed   bool
}

// Check tells why a film can't have such frames, or be shown at such a rate.
func Check(widthPx, heightPx int, playbackFPS float64) error {
	if widthPx < 1 || heightPx < 1 || widthPx > longest || heightPx > longest {
		return fmt.Errorf("a film can't have frames of %d x %d pixels\n"+
			"hint: take 1 to %d both ways", widthPx, heightPx, longest)
	}
	if !(playbackFPS >= slowest && playbackFPS <= fastest) {
		return fmt.Errorf("a film can't be played at %g frames a second\n"+
			"hint: take %g to %d, such as 25", playbackFPS, slowest,
			fastest)
	}
	return nil
}

// New begins a film at out's present place. Its frames have widthPx x heightPx pixels, 1 to 16383 either way, and
// are shown at playbackFPS frames a second, 0.1 to 500. Until Close has returned, out holds no film that plays.
func New(out io.WriteSeeker, widthPx, heightPx int, playbackFPS float64) (*Writer, error) {
	if err := Check(widthPx, heightPx, playbackFPS); err != nil {
		return nil, err
	}
	start, err := out.Seek(0, io.SeekCurrent)
	if err != nil {
		return nil, fmt.Errorf("a film needs a file to go back in: %w", err)
	}
	lib, err := loaded()
	if err != nil {
		return nil, err
	}
	size := image.Pt(widthPx, heightPx)
	enc, err := lib.newEncoder(size)
	if err != nil {
		return nil, err
	}
	w := &Writer{out: out, start: start, size: size, playbackFPS: playbackFPS, encoder: enc}
	w.length = int64(len(w.opening(0, 0)))
	if _, err := out.Write(w.header(0, 0, 0)); err != nil {
		return nil, errors.Join(fmt.Errorf("writing the film: %w", err), enc.close())
	}
	return w, nil
}

// Add appends a picture of the film's size. Where it is transparent it counts as lying on black. A frame of 640 x
// 480 pixels takes some hundredths of a second: whoever wants to stop does so between frames.
func (w *Writer) Add(picture image.Image) error {
	switch {
	case w.closed:
		return errors.New("the film is closed\nhint: begin another one for more frames")
	case w.err != nil:
		return w.err
	case picture.Bounds().Size() != w.size:
		return fmt.Errorf("frame %d of the film has %d x %d pixels, the film %d x %d\nhint: give all frames one size",
			len(w.clusters)+1, picture.Bounds().Dx(), picture.Bounds().Dy(), w.size.X, w.size.Y)
	}
	frame, err := w.encoder.encode(picture)
	if err == nil {
		err = w.cluster(frame)
	}
	if err != nil {
		w.err = fmt.Errorf("frame %d of the film: %w", len(w.clusters)+1, err)
	}
	return w.err
}

// A frame's cluster holds it alone: WebM wants key frames first in theirs, and all of ours are.
func (w *Writer) cluster(frame []byte) error {
	// the track, as a size is laid, no milliseconds after the cluster's time, a key frame (RFC 9559, 10.2)
	head := []byte{0x80 | track, 0, 0, 0x80}
	cluster := element(idCluster,
		number(idTimestamp, w.timeMS(len(w.clusters))), element(idSimpleBlock, head, frame))
	if _, err := w.out.Write(cluster); err != nil {
		return fmt.Errorf("writing it: %w", err)
	}
	w.clusters = append(w.clusters, w.length)
	w.length += int64(len(cluster))
	return nil
}

func (w *Writer) timeMS(frame int) uint64 {
	return uint64(math.Round(float64(frame) * 1000 / w.playbackFPS))
}

// Close finishes the film: the list of its frames at its end, and what only now is known in its header. It
// returns the error that writing ended with, if any; the file must then be thrown away, as must that of a film
// that was stopped. It does not close the file. Closing again does nothing.
func (w *Writer) Close() error {
	if w.closed {
		return nil
	}
	w.closed = true
	if w.err == nil {
		w.err = w.finish()
	}
	return errors.Join(w.err, w.encoder.close())
}

func (w *Writer) finish() error {
	if len(w.clusters) == 0 {
		return errors.New("a film without frames can't be played\nhint: add one at least")
	}
	cues := w.cues()
	_, err := w.out.Write(cues)
	if err == nil {
		_, err = w.out.Seek(w.start, io.SeekStart)
	}
	if err == nil {
		_, err = w.out.Write(w.header(w.length+int64(len(cues)), w.length, len(w.clusters)))
	}
	if err != nil {
		return fmt.Errorf("finishing the film: %w", err)
	}
	return nil
}
