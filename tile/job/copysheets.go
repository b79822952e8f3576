package job

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf"
	"dropsheet/tile/readfile"
)

// sheetsFile is what has the sheets, one a page, in a job's folder.
const sheetsFile = "sheets.pdf"

// Pages says which pages of the sheets' file are the sheets, exactly as they were.
func (r Reprint) Pages() string {
	var pages []string
	for _, s := range r.Sheets {
		pages = append(pages, fmt.Sprintf("%s is page %d", s.Name, s.Page))
	}
	const most = 6
	if more := len(pages) - most; more > 1 {
		pages = append(pages[:most], fmt.Sprintf("and %d more by their place in it", more))
	}
	return strings.Join(pages, ", ") + " of " + sheetsFile
}

// MayCopy tells why the sheets can't be taken from the sheets' file as they were: it is not as make wrote it.
func (r Reprint) MayCopy() error {
	path := filepath.Join(r.Job.Folder(), sheetsFile)
	sum, err := fileSum(path)
	switch {
	case err != nil:
		return fmt.Errorf("%q can't be read: %w", path, place.Plainly(err))
	case sum != r.Job.Files[sheetsFile]:
		return fmt.Errorf("%q is not as it was made", path)
	}
	return nil
}

// Copy is Write without the artwork, for sheets on the paper and the printer that they were made for: the pages of the
// sheets' file, object by object.
func (r Reprint) Copy(ctx context.Context, path string, force bool, copies int) error {
	file, info, err := readfile.Open(filepath.Join(r.Job.Folder(), sheetsFile))
	if err != nil {
		return place.Plainly(err)
	}
	defer file.Close()
	var pages []int
	for _, s := range r.Sheets {
		for range copies {
			pages = append(pages, s.Page)
		}
	}
	return r.Job.writeFile(path, force, func(out io.Writer) error {
		if copies == 1 && len(pages) == len(r.Job.Sheets) { // all of them are the file itself
			_, err = io.Copy(out, file)
		} else {
			err = pdf.CopyPages(out, file, info.Size(), pages)
		}
		if err != nil {
			return err
		}
		return errors.Join(ctx.Err(), r.MayCopy()) // which may have changed meanwhile
	})
}
