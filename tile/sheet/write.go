package sheet

import (
	"context"
	"fmt"
	"image"
	"io"
	"iter"
	"runtime"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
)

// jpegQuality is where a photograph printed at 300 pixels an inch shows no loss to the eye (common practice,
// no source).
const jpegQuality = 92

// Job is what all sheets of a job share.
type Job struct {
	Label    Label
	Plan     layout.Plan
	Grid     raster.Grid
	Source   *raster.Source
	Profile  []byte // ICC profile of the artwork's pixels; nil stands for sRGB, or grey with its curve
	Lossless bool   // Flate in place of JPEG
}

// Write streams a PDF of the chosen sheets, one a page, in the order given. Sheets are made on all
// processors, a few ahead of the one that is being written, so memory does not grow with their number. done,
// if not nil, is called after each sheet. It stops with ctx's error when ctx ends.
func (j Job) Write(ctx context.Context, w io.Writer, chosen []layout.Sheet, done func(sheets int)) error {
	d := pdf.New(j.Label.Job)
	pixels := make([]image.Rectangle, len(chosen))
	for i, s := range chosen {
		pixels[i] = addPage(d, j.Plan, j.Grid, s, j.Label)
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	pictures := j.pictures(ctx, pixels)
	copies := max(1, j.Plan.Backdrop.Copies) // places of each sheet's picture, one after the other
	var last pdf.Picture
	return d.Stream(w, func(id pdf.PictureID) (pdf.Picture, error) {
		at, again := (int(id)-1)/copies, (int(id)-1)%copies > 0
		if again {
			return last, nil
		}
		if err := ctx.Err(); err != nil {
			return pdf.Picture{}, err
		}
		var m made
		select {
		case waiting := <-pictures:
			m = <-waiting
		case <-ctx.Done():
			return pdf.Picture{}, ctx.Err()
		}
		if m.err != nil {
			return pdf.Picture{}, fmt.Errorf("sheet %s: %w", chosen[at].Name, m.err)
		}
		if done != nil {
			done(at + 1)
		}
		last = m.picture
		return last, nil
	})
}

// made is a sheet's picture, or why there is none.
type made struct {
	picture pdf.Picture
	err     error
}

// pictures makes the pictures on all processors and hands them on in order. At most two for each processor
// are begun and not taken.
func (j Job) pictures(ctx context.Context, pixels []image.Rectangle) <-chan chan made {
	ordered := make(chan chan made, runtime.GOMAXPROCS(0))
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	go func() {
		for _, r := range pixels {
			one := make(chan made, 1)
			select {
			case ordered <- one:
			case <-ctx.Done():
				return
			}
			slots <- struct{}{}
			go func() {
				picture, err := j.picture(r)
				<-slots
				one <- made{picture, err}
			}()
		}
	}()
	return ordered
}

// picture makes one sheet's picture.
func (j Job) picture(r image.Rectangle) (picture pdf.Picture, err error) {
	if j.Lossless {
		picture, err = pdf.EncodeFlateBands(r.Size(), bands(r, j.Source.Cut))
	} else {
		picture, err = pdf.EncodeJPEGBands(r.Size(), bands(r, j.Source.CutYCbCr), jpegQuality, j.Source.Chroma())
	}
	picture.Profile = j.Profile
	return picture, err
}

// bandPx is how many rows of the grid are cut and packed at a time: all of a sheet's pixels, of which each processor
// has some at hand, take up to 20 MB.
const bandPx = 256

// bands cuts a rectangle of the grid band by band, where the grid's row is a multiple of bandPx: raster's pieces of
// bent pictures and JPEG's blocks then lie each in one.
func bands(r image.Rectangle, cut func(image.Rectangle) image.Image) iter.Seq[image.Image] {
	return func(yield func(image.Image) bool) {
		for r.Min.Y < r.Max.Y {
			band := r
			band.Max.Y = min(r.Max.Y, r.Min.Y&^(bandPx-1)+bandPx) // down toward the top above row 0 too
			if !yield(cut(band)) {
				return
			}
			r.Min.Y = band.Max.Y
		}
	}
}
