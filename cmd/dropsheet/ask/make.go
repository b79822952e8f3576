package ask

import (
	"errors"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
)

// Make is what make is asked for.
type Make struct {
	made
	out  string
	JSON bool
	// Verbose asks for every fact in place of a few lines.
	Verbose bool
	force   bool
}

// Register adds the words to a set of flags.
func (m *Make) Register(flags *pflag.FlagSet) {
	m.made.register(flags)
	add(flags, &m.out, "out", "folder", "", named, "folder to write, new or empty (default: the artwork's name with "+
		"-backdrop; of a JOB its own, which needs --force)")
	addVerbose(flags, &m.Verbose)
	flags.BoolVar(&m.JSON, "json", false, "tell the job as JSON, as job.json has it")
	flags.BoolVar(&m.force, "force", false, "replace a job that is already in the folder, its reprints and "+
		"trials included")
}

// Order is what the words come to for what Of was told. Where no folder was asked for, the job goes into one named for
// the artwork, or a job that is made again into its own.
func (m *Make) Order() (job.Order, error) {
	order, err := m.order()
	if err != nil {
		return job.Order{}, err
	}
	if order.From != nil {
		if order.Artwork, err = order.From.FindArtwork(); err != nil {
			return job.Order{}, err
		}
	}
	order.Folder, order.Force = m.out, m.force
	switch {
	case order.Folder == "-":
		return job.Order{}, job.WrongWords(errors.New("--out -: a job goes to a folder, not to the screen\n" +
			"hint: name one that is new or empty"))
	case order.Folder != "":
	case m.again.of != nil:
		order.Folder = m.again.of.Folder()
	default:
		order.Folder = BackdropFolder(order.Artwork)
	}
	return order, nil
}

// BackdropFolder is the name of the folder that an artwork's job goes into unless another is asked for.
func BackdropFolder(artwork string) string {
	base := filepath.Base(artwork)
	if artwork == job.StandardInput {
		base = "artwork"
	}
	return place.Fitting(strings.TrimSuffix(base, filepath.Ext(base)), "-backdrop")
}
