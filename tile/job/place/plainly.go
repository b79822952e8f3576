package place

import (
	"errors"
	"io/fs"
	"os"
)

// Plainly is err without the paths that the system puts before it, and without the names of its own calls: the paths
// may be those of hidden files, and whoever tells of the error names the file already.
func Plainly(err error) error {
	if at := (*os.SyscallError)(nil); errors.As(err, &at) {
		return at.Err
	}
	if at := (*fs.PathError)(nil); errors.As(err, &at) {
		return at.Err
	}
	if at := (*os.LinkError)(nil); errors.As(err, &at) {
		return at.Err
	}
	return err
}
