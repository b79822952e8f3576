// Command draw paints the example artwork: a harbour at dusk, as examples/harbour/harbour.jpg.
//
// The sun goes down behind hills in haze. A lighthouse on its mole has begun to sweep its beam, a cutter
// comes in, the lettered warehouse QUAY 7 has its lamps lit, a fishing boat lies at the quay, and someone
// rows home by a lantern. The place, its boats and its names are our own invention. What matters most lies
// inside the circle that a drop shows (as wide as the picture is high), the lettering tells a mirrored or an
// upside-down result at a glance, and the sky is lighter than the water.
//
// Coordinates. The canvas is 6000 by 4000 units, origin at the top-left corner, x right, y down; at full size
// a unit is a pixel. Things stand in metres, in front of an eye 6 m above the water: X right of the eye, h
// above the water, depth away from it. A metre at a depth of z metres is focalU/z units long, and the water's
// surface there lies eyeM metres below the horizon. The reflection of a thing is the same thing at -h, so the
// scene is painted twice, the second time as its own mirror image.
//
// Run it from the project's root:
//
//	go run ./examples/harbour/draw
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"dropsheet/examples/paint"
)

// jpegQuality keeps the picture under 2 MB with no blocks to be seen.
const jpegQuality = 90

func main() {
	out := flag.String("out", filepath.Join("examples", "harbour", "harbour.jpg"), "the JPEG `file` to write")
	width := flag.Int("width", canvasW, "picture width in `pixels`, a multiple of 3 from 30 to 12000; the height is "+
		"two thirds of it")
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
	if widthPx < 30 || widthPx > 12000 || widthPx%3 != 0 {
		return fmt.Errorf("a width of %d pixels can't be drawn: give a multiple of 3 from 30 to 12000", widthPx)
	}
	return paint.WriteJPEG(out, render(widthPx), jpegQuality)
}
