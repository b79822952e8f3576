package job

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/artwork"
	"dropsheet/tile/guide"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf"
	"dropsheet/tile/readfile"
)

// Finding is what was found of one thing: what agrees, or why it does not and what to do.
type Finding struct {
	What, Agrees string
	Differs      error
}

// Check looks whether a job, named itself or by its folder, can still be printed as it was made; its artwork may
// have moved, and is within limits. It is an error when there is nothing to look at.
func Check(path, moved string, limits artwork.Limits) ([]Finding, error) {
	folder := path
	info, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("job %q can't be read: %w\nhint: name a job.json or the folder that holds it", path,
			place.Plainly(err))
	}
	if !info.IsDir() {
		folder = filepath.Dir(path)
	}
	j, err := Read(path)
	names := j.made()
	if err == nil { // of whatever name
		names[slices.Index(names, place.JobFile)] = filepath.Base(j.read.path)
	}
	missing := missingOf(folder, names)
	if err != nil && len(missing) == len(names) {
		return nil, err // no folder of a job, nor what is left of one
	}
	findings := []Finding{checkFolder(names, missing)}
	if err != nil {
		return append(findings, Finding{"job", "", err}), nil
	}
	format := fmt.Sprintf("version %d, which this program writes", j.Version)
	if j.Version < Version {
		format = fmt.Sprintf("version %d, which this program reads; it writes version %d, with the artwork's copy", j.Version,
			Version)
	}
	return append(findings,
		Finding{What: "format", Agrees: format},
		Finding{What: "sheets", Agrees: fmt.Sprintf("%d, each within its paper, %d across and %d down", len(j.Sheets),
			j.Backdrop.Columns, j.Backdrop.Rows)},
		Finding{"check code", j.CheckCode + ", as the job's figures give it", j.Changed()},
		j.checkFiles(folder), j.checkPages(folder), j.checkArtwork(moved, limits)), nil
}

// made are the files of the job's folder, as its program wrote them.
func (j Job) made() []string {
	return slices.DeleteFunc(j.FileNames(), func(name string) bool {
		_, there := j.Files[name]
		return (name == place.CloseUpFile || name == place.RaysFile) && !there
	})
}

// FileNames are what its folder holds when it is made.
func (j Job) FileNames() []string { return place.Files(j.Artwork.Copy, guide.HasRays(j.Plan)) }

// missingOf are the files that a folder does not hold, or empty.
func missingOf(folder string, files []string) []string {
	return slices.DeleteFunc(slices.Clone(files), func(name string) bool {
		info, err := os.Stat(filepath.Join(folder, name))
		return err == nil && info.Mode().IsRegular() && info.Size() > 0
	})
}

// checkFolder tells which of the files that make wrote are missing.
func checkFolder(files, missing []string) Finding {
	f := Finding{What: "folder", Agrees: strings.Join(files, ", ") + " are there"}
	switch {
	case slices.Contains(missing, place.JobFile):
		f.Differs = fmt.Errorf("%s missing or empty: nothing can be reprinted without job.json\nhint: restore it, or make "+
			"the job again, into another folder (--out)", strings.Join(missing, ", "))
	case len(missing) > 0:
		f.Differs = fmt.Errorf("%s missing or empty\nhint: sheets come again from job.json alone (dropsheet reprint), "+
			"the rest by making the job again, into another folder (--out)", strings.Join(missing, ", "))
	}
	return f
}

// checkFiles compares the files with those that were made.
func (j Job) checkFiles(folder string) Finding {
	f := Finding{What: "files", Agrees: "as they were made, by their SHA-256"}
	var differ []string
	for _, name := range j.made() {
		if name == place.JobFile || len(missingOf(folder, []string{name})) > 0 { // told of the folder
			continue
		}
		if sum, err := fileSum(filepath.Join(folder, name)); err != nil || sum != j.Files[name] {
			differ = append(differ, name)
		}
	}
	if len(differ) > 0 {
		f.Differs = fmt.Errorf("%s not as this job made them\nhint: sheets come again from job.json (dropsheet reprint "+
			"%s all); pictures may have been replaced by trials, which harms nothing", strings.Join(differ, ", "),
			report.Typed(folder))
	}
	return f
}

// checkPages counts the pages of the sheets' file.
func (j Job) checkPages(folder string) Finding {
	f := Finding{What: "pages", Agrees: fmt.Sprintf("%d in sheets.pdf, one for each sheet", len(j.Sheets))}
	const again = "make it again with dropsheet reprint %s all, which writes it under another name"
	switch pages, err := countPages(filepath.Join(folder, "sheets.pdf")); {
	case err != nil:
		f.Differs = fmt.Errorf("sheets.pdf can't be counted (%w)\nhint: "+again, err, report.Typed(folder))
	case pages != len(j.Sheets):
		f.Differs = fmt.Errorf("sheets.pdf has %d pages, and the job %d sheets\nhint: "+again, pages, len(j.Sheets),
			report.Typed(folder))
	}
	return f
}

func countPages(path string) (int, error) {
	file, info, err := readfile.Open(path)
	if err != nil {
		return 0, err
	}
	defer file.Close()
	return pdf.CountPages(file, info.Size())
}

// checkArtwork looks whether the artwork is the one that the job was made from, and says which file is.
func (j Job) checkArtwork(moved string, limits artwork.Limits) Finding {
	found, err := j.OpenArtwork(moved, limits)
	file := Printable(filepath.Base(j.ArtworkPath(moved)))
	is := func(file, where string) string {
		return fmt.Sprintf("%s%s, %d x %d pixels, of the job's SHA-256", file, where, j.Artwork.WidthPx, j.Artwork.HeightPx)
	}
	f := Finding{What: "artwork", Agrees: is(file, " where it was"), Differs: err}
	switch {
	case moved != "":
		f.Agrees = is(file, "")
	case found.Instead != nil && !j.isCopy(found.Path):
		f.Agrees = is(Printable(found.Path), "") + "; it is not where it was"
	case errors.Is(found.Instead, fs.ErrNotExist):
		f.Agrees = is(j.Artwork.Copy, " in the job's folder") + "; " + file + ", of which it is a copy, is not where it was"
	case found.Instead != nil:
		f.Agrees = is(j.Artwork.Copy, " in the job's folder") + "; " + file + ", of which it is a copy, is not what it was"
	}
	return f
}
