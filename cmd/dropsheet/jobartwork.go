package main

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"dropsheet/tile/artwork"
)

// openArtwork decodes the part that is printed of the artwork of a job that lies in folder: the file that
// moved names, or where the job says when that is empty. It must be the very file that the job was made from.
func openArtwork(j job, folder, moved string, maxPixels int) (*artwork.Picture, error) {
	path := artworkPath(j, folder, moved)
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

// artworkPath is where the artwork of a job that lies in folder is looked for.
func artworkPath(j job, folder, moved string) string {
	if moved != "" {
		return moved
	}
	path := filepath.FromSlash(j.Artwork.File)
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(folder, path)
}
