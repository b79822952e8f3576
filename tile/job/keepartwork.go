package job

import (
	"context"
	"io"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
)

// keepArtwork copies the artwork into the unfinished folder, as it is. The copy is what is then decoded, so that it and
// the sheets are of one picture, whatever becomes of the file meanwhile.
func (m *making) keepArtwork(ctx context.Context) error {
	file, err := artwork.OpenFile(m.Artwork)
	if err != nil {
		return err
	}
	defer file.Close()
	return m.write(place.CopyName(m.Artwork), func(w io.Writer) error {
		_, err := io.Copy(w, stoppable{ctx, file})
		return place.Plainly(err)
	})
}

// outside is the artwork's file if it must not lie in the folder that is written: a job's own copy of it may, which is
// copied before it goes.
func (o Order) outside() string {
	if o.From != nil && o.Artwork == o.From.copyPath() {
		return ""
	}
	return o.Artwork
}

// copyPath is where the artwork's copy lies until the folder is finished.
func (m *making) copyPath() string { return m.folder.File(place.CopyName(m.Artwork)) }

// stoppable is a reader that ends with its context.
type stoppable struct {
	ctx context.Context
	io.Reader
}

func (r stoppable) Read(p []byte) (int, error) {
	if err := r.ctx.Err(); err != nil {
		return 0, err
	}
	return r.Reader.Read(p)
}
