package job

import (
	"encoding/hex"
	"encoding/json"
	"image"
	"io"
	"maps"
	"path/filepath"
	"strings"
	"unicode"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
	"dropsheet/tile/raster"
	"dropsheet/tile/sheet"
)

// Version is the version of the job file that this program writes. It reads those from oldestVersion on: version 3 has
// no words asked, no shot and no copy of the artwork.
const (
	Version       = 4
	oldestVersion = 3
)

// Job is a job file: enough to make every sheet again as it was.
type Job struct {
	Version   int       `json:"dropsheet"`
	Name      string    `json:"name"`
	CheckCode string    `json:"check_code"` // printed on every sheet: sheets of one code belong together
	Asked     Asked     `json:"asked"`
	Artwork   Artwork   `json:"artwork"`
	Print     Print     `json:"print"`
	Placement Placement `json:"seam_placement"`
	// LandingMM is how far past a seam the landing ticks stand on the sheets as make wrote them; 0 in a job of the time
	// when a line was printed at the seam itself. Marks have no part in the check code: none is seen when all is
	// pasted, and a sheet fits the others whichever marks it carries.
	LandingMM float64 `json:"landing_ticks_mm,omitempty"`
	// Files are the SHA-256 of the files that were made with this one, by name.
	Files map[string]string `json:"files"`
	layout.Plan
	// Shot is what decides the shot, in short. Nothing reads it back: it follows from the plan.
	Shot report.Shot `json:"shot"`

	read source // of a job that was read
}

// Artwork names the artwork and tells it from any other.
type Artwork struct {
	File string `json:"file"`           // from the job's folder, with forward slashes
	Copy string `json:"copy,omitempty"` // its copy's name in the job's folder
	// Absolute is where it was on the machine that made the job, where no copy was kept.
	Absolute string `json:"absolute,omitempty"`
	SHA256   string `json:"sha256"`
	Page     int    `json:"page,omitempty"` // of a PDF, drawn on as many pixels; 0 for a picture
	WidthPx  int    `json:"width_px"`       // upright
	HeightPx int    `json:"height_px"`
}

// Print is how the pixels go on paper.
type Print struct {
	Grid     raster.Grid `json:"grid"`         // the picture as one raster
	Part     PixelRect   `json:"artwork_part"` // of the artwork, upright, that is the picture
	Lossless bool        `json:"lossless"`
	// InksByProfile tells that the artwork was of inks, and sRGB was made of it by its own profile. In jobs made before
	// that could be, each ink takes its share of one of red, green and blue.
	InksByProfile bool `json:"inks_by_profile,omitempty"`
	// TransparentOn is the colour that the artwork's transparent parts are laid on; empty for white.
	TransparentOn layout.Surround `json:"transparent_on,omitempty"`
	// Dithered tells that the artwork's samples of 16 bits were dithered to 8. In jobs made before that could be they
	// were rounded.
	Dithered bool `json:"dithered,omitempty"`
}

// reading is how the job's artwork is read, so that it prints as it did.
func (p Print) reading(limits artwork.Limits) artwork.Reading {
	r := artwork.Reading{Limits: limits, PlainInks: !p.InksByProfile, Rounded: !p.Dithered}
	r.Under, _ = p.TransparentOn.Colour()
	return r
}

// PixelRect is a rectangle of whole pixels.
type PixelRect struct {
	X        int `json:"x"`
	Y        int `json:"y"`
	WidthPx  int `json:"width_px"`
	HeightPx int `json:"height_px"`
}

func newPixelRect(r image.Rectangle) PixelRect { return PixelRect{r.Min.X, r.Min.Y, r.Dx(), r.Dy()} }

func (r PixelRect) rectangle() image.Rectangle {
	return image.Rect(r.X, r.Y, r.X+r.WidthPx, r.Y+r.HeightPx)
}

// newJob puts a job together, of an order whose folder comes to stand there.
func newJob(p layout.Plan, art *artwork.Picture, page int, o Order, folder string, print Print) (Job, error) {
	original := o.original()
	file, absolute, err := fromFolder(folder, original)
	if err != nil {
		return Job{}, err
	}
	w, h := art.Size()
	j := Job{
		Version: Version,
		Name:    Printable(o.name()),
		Asked:   Asked{},
		Artwork: Artwork{File: file, SHA256: hex.EncodeToString(art.SHA256[:]), Page: page, WidthPx: w, HeightPx: h},
		Print:   print,
		Plan:    p, LandingMM: sheet.LandingMM,
	}
	if o.LeaveArtwork {
		j.Artwork.Absolute = absolute
	} else {
		j.Artwork.Copy = place.CopyName(o.Artwork)
		if ofThisRun(original) {
			j.Artwork.File = j.Artwork.Copy // all that there will be of it
		}
	}
	maps.Copy(j.Asked, o.Asked)
	j.CheckCode, err = j.code()
	return j, err
}

// Unprintable tells whether a character does something to a line in place of standing in it: a control, a line's or
// paragraph's end (Unicode's classes Zl and Zp), or one that formats and is not seen (Cf), such as a turn of the
// direction of writing or U+FEFF.
func Unprintable(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Cf)
}

// Printable is a name with a question mark for what is not printable.
func Printable(name string) string {
	return strings.Map(func(r rune) rune {
		if Unprintable(r) {
			return '?'
		}
		return r
	}, name)
}

// fromFolder is a path as seen from a folder, so that both can move together, and as seen from anywhere. Links on the
// way to either are followed: by a link, the way up is another.
func fromFolder(folder, path string) (relative, absolute string, err error) {
	from, err := filepath.Abs(folder)
	if err != nil {
		return "", "", err
	}
	to, err := filepath.Abs(path)
	if err != nil {
		return "", "", err
	}
	to = filepath.Join(place.Real(filepath.Dir(to)), filepath.Base(to))
	absolute = filepath.ToSlash(to)
	relative, err = filepath.Rel(place.Real(from), to)
	if err != nil {
		return absolute, absolute, nil // on another drive there is no way from one to the other
	}
	return filepath.ToSlash(relative), absolute, nil
}

// Encode writes the job as a file holds it.
func (j Job) Encode(w io.Writer) error {
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	return encoder.Encode(j)
}
