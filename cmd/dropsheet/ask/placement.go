package ask

import (
	"errors"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// placement is where the seams shall run.
type placement struct {
	flags *pflag.FlagSet
	rule  layout.SeamRule
	avoid []job.Avoided
	at    []layout.FixedSeam
	more  int
}

func (f *placement) register(flags *pflag.FlagSet) {
	f.flags = flags
	add(flags, &f.rule, "seams", "least|even", string(layout.SeamsLeast), layout.ParseSeamRule,
		"where seams run: least (slid to where they show least) or even (cells as even as they can be)")
	addList(flags, &f.avoid, "avoid", "X,Y,R", avoided, "keep seams out of a circle of the picture, a face say: "+
		"centre X,Y from "+
		"0 to 1 as it appears in the drop, radius R as a share of the picture's width; repeat it for more")
	add(flags, &f.more, "more-sheets", "N", "", wholeFromOne,
		"take up to so many sheets more where that keeps seams out of the places to avoid")
	addList(flags, &f.at, "seam-at", "SEAM=length", layout.ParseFixedSeam, "put a seam there, from the board's left "+
		"or upper edge: C2=355mm the one after column 2, R1=20cm the one below row 1; repeat it for more")
}

// check refuses flags that contradict each other.
func (f *placement) check() error {
	if f.rule == layout.SeamsEven && len(f.avoid) > 0 {
		return job.WrongWords(errors.New("--seams even leaves every seam in its place and --avoid moves some\n" +
			"hint: give one " +
			"of them"))
	}
	if f.more > 0 && len(f.avoid) == 0 {
		return job.WrongWords(errors.New("--more-sheets is for seams that keep out of a place\nhint: name it with --avoid"))
	}
	return nil
}
