package job

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"dropsheet/tile/artwork"
)

// MostPixels is as far as the bound on an artwork can be raised: more than any memory holds.
const MostPixels = 1e11

// OpenArtwork decodes the part that is printed of the artwork of a job that was read: the file that moved names, or
// where the job says when that is empty. It must be the very file that the job was made from, of maxPixels at most.
func (j Job) OpenArtwork(moved string, maxPixels int) (*artwork.Picture, error) {
	path := j.ArtworkPath(moved)
	art, err := artwork.Open(path, maxPixels)
	if err != nil {
		if errors.Is(err, fs.ErrNotExist) {
			err = fmt.Errorf("%w\nhint: if the artwork has moved, name it with --artwork", err)
		}
		return nil, hintMaxPixels(err)
	}
	if got := hex.EncodeToString(art.SHA256[:]); got != j.Artwork.SHA256 {
		return nil, fmt.Errorf("artwork %q is not the one this job was made from (its SHA-256 starts %.8s, the job's "+
			"%.8s): name the unchanged file with --artwork, or make the whole job again",
			path, got, j.Artwork.SHA256)
	}
	if w, h := art.Size(); w != j.Artwork.WidthPx || h != j.Artwork.HeightPx {
		return nil, fmt.Errorf("the job says that artwork %q is %dx%d pixels, and it is %dx%d: take the job.json as "+
			"make wrote it", path, j.Artwork.WidthPx, j.Artwork.HeightPx, w, h)
	}
	return art.Crop(j.Print.Part.rectangle())
}

// ArtworkPath is where the artwork of a job that was read is looked for: at moved, or where the job says.
func (j Job) ArtworkPath(moved string) string {
	if moved != "" {
		return moved
	}
	path := filepath.FromSlash(j.Artwork.File)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(j.Folder(), path)
}

// hintMaxPixels adds to the error of a picture that is over the bound what would let it in.
func hintMaxPixels(err error) error {
	var tooMany *artwork.TooManyPixelsError
	if !errors.As(err, &tooMany) {
		return err
	}
	if float64(tooMany.WidthPx)*float64(tooMany.HeightPx) > MostPixels {
		return fmt.Errorf("%w\nhint: --max-pixels goes up to %d, which is not enough here", err, int(MostPixels))
	}
	return fmt.Errorf("%w\nhint: if there is memory for it, --max-pixels %d lets it in", err,
		tooMany.WidthPx*tooMany.HeightPx)
}
