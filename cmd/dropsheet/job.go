package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"image"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
	"dropsheet/tile/sheet"
)

// formatVersion is the version of the job file that this program writes and reads.
const formatVersion = 3

// maxJobBytes bounds a job file: 100,000 sheets take under 30 MB.
const maxJobBytes = 64 << 20

// job is a job file: enough to make every sheet again as it was.
type job struct {
	Version   int        `json:"dropsheet"`
	Name      string     `json:"name"`
	CheckCode string     `json:"check_code"` // printed on every sheet: sheets of one code belong together
	Artwork   artworkRef `json:"artwork"`
	Print     printing   `json:"print"`
	Placement placement  `json:"seam_placement"`
	// Files are the SHA-256 of the files that were made with this one, by name.
	Files map[string]string `json:"files"`
	layout.Plan

	read jobText // of a job that was read
}

// artworkRef names the artwork and tells it from any other.
type artworkRef struct {
	File     string `json:"file"` // from the job's folder, with forward slashes
	SHA256   string `json:"sha256"`
	WidthPx  int    `json:"width_px"` // upright
	HeightPx int    `json:"height_px"`
}

// printing is how the pixels go on paper.
type printing struct {
	Grid     raster.Grid `json:"grid"`         // the picture as one raster
	Part     pixelRect   `json:"artwork_part"` // of the artwork, upright, that is the picture
	Lossless bool        `json:"lossless"`
}

// pixelRect is a rectangle of whole pixels.
type pixelRect struct {
	X        int `json:"x"`
	Y        int `json:"y"`
	WidthPx  int `json:"width_px"`
	HeightPx int `json:"height_px"`
}

func newPixelRect(r image.Rectangle) pixelRect { return pixelRect{r.Min.X, r.Min.Y, r.Dx(), r.Dy()} }

func (r pixelRect) rectangle() image.Rectangle {
	return image.Rect(r.X, r.Y, r.X+r.WidthPx, r.Y+r.HeightPx)
}

// newGrid chooses the grid for a plan's picture, which the artwork gives that many pixels.
func newGrid(p layout.Plan, hung *layout.Hanging, widthPx, heightPx int, finest units.Resolution) raster.Grid {
	if p.Picture.Plain() {
		return raster.NewGrid(p.PictureOnBoard(), widthPx, heightPx, finest)
	}
	return raster.NewBentGrid(hung, p.PictureOnBoard(), widthPx, heightPx, finest)
}

// newJob puts a job together.
func newJob(p layout.Plan, art *artwork.Picture, artPath, folder string, print printing) (job, error) {
	file, err := fromFolder(folder, artPath)
	if err != nil {
		return job{}, err
	}
	w, h := art.Size()
	j := job{
		Version: formatVersion,
		Name:    printable(strings.TrimSuffix(filepath.Base(artPath), filepath.Ext(artPath))),
		Artwork: artworkRef{file, hex.EncodeToString(art.SHA256[:]), w, h},
		Print:   print,
		Plan:    p,
	}
	j.CheckCode, err = j.code()
	return j, err
}

// code is the job's check code, from what decides how its sheets come out.
func (j job) code() (string, error) {
	// The file's place is left out: the same job made elsewhere has the same code.
	text, err := json.Marshal(struct {
		SHA256 string
		Print  printing
		Plan   layout.Plan
	}{j.Artwork.SHA256, j.Print, j.Plan})
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256(text)
	return strings.ToUpper(hex.EncodeToString(sum[:3])), nil
}

// printable puts a question mark for what would move a terminal's cursor or break a label's line.
func printable(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '?'
		}
		return r
	}, name)
}

// nameWarning says what becomes of a name whose letters the fonts of sheets and guide lack.
func (j job) nameWarning() []string {
	printed, full := pdf.Printed(j.Name)
	if full {
		return nil
	}
	return []string{fmt.Sprintf("the name %q can't be printed in full: sheets and guide show it as %q, and the check "+
		"code %s still tells these sheets from others", j.Name, printed, j.CheckCode)}
}

// fromFolder is a path as seen from a folder, so that both can move together.
func fromFolder(folder, path string) (string, error) {
	from, err := filepath.Abs(folder)
	if err != nil {
		return "", err
	}
	to, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	relative, err := filepath.Rel(from, to)
	if err != nil {
		return filepath.ToSlash(to), nil // on another drive there is no way from one to the other
	}
	return filepath.ToSlash(relative), nil
}

// encode writes the job as a file holds it.
func (j job) encode(w io.Writer) error { return writeJSON(w, j) }

