package ask

import (
	"github.com/spf13/pflag"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/job"
)

// yielding are the words of a job that give way to flags that are given.
type yielding map[string]bool

// way lets a flag's words give way, and those of flags that have no meaning without it.
func (g yielding) way(flag string) {
	g[flag] = true
	for _, with := range meansNothingWithout[flag] {
		g[with] = true
	}
}

// meansNothingWithout are the flags that have no meaning without another.
var meansNothingWithout = map[string][]string{
	"surround": {"surround-size"}, "avoid": {"more-sheets"}, "wall": {"wall-of"},
	"lamp": {"lamp-lux", "lamp-size", "lamp-beam", "lamp-aim", "level"},
}

// bounds are flags that bound the print where it is free, and decide how large it is.
var bounds = []string{"max-sheets", "columns", "rows", "board-width", "board-height"}

// givesWay is which of a job's words give way to the flags given: those that say the same in another way.
func givesWay(flags *pflag.FlagSet, words job.Asked) yielding {
	gives := yielding{}
	switch { // a scale is a print size
	case flags.Changed("scale"):
		gives.way("print-size")
		gives.way("max-sheets")
		if flags.Changed("fill") {
			gives.way("distance")
		} else {
			gives.way("fill")
		}
	case flags.Changed("print-size"):
		gives.way("max-sheets")
	case flags.Changed("max-sheets"):
		gives.way("print-size")
	}
	if f := flags.Lookup("seams"); f != nil && f.Changed && f.Value.String() == string(layout.SeamsEven) {
		gives.way("avoid")
	}
	if f := flags.Lookup("body"); f != nil && f.Changed && f.Value.String() != flip.Hanging.String() {
		gives.way("held")
	}
	if flags.Changed("avoid") {
		gives.way("seams")
	}
	if flags.Changed("lamp") { // what each lamp had belongs to those that stood there
		for _, flag := range []string{"lamp-lux", "lamp-size", "lamp-beam", "lamp-aim"} {
			gives[flag] = len(words[flag]) > 1
		}
	}
	for _, a := range AllAlternatives() {
		gives.alternatives(flags, words, a)
	}
	if len(words["print-size"]) == 0 && (len(words["distance"]) == 0 || len(words["fill"]) == 0) {
		gives.alternatives(flags, words, Alternatives{[]string{"max-sheets", "fill", "distance"}, 2})
	}
	for _, bound := range bounds {
		if len(words[bound]) == 0 { // else it is the same bound with another number
			gives.alternatives(flags, words, Alternatives{[]string{bound, "fill", "distance"}, 2})
		}
	}
	return gives
}

// alternatives lets as many of the job's words give way, the first ones first, as there are too many with those given.
func (g yielding) alternatives(flags *pflag.FlagSet, words job.Asked, a Alternatives) {
	var stand []string
	said := 0
	for _, flag := range a.Flags {
		switch {
		case flags.Changed(flag):
			said++
		case len(words[flag]) > 0 && !g[flag]:
			stand = append(stand, flag)
		}
	}
	for said > 0 && len(stand) > 0 && said+len(stand) > a.Most {
		g.way(stand[0])
		stand = stand[1:]
	}
}
