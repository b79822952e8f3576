package job

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strings"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
)

// keepArtwork copies the artwork into the unfinished folder, as it is, unless it shall stay where it is. The copy is
// what is then decoded, so that it and the sheets are of one picture, whatever becomes of the file meanwhile.
func (m *making) keepArtwork(ctx context.Context) error {
	if m.LeaveArtwork {
		if ofThisRun(m.Artwork) {
			return m.mustKeep()
		}
		return nil
	}
	file, err := artwork.OpenFile(m.at)
	if err != nil {
		return err
	}
	defer file.Close()
	return m.write(place.CopyName(m.Artwork), func(w io.Writer) error {
		for ctx.Err() == nil {
			// From file to file: the system copies it, and shares its blocks where the file system can.
			_, err := io.CopyN(w, file, copiedAtOnce)
			if errors.Is(err, io.EOF) {
				return nil
			}
			if err != nil {
				return place.Plainly(err)
			}
		}
		return ctx.Err()
	})
}

// copiedAtOnce is how many bytes of the artwork are copied before it is asked whether to stop.
const copiedAtOnce = 64 << 20

// ofCopy tells whether the artwork is the copy that the job has which it is of.
func (o Order) ofCopy() bool {
	return o.From != nil && o.From.Artwork.Copy != "" && o.Artwork == o.From.copyPath()
}

// outside is the artwork's file if it must not lie in the folder that is written: a job's own copy of it may, which is
// copied before it goes.
func (o Order) outside() string {
	if o.ofCopy() && !o.LeaveArtwork {
		return ""
	}
	return o.Artwork
}

// original is the file that the job remembers. Of a job that has a copy it is the one that this is a copy of, unless
// there shall be no other copy.
func (o Order) original() string {
	if o.From == nil || o.LeaveArtwork {
		return o.Artwork
	}
	return o.From.ArtworkPath("")
}

// name is what the job is called: by its artwork.
func (o Order) name() string {
	if o.From != nil {
		return o.From.Name
	}
	if o.Artwork == StandardInput {
		return "artwork"
	}
	return strings.TrimSuffix(filepath.Base(o.Artwork), filepath.Ext(o.Artwork))
}

// ofThisRun tells whether a path names what this run has open, such as its standard input, and will be something else
// to the next.
func ofThisRun(path string) bool {
	if comesOnce(path) {
		return true
	}
	path = filepath.ToSlash(filepath.Clean(path))
	return path == "/dev/stdin" || strings.HasPrefix(path, "/dev/fd/") || strings.HasPrefix(path, "/proc/")
}

// source is the file that is decoded.
func (m *making) source() string {
	if m.LeaveArtwork {
		return m.Artwork
	}
	return m.folder.File(place.CopyName(m.Artwork))
}
