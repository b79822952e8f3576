package job

import (
	"context"
	"fmt"
	"image"
	"sync"

	"dropsheet/layout/report"
	"dropsheet/tile/proof"
)

// Watch is told how work goes on, one call at a time. What is nil is not told.
type Watch struct {
	// Warn is told in a sentence of what the user should know of, though the work goes on.
	Warn func(warning string)
	// Note is told in a sentence what came out, good or bad.
	Note func(note string)
	// Progress is told how many of so many sheets or rows are done; what is the word for one.
	Progress func(what string, done, of int)
}

func (w Watch) warn(warnings ...string) {
	for _, warning := range warnings {
		if w.Warn != nil {
			w.Warn(warning)
		}
	}
}

func (w Watch) note(format string, a ...any) {
	if w.Note != nil {
		w.Note(fmt.Sprintf(format, a...))
	}
}

// tell warns in the words of a report, which may name what a job file brings.
func (w Watch) tell(warnings []report.Text) {
	for _, warning := range warnings {
		w.warn(Printable(warning.String()))
	}
}

func (w Watch) progress(what string, done, of int) {
	if w.Progress != nil {
		w.Progress(what, done, of)
	}
}

// Render renders a scene and counts its rows. It tells what clips and what is black where the scene is as bright as it
// is recorded.
func Render(ctx context.Context, s proof.Scene, w Watch) (*image.RGBA, error) {
	frame, err := render(ctx, s, w)
	if err == nil {
		w.noteTones(s, "frame", proof.TonesOf(frame))
	}
	return frame, err
}

// render renders a scene and counts its rows.
func render(ctx context.Context, s proof.Scene, w Watch) (*image.RGBA, error) {
	var mutex sync.Mutex
	rows := 0
	return s.Render(ctx, func() {
		mutex.Lock()
		defer mutex.Unlock()
		rows++
		w.progress("row", rows, s.Camera.HeightPx)
	})
}
