package ask

import (
	"strings"

	"dropsheet/layout"
)

// margins are what a printer can't reach: along every edge, or along each its own.
type margins struct {
	allMM float64
	each  *layout.Margins // in place of one for all
}

// margin reads one length of 0 or more, or four: left, top, right and bottom.
func margin(s string) (m margins, err error) {
	if !strings.Contains(s, ",") {
		m.allMM, err = zeroOrMore(s)
		return m, err
	}
	four, err := marginsMM(s)
	return margins{each: &four}, err
}
