package ask

import (
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// usualSeamWidth is what --seam-width stands at.
var usualSeamWidth = fmt.Sprintf("%gmm", job.SeamWidthMM)

// Seams is what seams is asked for.
type Seams struct {
	whatIf
	SeamWidthMM float64
	jobArtwork
	Out         string
	Force, JSON bool
}

// Register adds the words to a set of flags.
func (s *Seams) Register(flags *pflag.FlagSet) {
	s.whatIf.register(flags)
	add(flags, &s.SeamWidthMM, "seam-width", "length", usualSeamWidth, aboveZero,
		"width of the bare paper edge that shows at seams")
	s.jobArtwork.register(flags)
	add(flags, &s.Out, "out", "file", "", named, "file to draw the seam map into, a PNG (default: none)")
	flags.BoolVar(&s.Force, "force", false, "replace the file if it exists")
	flags.BoolVar(&s.JSON, "json", false, "tell the figures as JSON")
}
