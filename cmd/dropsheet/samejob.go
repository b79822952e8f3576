package main

import (
	"crypto/sha256"
	"dropsheet/tile/job/place"
	"encoding/hex"
	"fmt"
	"io"
)

// jobText tells a job file that was read from what lies there later.
type jobText struct {
	path string
	sum  [sha256.Size]byte
}

// stands tells why what was made of the job may not be put in its place: make may have replaced the job
// meanwhile, and its sheets would not fit those of another.
func (t jobText) stands() error {
	sum, err := fileSum(t.path)
	if err == nil && sum == hex.EncodeToString(t.sum[:]) {
		return nil
	}
	what := "was replaced meanwhile"
	if err != nil {
		what = fmt.Sprintf("is gone meanwhile, or can't be read (%v)", place.Plainly(err))
	}
	return fmt.Errorf("job %q %s, and this is of the one that was there before\nhint: run it again, for the job that "+
		"is there now", t.path, what)
}

// writeFile is place.WriteFile for what is made of a job that was read: it appears only while that job still lies
// where it was read. The file is held by then, and a make that would replace its folder lets it be, so that
// no page of an old job comes to lie among the sheets of a new one.
func (j job) writeFile(path string, force bool, write func(io.Writer) error) error {
	return place.WriteFileIf(path, force, write, j.read.stands)
}
