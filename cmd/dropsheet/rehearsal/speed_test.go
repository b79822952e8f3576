package rehearsal

import (
	"bytes"
	"context"
	"image"
	"net/http"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job"
	"dropsheet/tile/proof"
)

// The harbour of 24 megapixels at its README's set-up.
var (
	wholeHarbour = filepath.Join("..", "..", "..", "examples", "harbour", "harbour.jpg")
	harbourWords = []Word{{"distance", "40cm"}, {"frame-width", "9mm"}, {"pixels", "1280x800"}}
)

func harbourBench(b *testing.B) *bench {
	b.Helper()
	extent, err := job.ReadExtent(wholeHarbour, 0, artwork.Default)
	if err != nil {
		b.Fatal(err)
	}
	return newBench(Subject{Artwork: wholeHarbour, Extent: extent, Limits: artwork.Default, Folder: "harbour-backdrop"})
}

// untilFrame is a page that leaves when the first frame has come.
type untilFrame struct {
	header http.Header
	leave  context.CancelFunc
}

func (u untilFrame) Header() http.Header              { return u.header }
func (u untilFrame) WriteHeader(int)                  {}
func (u untilFrame) Flush()                           {}
func (u untilFrame) SetWriteDeadline(time.Time) error { return nil }
func (u untilFrame) Write(p []byte) (int, error) {
	if bytes.HasPrefix(p, []byte(`{"kind":"frame"`)) {
		u.leave()
	}
	return len(p), nil
}

// BenchmarkFirstFrame is from the artwork's file to the first frame.
func BenchmarkFirstFrame(b *testing.B) {
	for b.Loop() {
		firstFrame(b, harbourBench(b))
	}
}

// BenchmarkNextFrame is from a changed word to the draft, as large as the pace has it.
func BenchmarkNextFrame(b *testing.B) {
	on := harbourBench(b)
	for b.Loop() {
		firstFrame(b, on)
	}
}

func firstFrame(b *testing.B, on *bench) {
	ctx, leave := context.WithCancel(b.Context())
	defer leave()
	to, end := newRecords(ctx, untilFrame{http.Header{}, leave})
	defer end()
	on.answer(ctx, question{Words: harbourWords, SidePx: 1280}, to)
	if ctx.Err() == nil {
		b.Fatal("no frame came")
	}
}

// BenchmarkDraft renders the draft of 640 x 400 pixels.
func BenchmarkDraft(b *testing.B) {
	on := harbourBench(b)
	s, err := on.set(harbourWords)
	if err != nil {
		b.Fatal(err)
	}
	scene := s.asked.Scene(s.plans[0], s.picture)
	scene.Camera, scene.Samples = proof.Reduced(scene.Camera, largestDraftPx), 1
	var frame *image.RGBA
	for b.Loop() {
		if frame, err = scene.Render(b.Context(), nil); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "frames/s")
	b.ReportMetric(float64(runtime.GOMAXPROCS(0)), "cores")
	runtime.KeepAlive(frame)
}

// BenchmarkFigures works out all that size tells.
func BenchmarkFigures(b *testing.B) {
	on := harbourBench(b)
	s, err := on.set(harbourWords)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		newFiguresRecord(s, s.plans[0])
	}
}
