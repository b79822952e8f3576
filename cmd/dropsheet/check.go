package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf"
)

var checkCommand = command{
	name: "check", args: "JOB",
	summary: "whether a job can still be printed as it was; writes no file",
	about: `Looks, before a sheet is printed again, whether JOB (a job.json or its folder) is as make left it:
the five files of its folder and their hashes, its format, the sheets, the check code, the pages of
sheets.pdf and the artwork. Says a line of each, and what to do about those that do not agree.
Changes nothing. Exit code 0: all agree; 1: something does not.`,
	example: "dropsheet check harbour-backdrop",
	prepare: func(flags *pflag.FlagSet) action {
		var moved string
		var maxPixels int
		add(flags, &moved, "artwork", "file", "", named, "file that the artwork has moved to (default: where the job says)")
		addMaxPixels(flags, &maxPixels)
		return func(_ context.Context, c console, args []string) error {
			path, err := only("check", aJob, args)
			if err != nil {
				return err
			}
			return checkJob(c.out, path, moved, maxPixels)
		}
	},
}

// finding is what was found of one thing: what agrees, or why it does not and what to do.
type finding struct {
	what, agrees string
	differs      error
}

// checkJob writes what is found and returns an error if anything differs.
func checkJob(w io.Writer, path, moved string, maxPixels int) error {
	folder := path
	info, err := os.Stat(path)
	if err != nil {
		return fmt.Errorf("job %q can't be read: %w; name a job.json or the folder that holds it", path, place.Plainly(err))
	}
	if !info.IsDir() {
		folder = filepath.Dir(path)
	}
	findings := []finding{checkFolder(folder)}
	if j, _, err := readJob(path); err != nil {
		findings = append(findings, finding{"job", "", err})
	} else {
		findings = append(findings,
			finding{what: "format", agrees: fmt.Sprintf("version %d, which this program writes", j.Version)},
			finding{what: "sheets", agrees: fmt.Sprintf("%d, each within its paper, %d across and %d down", len(j.Sheets),
				j.Backdrop.Columns, j.Backdrop.Rows)},
			j.checkCode(), j.checkFiles(folder), j.checkPages(folder), j.checkArtwork(folder, moved, maxPixels))
	}
	differ := 0
	var text strings.Builder
	for _, f := range findings {
		if f.differs != nil {
			differ++
			f.agrees = "DIFFERS: " + strings.ReplaceAll(f.differs.Error(), "\n", "\n"+strings.Repeat(" ", 13))
		}
		fmt.Fprintf(&text, "%-12s %s\n", f.what, f.agrees)
	}
	if _, err := io.WriteString(w, text.String()); err != nil {
		return err
	}
	if differ > 0 {
		return fmt.Errorf("job %q is not as it was made: %d of %d things differ; see each for what to do", path, differ,
			len(findings))
	}
	return nil
}

// checkFolder looks for the files that make wrote.
func checkFolder(folder string) finding {
	f := finding{what: "folder", agrees: strings.Join(place.Files, ", ") + " are there"}
	var missing []string
	for _, name := range place.Files {
		if info, err := os.Stat(filepath.Join(folder, name)); err != nil || !info.Mode().IsRegular() || info.Size() == 0 {
			missing = append(missing, name)
		}
	}
	switch {
	case slices.Contains(missing, place.JobFile):
		f.differs = fmt.Errorf("%s missing or empty: nothing comes again without job.json; put that back, or make the "+
			"job again, into another folder (--out)", strings.Join(missing, ", "))
	case len(missing) > 0:
		f.differs = fmt.Errorf("%s missing or empty: sheets come again from job.json alone (dropsheet reprint), the rest "+
			"by making the job again, into another folder (--out)", strings.Join(missing, ", "))
	}
	return f
}

// checkCode works the check code out again.
func (j job) checkCode() finding {
	f := finding{what: "check code", agrees: j.CheckCode + ", as the job's figures give it"}
	if got, err := j.code(); err != nil || got != j.CheckCode {
		f.differs = errors.Join(err, fmt.Errorf("the job's figures give %s and it says %s: job.json was changed since it "+
			"was made, and what it prints won't fit the sheets that say %s; take the file as make wrote it, or make the "+
			"job again",
			got, j.CheckCode, j.CheckCode))
	}
	return f
}

// changedWarning says that a job is not as it was made, to those who only look at it.
func (j job) changedWarning() []string {
	if j.checkCode().differs == nil {
		return nil
	}
	return []string{fmt.Sprintf("job.json was changed since it was made: this goes by what it says now, and the "+
		"printed sheets that say %s do not", j.CheckCode)}
}

// fileSums are the SHA-256 of the files that make writes before the job file, by name; file gives the place of each.
func fileSums(file func(name string) string) (map[string]string, error) {
	sums := map[string]string{}
	for _, name := range place.Files {
		if name == place.JobFile {
			continue
		}
		sum, err := fileSum(file(name))
		if err != nil {
			return nil, err
		}
		sums[name] = sum
	}
	return sums, nil
}

// openRegular opens a file that is neither a folder nor a device nor a pipe. It is looked at before it is
// opened, because opening a pipe would wait for its writer.
func openRegular(path string) (*os.File, os.FileInfo, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, nil, err
	case !info.Mode().IsRegular():
		return nil, nil, errors.New("it is no regular file")
	}
	f, err := os.Open(path)
	return f, info, err
}

// fileSum is the SHA-256 of a regular file, in hexadecimal.
func fileSum(path string) (string, error) {
	f, _, err := openRegular(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// checkFiles compares the files with those that were made.
func (j job) checkFiles(folder string) finding {
	f := finding{what: "files", agrees: "as they were made, by their SHA-256"}
	var differ []string
	for _, name := range place.Files {
		if name == place.JobFile {
			continue
		}
		if sum, err := fileSum(filepath.Join(folder, name)); err != nil || sum != j.Files[name] {
			differ = append(differ, name)
		}
	}
	if len(differ) > 0 {
		f.differs = fmt.Errorf("%s not as this job made them: sheets come again from job.json (dropsheet reprint %q "+
			"all); a proof or seam map may have been replaced by a trial, which harms nothing", strings.Join(differ, ", "),
			folder)
	}
	return f
}

// checkPages counts the pages of the sheets' file.
func (j job) checkPages(folder string) finding {
	f := finding{what: "pages", agrees: fmt.Sprintf("%d in sheets.pdf, one for each sheet", len(j.Sheets))}
	const again = "make it again with dropsheet reprint %q all, which writes it under another name"
	switch pages, err := countPages(filepath.Join(folder, "sheets.pdf")); {
	case err != nil:
		f.differs = fmt.Errorf("sheets.pdf can't be counted (%w): "+again, err, folder)
	case pages != len(j.Sheets):
		f.differs = fmt.Errorf("sheets.pdf has %d pages, and the job %d sheets: "+again, pages, len(j.Sheets), folder)
	}
	return f
}

func countPages(path string) (int, error) {
	file, info, err := openRegular(path)
	if err != nil {
		return 0, err
	}
	defer file.Close()
	return pdf.CountPages(file, info.Size())
}

// checkArtwork looks whether the artwork is the one that the job was made from.
func (j job) checkArtwork(folder, moved string, maxPixels int) finding {
	f := finding{what: "artwork", agrees: fmt.Sprintf("%s, %d x %d pixels, of the job's SHA-256",
		printable(filepath.Base(artworkPath(j, folder, moved))), j.Artwork.WidthPx, j.Artwork.HeightPx)}
	_, f.differs = openArtwork(j, folder, moved, maxPixels)
	return f
}