// readJob reads a job file, named itself or by its folder, and returns the folder too.
func readJob(path string) (j job, folder string, err error) {
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		path = filepath.Join(path, place.JobFile)
		info, err = os.Stat(path)
	}
	// Looked at before it is opened, because opening a pipe would wait for its writer.
	if err == nil && !info.Mode().IsRegular() {
		return job{}, "", fmt.Errorf("job %q is a folder, a device or a pipe; name a job.json or the folder that holds it",
			path)
	}
	f, err := os.Open(path)
	if err != nil {
		return job{}, "", fmt.Errorf("job %q can't be read: %w; name a job.json or the folder that holds it", path,
			place.Plainly(err))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxJobBytes+1))
	if err != nil {
		return job{}, "", fmt.Errorf("job %q can't be read: %w", path, place.Plainly(err))
	}
	if j, err = decodeJob(text); err != nil {
		return job{}, "", fmt.Errorf("job %q: %w", path, err)
	}
	j.read = jobText{path, sha256.Sum256(text)}
	return j, filepath.Dir(path), nil
}

// decodeJob reads a job and checks that it holds together.
func decodeJob(text []byte) (job, error) {
	if len(text) > maxJobBytes {
		return job{}, fmt.Errorf("over %d bytes is no job file: name the job.json that make wrote", maxJobBytes)
	}
	var version struct {
		Version *int `json:"dropsheet"`
	}
	if err := json.Unmarshal(text, &version); err != nil || version.Version == nil {
		return job{}, errors.New("this is no job file: name the job.json that make wrote")
	}
	if *version.Version != formatVersion {
		return job{}, fmt.Errorf("its format is version %d and this program reads version %d: use the dropsheet that "+
			"made it, or make the job again", *version.Version, formatVersion)
	}
	var j job
	decoder := json.NewDecoder(bytes.NewReader(text))
	if err := decoder.Decode(&j); err != nil {
		return job{}, fmt.Errorf("it does not read as a job (%w): take the job.json as make wrote it", err)
	}
	if err := j.check(); err != nil {
		return job{}, fmt.Errorf("it does not hold together (%w): take the job.json as make wrote it", err)
	}
	return j, nil
}

// check looks at what the plan itself does not know.
func (j job) check() error {
	if err := j.Plan.Check(); err != nil {
		return err
	}
	if j.Name != printable(j.Name) || j.CheckCode != printable(j.CheckCode) {
		return errors.New("its name or check code has characters that can't be printed")
	}
	g := j.Print.Grid
	if sum, err := hex.DecodeString(j.Artwork.SHA256); err != nil || len(sum) != sha256.Size {
		return errors.New("the artwork's hash is not one")
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
	if most := 2 * units.PerInch(maxPPI).PixelsPerMM(); !(float64(g.WidthPx) <= most*picture.WidthMM &&
		float64(g.HeightPx) <= most*picture.HeightMM) {
		return errors.New("the grid is finer than can be printed")
	}
	return j.checkSheets()
}

// checkSheets refuses sheets that would take more memory than a hostile job may ask for.
func (j job) checkSheets() error {
	for _, s := range j.Sheets {
		if px := j.Print.Grid.Pixels(j.PictureOnBoard(),
			j.Backdrop.Printed(s)); float64(px.Dx())*float64(px.Dy()) > artwork.DefaultMaxPixels {
			return fmt.Errorf("sheet %s of %d x %d pixels has more than %d", s.Name, px.Dx(), px.Dy(),
				int(artwork.DefaultMaxPixels))
		}
	}
	return nil
}

// profileWarning says why an artwork's colour profile can't go into the sheets, or nothing when it can or
// there is none. One of grey doesn't suit where a coloured surround makes the sheets of grey artwork coloured.
func profileWarning(icc []byte, gray bool) string {
	if icc == nil {
		return ""
	}
	if err := colour.CheckProfile(icc, gray); err != nil {
		return fmt.Sprintf("the artwork's colour profile is left out, and its levels taken for sRGB's: %v", err)
	}
	return ""
}

// sheetJob is the job as the sheets need it, and what to warn of. art is the part of the artwork that is printed.
func (j job) sheetJob(art *artwork.Picture, hung *layout.Hanging) (sheets sheet.Job, warnings []string) {
	on := j.PictureOnBoard()
	source := raster.NewSource(art, j.Drop.Reverses.Turn(), j.Print.Grid).Surround(j.Backdrop.Surround).Level(j.Level(),
		on).Hang(hung, on)
	warnings = j.nameWarning()
	profile := art.ICC
	if warning := profileWarning(art.ICC, source.Gray()); warning != "" {
		profile, warnings = nil, append(warnings, warning)
	}
	return sheet.Job{
		Label:    sheet.Label{Job: j.Name, Code: j.CheckCode, Of: len(j.Sheets)},
		Plan:     j.Plan,
		Grid:     j.Print.Grid,
		Source:   source,
		Profile:  profile,
		Lossless: j.Print.Lossless,
	}, warnings
}
