package attack

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/ask"
)

// tables are the commands' flags. Those of rehearse have tests of their own, and those of commands that are not here
// are switches alone.
var tables = map[string]interface{ Register(*pflag.FlagSet) }{
	"size": &ask.Size{}, "make": &ask.Make{}, "proof": &ask.Proof{}, "seams": &ask.Seams{}, "reprint": &ask.Reprint{},
	"check": &ask.Check{}, "gauge": &ask.Gauge{},
}

// flagsOf is the table of a command's flags.
func flagsOf(command string) (all []*pflag.Flag) {
	flags := pflag.NewFlagSet(command, pflag.ContinueOnError)
	tables[command].Register(flags)
	flags.VisitAll(func(f *pflag.Flag) { all = append(all, f) })
	return all
}

var (
	papers = one("A4", "A3", "A5", "A6", "letter", "legal", "tabloid", "210x297mm", "30x40cm", "13x19in", "50x50mm",
		"A99")
	colours  = one("navy", "black", "white", "#203040", "#fff", "stretch", "none", "#12345g")
	printers = one("study", "none", "office", "no such", "a\u202eb")
	margins  = either(length(0.1, 30), joined(",", number(0.1, 20), number(0.1, 20), number(0.1, 20), length(0.1, 30)))
	paths    = one("a", "b", "c.pdf", "d.png", "no/such/place", ".", "-", "/dev/null", "n\nl")
)

// words say how a word for each flag is drawn. Bounds are those of what people ask for, widened tenfold or so.
var words = map[string]drawn{
	"aperture":        either(number(0.7, 200), joined("", one("f/", "F", "f"), number(1, 100))),
	"artwork":         one("artwork.png", "other.png", "no-such.png", "artwork.pdf"),
	"avoid":           joined(",", share, share, share),
	"background":      colours,
	"between":         size(20, 400),
	"board-height":    length(50, 5000),
	"board-width":     length(50, 5000),
	"body":            one("ball", "ball", "hanging", "upright-rod", "level-rod", "cube"),
	"camera":          one("eye", "ear"),
	"camera-distance": length(1, 1e5),
	"centre":          joined(",", share, share),
	"columns":         whole(1, 40),
	"copies":          whole(1, 12),
	"crop":            joined(",", share, share, share, share),
	"distance":        length(1, 1e5),
	"drop":            length(0.01, 500),
	"drop-at":         joined(",", signed(0.01, 20), signed(0.01, 20)),
	"drops-per-ml":    number(0.1, 1e5),
	"fall":            length(1, 1e5),
	"fill":            either(share, one("0.5", "0.85", "0.95", "0.999")),
	"film":            one("film"),
	"fit":             one("cover", "inside", "stretch"),
	"focus":           one("edge", "picture", "best", "sharp"),
	"forget":          printers,
	"frame-rate":      number(1, 1e6),
	"frame-width":     length(0.5, 5000),
	"guide-paper":     papers,
	"held":            length(0.05, 50),
	"iso":             number(50, 1e6),
	"jet":             length(0.01, 20),
	"lamp":            joined(",", signed(1, 5000), signed(1, 5000), signed(1, 5000)),
	"lamp-aim":        either(one("drop"), joined(",", signed(1, 1000), signed(1, 1000))),
	"lamp-beam":       number(1, 180),
	"lamp-lux":        number(1, 1e7),
	"lamp-size":       length(1, 3000),
	"lap":             length(1, 100),
	"lens":            length(1, 2000),
	"light-from":      one("top-left", "top-right", "bottom-left", "bottom-right", "top"),
	"liquid":          either(one("water", "sea-water", "glycerol", "crown-glass", "mercury"), number(1.001, 4)),
	"look":            either(one("bulged", "straight", "crooked"), share),
	"margin":          margins,
	"margins":         margins,
	"max-memory":      joined("", number(1, 2000), one("MB", "GB", "kB")),
	"max-pixels":      whole(1, 1e9),
	"max-sheets":      whole(1, 100),
	"more-sheets":     whole(1, 20),
	"nozzle":          length(0.05, 20),
	"oblate":          number(0.75, 1.25),
	"orientation":     one("auto", "portrait", "landscape", "upright"),
	"out":             paths,
	"page":            whole(1, 3),
	"paper":           papers,
	"pasted":          size(100, 400),
	"pixel-size":      length(0.0005, 0.2),
	"pixels":          joined("x", whole(1, 200), whole(1, 200)),
	"playback":        number(1, 1000),
	"ppi":             either(one("auto"), number(1, 400)),
	"print-size":      either(size(10, 5000), length(10, 5000)),
	"printer":         printers,
	"read":            size(100, 400),
	"rows":            whole(1, 40),
	"samples":         whole(1, 8),
	"save":            printers,
	"scale":           number(0.1, 10),
	"seam-at":         joined("=", joined("", one("C", "R", "X"), whole(1, 6)), length(10, 2000)),
	"seam-width":      length(0.01, 50),
	"seams":           one("least", "even", "most"),
	"sensor":          size(1, 100),
	"shape":           joined(":", number(0.1, 10), number(0.1, 10)),
	"sharp-to":        number(0.01, 100),
	"shutter":         joined("", one("1/", ""), number(1, 1e6), one("s", "us", "ms", "h")),
	"spare":           whole(1, 5),
	"speed":           joined("", signed(1, 1e5), one("/s", "/s", "/s", "")),
	"surround":        colours,
	"surround-size":   size(50, 3000),
	"travel":          length(0.01, 2000),
	"turn":            either(one("0", "30", "-10", "360", "-361"), number(0.1, 360)),
	"wall":            length(0.01, 20),
	"wall-of":         either(one("crown-glass", "water", "tin"), number(1.001, 4)),
	"without":         one("surround", "lamp", "paper", "no-such"),
}

// TestEveryFlagIsAttacked: a flag that is new has to say how words for it are drawn.
func TestEveryFlagIsAttacked(t *testing.T) {
	known := map[string]bool{}
	for command := range tables {
		for _, f := range flagsOf(command) {
			known[f.Name] = true
			if f.Value.Type() != "bool" {
				require.True(t, words[f.Name] != nil, "--%s of %s: say in words how words for it are drawn", f.Name, command)
			}
		}
	}
	for name := range words {
		require.True(t, known[name], "no command has --%s", name)
	}
}

// draw draws flags for a command: few mostly, and seldom one twice that may be given once. Those in hand are given by
// who asks. A flag that nothing is drawn for has failed TestEveryFlagIsAttacked.
func draw(r *rand.Rand, command string, inHand ...string) (args []string) {
	all := flagsOf(command)
	for n := r.IntN(3) + r.IntN(5); n > 0; n-- {
		f := all[r.IntN(len(all))]
		switch word := words[f.Name]; {
		case slices.Contains(inHand, f.Name):
		case f.Value.Type() == "bool":
			args = append(args, "--"+f.Name)
		case word != nil:
			args = append(args, "--"+f.Name+"="+word(r))
		}
	}
	return args
}
