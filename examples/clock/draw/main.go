// Command draw paints the second example artwork: the clock on the harbour office at dusk, as examples/clock/clock.jpg.
//
// It is twelve past nine in the evening. The dial is of opal glass with its lamps lit, in an iron rim on a
// boarded blue wall, 2 % short of the picture's sides: in a drop the dial becomes the drop's own round.
// Numerals and lettering stand upright, so that a mirrored or an upside-down result tells at a glance; the
// words run in straight lines over a chart's square grid, so that what the drop bends shows plainly. The
// office, the town and the clock are our own invention.
//
// Coordinates. The canvas is 3000 by 3000 units, origin at the dial's centre, x right, y up; at full size a
// unit is a pixel. Angles are radians; those of hands and marks run clockwise from twelve, those of arcs
// counter-clockwise from the right.
//
// Run it from the project's root:
//
//	go run ./examples/clock/draw
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"dropsheet/examples/paint"
)

// jpegQuality keeps the picture under 1.5 MB with no blocks to be seen.
const jpegQuality = 92

func main() {
	out := flag.String("out", filepath.Join("examples", "clock", "clock.jpg"), "the JPEG `file` to write")
	width := flag.Int("width", canvasU, "picture width in `pixels`, from 30 to 6000; the height is the same")
	flag.Parse()
	if err := run(*out, *width, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "draw:", err)
		os.Exit(1)
	}
}

func run(out string, widthPx int, rest []string) error {
	if len(rest) > 0 {
		return fmt.Errorf("%q is one word too many: give only flags", rest[0])
	}
	if widthPx < 30 || widthPx > 6000 {
		return fmt.Errorf("a width of %d pixels can't be drawn: give one from 30 to 6000", widthPx)
	}
	return paint.WriteJPEG(out, render(widthPx), jpegQuality)
}
