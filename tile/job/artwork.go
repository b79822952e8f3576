package job

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
)

// MostPixels is as far as the bound on an artwork can be raised: more than any memory holds.
const MostPixels = 1e11

// MostBytes is as far as the bound on an artwork's memory can be raised.
const MostBytes = 1e12

// Found is the artwork of a job that was read, as it was found.
type Found struct {
	*artwork.Picture        // the part that is printed
	Path             string // of the file that was read
	// Instead says why it is not the file that make was given; nil where it is.
	Instead error
}

// OpenArtwork decodes the part that is printed of the artwork of a job that was read: of the file that moved names, or,
// when that is empty, of the one that make was given, else of its copy in the job's folder, or of a file of its name
// beside the job. Whichever it is, it must be the very file that the job was made from, within limits.
func (j Job) OpenArtwork(moved string, limits artwork.Limits) (Found, error) {
	var was, errCopy error
	for i, path := range j.places(moved) {
		art, err := j.openAt(path, limits)
		switch {
		case err == nil:
			return Found{art, path, was}, nil
		case i == 0:
			was = err
		case j.isCopy(path):
			errCopy = err
		}
	}
	err := was
	if errCopy != nil {
		err = fmt.Errorf("%w\nand its copy: %w", was, errCopy)
	}
	if errors.Is(err, fs.ErrNotExist) {
		err = fmt.Errorf("%w\nhint: if the artwork has moved, name it with --artwork", err)
	}
	return Found{}, err
}

// FindArtwork is where the artwork of a job that was read is to be had now, byte for byte.
func (j Job) FindArtwork() (path string, err error) {
	for _, path := range j.places("") {
		if sum, err := fileSum(path); err == nil && sum == j.Artwork.SHA256 {
			return path, nil
		}
	}
	return "", fmt.Errorf("the artwork that the job was made from is neither at %q nor in the job's folder\n"+
		"hint: name it, or another, with --artwork", j.ArtworkPath(""))
}

// places are where the artwork of a job that was read is looked for, one after the other: at moved alone, or where it
// was as seen from the job, at its copy, where it was as seen from anywhere, and in the job's folder and beside that.
func (j Job) places(moved string) []string {
	if moved != "" {
		return []string{moved}
	}
	all := []string{j.ArtworkPath("")}
	if j.Artwork.Copy != "" {
		all = append(all, j.copyPath())
	}
	if j.Artwork.Absolute != "" {
		all = append(all, filepath.FromSlash(j.Artwork.Absolute))
	}
	name := filepath.Base(filepath.FromSlash(j.Artwork.File))
	return append(all, filepath.Join(j.realFolder(), name), filepath.Join(filepath.Dir(j.realFolder()), name))
}

// isCopy tells whether a path is that of the artwork's copy.
func (j Job) isCopy(path string) bool { return j.Artwork.Copy != "" && path == j.copyPath() }

// openAt is OpenArtwork of the file at path.
func (j Job) openAt(path string, limits artwork.Limits) (*artwork.Picture, error) {
	art, err := Extent{j.Artwork.WidthPx, j.Artwork.HeightPx, j.Artwork.Page}.read(path, path, j.Print.reading(limits))
	if err != nil {
		return nil, err
	}
	if got := hex.EncodeToString(art.SHA256[:]); got != j.Artwork.SHA256 {
		return nil, fmt.Errorf("artwork %q is not the one this job was made from (its SHA-256 starts %.8s, the job's "+
			"%.8s)\nhint: name the unchanged file with --artwork, or make the whole job again",
			path, got, j.Artwork.SHA256)
	}
	if w, h := art.Size(); w != j.Artwork.WidthPx || h != j.Artwork.HeightPx {
		return nil, fmt.Errorf("the job says that artwork %q is %dx%d pixels, and it is %dx%d\nhint: take the job.json as "+
			"make wrote it", path, j.Artwork.WidthPx, j.Artwork.HeightPx, w, h)
	}
	return art.Crop(j.Print.Part.rectangle())
}

// Warning says that the artwork is not what it was where that matters: someone may have changed it, and look for the
// change. One that is gone is not missed.
func (f Found) Warning() []string {
	if f.Instead == nil || errors.Is(f.Instead, fs.ErrNotExist) {
		return nil
	}
	return []string{"the artwork is not what it was when the job was made, whose copy of it is used: make the job " +
		"again, with --artwork, to print it as it is now"}
}

// copyPath is where the artwork's copy lies.
func (j Job) copyPath() string { return filepath.Join(j.Folder(), j.Artwork.Copy) }

// realFolder is the job's folder whatever links its path goes by, so that the way up from it is the right one.
func (j Job) realFolder() string { return filepath.Dir(place.Real(j.read.path)) }

// ArtworkPath is where the artwork of a job that was read is looked for: at moved, or where the job says.
func (j Job) ArtworkPath(moved string) string {
	if moved != "" {
		return moved
	}
	path := filepath.FromSlash(j.Artwork.File)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(j.realFolder(), path)
}

// hintLimits adds to the error of a picture that is over the bound what would let it in.
func hintLimits(err error) error {
	var tooMuch *artwork.TooMuchMemoryError
	if errors.As(err, &tooMuch) {
		if tooMuch.Bytes > MostBytes {
			return fmt.Errorf("%w\nhint: --max-memory goes up to %d GB, which is not enough here", err, int(MostBytes/1e9))
		}
		return fmt.Errorf("%w\nhint: if there is so much, --max-memory %s lets it in", err,
			strings.ReplaceAll(artwork.InMB(tooMuch.Bytes), " ", ""))
	}
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
