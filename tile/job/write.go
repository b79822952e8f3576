package job

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/png"
	"io"

	"dropsheet/tile/job/place"
)

// source tells a job file that was read from what lies there later.
type source struct {
	given, path string // as it was named, and the file itself
	sum         [sha256.Size]byte
}

// stands tells why what was made of the job may not be put in its place: make may have replaced the job
// meanwhile, and its sheets would not fit those of another.
func (s source) stands() error {
	sum, err := fileSum(s.path)
	if err == nil && sum == hex.EncodeToString(s.sum[:]) {
		return nil
	}
	what := "was replaced meanwhile"
	if err != nil {
		what = fmt.Sprintf("is gone meanwhile, or can't be read (%v)", place.Plainly(err))
	}
	return fmt.Errorf("job %q %s, and this is of the one that was there before\nhint: run it again, for the job that "+
		"is there now", s.path, what)
}

// MayWrite tells why nothing that is made of a job that was read can be put at path: neither the job nor its artwork,
// which may have moved, nor that one's copy is ever replaced.
func (j Job) MayWrite(path string, force bool, moved string) error {
	inputs := append(j.places(moved), j.read.given)
	if j.Artwork.Copy != "" {
		inputs = append(inputs, j.copyPath())
	}
	return place.MayWrite(path, force, inputs...)
}

// writeFile is place.WriteFile for what is made of a job that was read: it appears only while that job still lies
// where it was read. The file is held by then, and a make that would replace its folder lets it be, so that
// no page of an old job comes to lie among the sheets of a new one.
func (j Job) writeFile(path string, force bool, write func(io.Writer) error) error {
	return place.WriteFileIf(path, force, write, j.read.stands)
}

// WritePNG writes the picture that draw makes of a job that was read, if that job still lies where it was read. An
// existing file is an error unless force is set.
func (j Job) WritePNG(path string, force bool, draw func() image.Image) error {
	return j.writeFile(path, force, writePNG(draw))
}

// writePNG writes the picture that draw makes.
func writePNG(draw func() image.Image) func(io.Writer) error {
	return func(w io.Writer) error {
		encoder := png.Encoder{CompressionLevel: png.BestSpeed} // a few per cent larger, several times faster
		return encoder.Encode(w, draw())
	}
}
