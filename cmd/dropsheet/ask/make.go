package ask

import (
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// Make is what make is asked for.
type Make struct {
	setup
	placement placement
	ppi       job.PPI
	lossless  bool
	out       string
	JSON      bool
	force     bool
}

// Register adds the words to a set of flags.
func (m *Make) Register(flags *pflag.FlagSet) {
	m.setup.register(flags)
	m.placement.register(flags)
	addPPI(flags, &m.ppi)
	flags.BoolVar(&m.asked.Level, "level", false, "print darker where the lamps give more light, so that the board "+
		"comes out even; needs --lamp")
	flags.BoolVar(&m.lossless, "lossless", false, "keep every pixel as it is, in place of JPEG, which stores colour "+
		"at half the resolution; sheets.pdf grows several times larger")
	add(flags, &m.out, "out", "folder", "", named, "folder to write, new or empty (default: the artwork's name with "+
		"-backdrop)")
	flags.BoolVar(&m.JSON, "json", false, "tell the job as JSON, as job.json has it")
	flags.BoolVar(&m.force, "force", false, "replace a job that is already in the folder, its reprints and "+
		"trials included")
}

// Order is what the words come to for an artwork. Where no folder was asked for, the job goes into one named for the
// artwork.
func (m *Make) Order(artwork string) (job.Order, error) {
	setup, err := m.read()
	if err != nil {
		return job.Order{}, err
	}
	if err := m.placement.check(); err != nil {
		return job.Order{}, err
	}
	folder := m.out
	if folder == "" {
		base := filepath.Base(artwork)
		folder = strings.TrimSuffix(base, filepath.Ext(base)) + "-backdrop"
	}
	return job.Order{
		Artwork: artwork, MaxPixels: m.maxPixels, Crop: m.picture.crop, Setup: setup,
		Seams: m.placement.rule, Avoid: m.placement.avoid,
		PPI: m.ppi, Lossless: m.lossless, Asked: asked(m.flags),
		Folder: folder, Force: m.force,
	}, nil
}
