package ask

import (
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/guide"
	"dropsheet/tile/job"
)

// made is all that a job is asked for with, but where it goes and how it is told.
type made struct {
	setup
	placement placement
	ppi       job.PPI
	lossless  bool
	keep      bool
	guide     layout.Paper
}

func (m *made) register(flags *pflag.FlagSet) {
	m.setup.register(flags)
	m.placement.register(flags)
	addPPI(flags, &m.ppi)
	add(flags, &m.guide, "guide-paper", "name|WxH", "", guidePaper, "what the guide comes on, A5 or larger, "+
		"whatever the sheets are printed on (default: A4, or letter where the sheets' paper is named in inches)")
	flags.BoolVar(&m.lossless, "lossless", false, "keep every pixel as it is, in place of JPEG, which stores colour "+
		"at half the resolution; sheets.pdf grows several times larger")
	flags.BoolVar(&m.keep, "keep-artwork", true, "copy the artwork into the job's folder; --keep-artwork=false leaves it "+
		"where it is, and the job needs it there")
}

// order is what the words come to for what Of was told, without a folder. A job's own artwork is still to be found.
func (m *made) order() (job.Order, error) {
	setup, err := m.read()
	if err != nil {
		return job.Order{}, err
	}
	if err := m.placement.check(); err != nil {
		return job.Order{}, err
	}
	order := job.Order{
		Artwork: m.artwork, Page: m.picture.page, Limits: m.limits, Crop: m.picture.crop, Setup: setup,
		Seams: m.placement.rule, Avoid: m.placement.avoid, SeamsAt: m.placement.at, MoreSheets: m.placement.more,
		PPI: m.ppi, Lossless: m.lossless, LeaveArtwork: !m.keep, GuidePaper: m.guide, Asked: asked(m.flags),
	}
	if m.again.of != nil && m.again.artwork == "" {
		order.From = m.again.of
	} else if m.again.of != nil {
		order.Artwork = m.again.artwork
	}
	return order, nil
}

// guidePaper reads a paper that a guide can come on.
func guidePaper(s string) (layout.Paper, error) {
	p, err := layout.ParsePaper(s)
	if err == nil && !guide.Holds(p) {
		err = fmt.Errorf("%q is too small for the guide, whose letters could hardly be read on it\nhint: take A5 or larger; "+
			"the sheets' paper may be smaller all the same", s)
	}
	return p, err
}
