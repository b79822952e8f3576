package ask

import (
	"github.com/spf13/pflag"

	"dropsheet/tile/artwork"
)

// Check is what check is asked for.
type Check struct{ jobArtwork }

// Register adds the words to a set of flags.
func (c *Check) Register(flags *pflag.FlagSet) { c.jobArtwork.register(flags) }

// jobArtwork is where the artwork of a job is looked for.
type jobArtwork struct {
	Artwork string         // what it has moved to, or empty
	Limits  artwork.Limits // how large it may be
}

func (a *jobArtwork) register(flags *pflag.FlagSet) {
	add(flags, &a.Artwork, "artwork", "file", "", named, "file that the artwork has moved to (default: where it "+
		"was, else the job's copy)")
	addLimits(flags, &a.Limits)
}
