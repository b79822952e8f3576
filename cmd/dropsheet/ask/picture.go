package ask

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// picture says what of the artwork is used and how it comes to lie in the drop.
type picture struct {
	page       int
	look       layout.Look
	crop       job.Crop
	centre     sharePoint
	turnDeg    float64
	round      bool
	background layout.Surround
}

// sharePoint is a point of the picture; given tells it from none.
type sharePoint struct {
	x, y  float64
	given bool
}

func (f *picture) register(flags *pflag.FlagSet) {
	add(flags, &f.page, "page", "N", "", wholeFromOne, "the page that is the artwork, of a PDF that has several")
	add(flags, &f.look, "look", "bulged|straight|share", "bulged", layout.ParseLook,
		"how the picture appears in the drop: bulged (as a flat print looks, wrapped round it), straight (pre-bent, so "+
			"that it appears as drawn), or a share between, such as 0.5; in a rod straight unless told otherwise")
	add(flags, &f.crop, "crop", "X,Y,W,H", "", parseCrop, "use only that part of the artwork: left, top, width and "+
		"height as shares of it, from 0 to 1, such as 0.1,0,0.8,1; for all other flags that part is the picture")
	add(flags, &f.centre, "centre", "X,Y", "", parseSharePoint, "point of the picture that sits on the axis: right "+
		"and down as it appears in the drop, from 0 to 1 (default 0.5,0.5)")
	add(flags, &f.turnDeg, "turn", "degrees", "", degrees, "turn the picture clockwise in the drop, -360 to 360, on "+
		"top of what the drop itself does (default 0)")
	flags.BoolVar(&f.round, "round", false, "a round subject that touches the picture's shorter sides, a coin or a "+
		"clock face: print only the circle, and fill the drop to its edge with it (fill 0.95 unless --fill says otherwise)")
	add(flags, &f.background, "background", "colour", "", layout.ParseColour,
		"colour for the paper that the picture does not cover, and under transparent parts of the artwork, such as "+
			"#203040 or navy (default: bare white paper, and white under them)")
}

// apply lays the flags over a setup.
func (f *picture) apply(s *layout.Setup) {
	s.Look, s.Background = f.look, f.background
	s.Framing = layout.Framing{TurnDeg: f.turnDeg, Round: f.round}
	if f.centre.given {
		s.Framing.OffX, s.Framing.OffY = f.centre.x-0.5, f.centre.y-0.5
	}
}

// shares reads n plain numbers joined by commas.
func shares(s string, n int) ([]float64, bool) {
	parts := strings.Split(s, ",")
	if len(parts) != n {
		return nil, false
	}
	var all []float64
	for _, part := range parts {
		v, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || !(v >= 0 && v <= 1) {
			return nil, false
		}
		all = append(all, v)
	}
	return all, true
}

// degrees reads an angle.
func degrees(s string) (float64, error) {
	v, err := within(-360, 360)(s)
	if err != nil {
		return 0, fmt.Errorf("%q is not a turn\nhint: write degrees from -360 to 360, a plain number", s)
	}
	return v, nil
}

func parseCrop(s string) (job.Crop, error) {
	v, ok := shares(s, 4)
	const hair = 1e-9
	if !ok || v[2] == 0 || v[3] == 0 || v[0]+v[2] > 1+hair || v[1]+v[3] > 1+hair {
		return job.Crop{}, fmt.Errorf("%q is not a part of the picture\n"+
			"hint: write left,top,width,height as shares from 0 to "+
			"1 that stay within it, such as 0.1,0,0.8,1", s)
	}
	return job.Crop{X: v[0], Y: v[1], Width: v[2], Height: v[3]}, nil
}

func parseSharePoint(s string) (sharePoint, error) {
	v, ok := shares(s, 2)
	if !ok {
		return sharePoint{}, fmt.Errorf("%q is not a point of the picture\n"+
			"hint: write two shares from 0 to 1, such as 0.5,0.4", s)
	}
	return sharePoint{v[0], v[1], true}, nil
}
