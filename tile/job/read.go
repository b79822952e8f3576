package job

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/artwork"
	"dropsheet/tile/hint"
	"dropsheet/tile/job/place"
	"dropsheet/tile/readfile"
)

// Names tells whether a path names a job, by its folder or its file, and not a picture: it is a folder, or is called
// something.json. What is piped in is a picture, whatever folder may be called so.
func Names(path string) bool {
	if path == StandardInput {
		return false
	}
	if strings.EqualFold(filepath.Ext(path), filepath.Ext(place.JobFile)) {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// Read reads a job file, named itself or by its folder.
func Read(path string) (Job, error) {
	given := path
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		path = filepath.Join(path, place.JobFile)
	}
	text, err := readfile.All(path, place.MostJobBytes)
	if errors.As(err, new(*readfile.NotRegularError)) {
		return Job{}, fmt.Errorf("job %q is a folder, a device or a pipe\nhint: name a job.json or the folder that holds it",
			path)
	}
	if errors.Is(err, fs.ErrNotExist) && path != given {
		return Job{}, fmt.Errorf("folder %q holds no job.json\n"+
			"hint: name one that make wrote, or a picture in place of the folder",
			given)
	}
	if err != nil {
		return Job{}, fmt.Errorf("job %q can't be read: %w\nhint: name a job.json or the folder that holds it", path,
			place.Plainly(err))
	}
	j, err := decode(text)
	if err != nil {
		return Job{}, fmt.Errorf("job %q: %w", path, err)
	}
	j.read = source{given, path, sha256.Sum256(text)}
	return j, nil
}

// Folder is where the job that was read lies.
func (j Job) Folder() string { return filepath.Dir(j.read.path) }

// decode reads a job and checks that it holds together.
func decode(text []byte) (Job, error) {
	if len(text) > place.MostJobBytes {
		return Job{}, fmt.Errorf("over %d bytes is no job file\nhint: name the job.json that make wrote", place.MostJobBytes)
	}
	var version struct {
		Version *int `json:"dropsheet"`
	}
	if err := json.Unmarshal(text, &version); err != nil || version.Version == nil {
		return Job{}, errors.New("this is no job file\nhint: name the job.json that make wrote")
	}
	if *version.Version < oldestVersion || *version.Version > Version {
		return Job{}, fmt.Errorf("its format is version %d and this program reads versions %d and %d\n"+
			"hint: use the dropsheet "+
			"that made it, or make the job again", *version.Version, oldestVersion, Version)
	}
	var j Job
	decoder := json.NewDecoder(bytes.NewReader(text))
	if err := decoder.Decode(&j); err != nil {
		return Job{}, fmt.Errorf("it does not read as a job (%w)\nhint: take the job.json as make wrote it", err)
	}
	if j.Version < Version { // which had no place for these
		j.Artwork.Absolute = ""
		j.Asked, j.Artwork.Copy, j.Shooting, j.Shot = nil, "", layout.Shooting{}, report.Shot{}
	}
	if err := j.holdsTogether(); err != nil {
		return Job{}, fmt.Errorf("it does not hold together (%w)\nhint: take the job.json as make wrote it",
			hint.Off(err))
	}
	j.Name, j.CheckCode = Printable(j.Name), Printable(j.CheckCode)
	return j, nil
}

// holdsTogether looks at what the plan itself does not know.
func (j Job) holdsTogether() error {
	if err := j.Plan.Check(); err != nil {
		return err
	}
	if strings.ContainsFunc(j.Name+j.CheckCode, unicode.IsControl) {
		return errors.New("its name or check code has characters that can't be printed")
	}
	if err := j.Asked.check(); err != nil {
		return fmt.Errorf("its words: %w", err)
	}
	if j.Artwork.Copy != "" && !place.IsCopyName(j.Artwork.Copy) {
		return fmt.Errorf("%q is not what an artwork's copy is called", j.Artwork.Copy)
	}
	if _, ok := j.Print.TransparentOn.Colour(); j.Print.TransparentOn != "" && !ok {
		return fmt.Errorf("%q is no colour for transparent parts to lie on", string(j.Print.TransparentOn))
	}
	g := j.Print.Grid
	if sum, err := hex.DecodeString(j.Artwork.SHA256); err != nil || len(sum) != sha256.Size {
		return errors.New("the artwork's hash is not one")
	}
	if j.Artwork.Page < 0 {
		return fmt.Errorf("a page %d of its artwork can't be", j.Artwork.Page)
	}
	part, whole := j.Print.Part, j.Artwork
	if part.X < 0 || part.Y < 0 || part.WidthPx < 1 || part.HeightPx < 1 || part.X > whole.WidthPx-part.WidthPx ||
		part.Y > whole.HeightPx-part.HeightPx {
		return errors.New("the part of the artwork that is printed is not in it")
	}
	if g.WidthPx < 1 || g.HeightPx < 1 || j.Picture.Plain() && (g.WidthPx > part.WidthPx || g.HeightPx > part.HeightPx) {
		return errors.New("the grid has pixels that the artwork has not")
	}
	picture := j.PictureOnBoard()
	if most := 2 * units.PerInch(MaxPPI).PixelsPerMM(); !(float64(g.WidthPx) <= most*picture.WidthMM &&
		float64(g.HeightPx) <= most*picture.HeightMM) {
		return errors.New("the grid is finer than can be printed")
	}
	return j.checkSheets()
}

// checkSheets refuses sheets that would take more memory than a hostile job may ask for.
func (j Job) checkSheets() error {
	for _, s := range j.Sheets {
		if px := j.Print.Grid.Pixels(j.PictureOnBoard(),
			j.Backdrop.Printed(s)); float64(px.Dx())*float64(px.Dy()) > artwork.DefaultMaxPixels {
			return fmt.Errorf("sheet %s of %d x %d pixels has more than %d", s.Name, px.Dx(), px.Dy(),
				int(artwork.DefaultMaxPixels))
		}
	}
	return nil
}
