package job

import (
	"dropsheet/flip/units"
	"dropsheet/layout/shot"
)

// MaxPPI bounds the pixels printed to the inch.
const MaxPPI = 4800

// PPI is the most pixels printed to the inch, or what the frame can use of them.
type PPI struct {
	Most float64
	Auto bool // as many as the frame can use, up to shot.DefaultPPI
}

// of is the resolution for a plan.
func (p PPI) of(r shot.Resolution) units.Resolution {
	if p.Auto {
		return units.PerInch(min(r.NeededPPI, shot.DefaultPPI))
	}
	return units.PerInch(p.Most)
}
