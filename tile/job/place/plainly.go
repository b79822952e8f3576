package place

import (
	"errors"
	"io/fs"
	"os"
)

// Plainly is err without the paths that the system puts before it: they may be those of hidden files, and whoever
// tells of the error names the file already.
func Plainly(err error) error {
	if at := (*fs.PathError)(nil); errors.As(err, &at) {
		return at.Err
	}
	if at := (*os.LinkError)(nil); errors.As(err, &at) {
		return at.Err
	}
	return err
}
