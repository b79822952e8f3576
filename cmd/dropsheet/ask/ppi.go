package ask

import (
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/layout/shot"
	"dropsheet/tile/job"
)

// addPPI registers the print resolution, which only a print has.
func addPPI(flags *pflag.FlagSet, into *job.PPI) {
	add(flags, into, "ppi", "number|auto", fmt.Sprint(shot.DefaultPPI), func(s string) (job.PPI, error) {
		if s == "auto" {
			return job.PPI{Auto: true}, nil
		}
		most, err := number(0, job.MaxPPI)(s)
		if err != nil {
			return job.PPI{}, fmt.Errorf("%q can't be taken\n"+
				"hint: write auto, or a plain number above 0 and below %d", s, job.MaxPPI)
		}
		return job.PPI{Most: most}, nil
	}, "the most pixels printed to the inch, or auto: as many as the frame can use, up to 300; a coarser picture "+
		"keeps its own pixels")
}
