package ask

import (
	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// made is all that a job is asked for with, but where it goes and how it is told.
type made struct {
	setup
	placement placement
	ppi       job.PPI
	lossless  bool
}

func (m *made) register(flags *pflag.FlagSet) {
	m.setup.register(flags)
	m.placement.register(flags)
	addPPI(flags, &m.ppi)
	flags.BoolVar(&m.asked.Level, "level", false, "print darker where the lamps give more light, so that the board "+
		"comes out even; needs --lamp")
	flags.BoolVar(&m.lossless, "lossless", false, "keep every pixel as it is, in place of JPEG, which stores colour "+
		"at half the resolution; sheets.pdf grows several times larger")
}

// order is what the words come to for an artwork, without a folder.
func (m *made) order(artwork string) (job.Order, error) {
	setup, err := m.read()
	if err != nil {
		return job.Order{}, err
	}
	if err := m.placement.check(); err != nil {
		return job.Order{}, err
	}
	return job.Order{
		Artwork: artwork, MaxPixels: m.maxPixels, Crop: m.picture.crop, Setup: setup,
		Seams: m.placement.rule, Avoid: m.placement.avoid, SeamsAt: m.placement.at,
		PPI: m.ppi, Lossless: m.lossless, Asked: asked(m.flags),
	}, nil
}
