// Command draw draws the third example artwork: a printed chart of the harbour, as examples/chart/chart.pdf.
//
// The haven lies behind its two moles, with the lighthouse, the clock and QUAY 7 of the other examples. Its waters,
// depths and names are our own invention, and nobody should steer by it. It is a page of a PDF, so its lines and
// lettering are as sharp as any print of it, and the lettering tells at a glance what a drop turns or bends.
//
// Coordinates are page millimetres: origin at the top-left corner, x right, y down; north is up. Depths are in metres.
//
// Run it from the project's root:
//
//	go run ./examples/chart/draw
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"dropsheet/examples/paint"
	"dropsheet/tile/pdf"
)

func main() {
	out := flag.String("out", filepath.Join("examples", "chart", "chart.pdf"), "the PDF `file` to write")
	flag.Parse()
	if err := run(*out, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "draw:", err)
		os.Exit(1)
	}
}

func run(out string, rest []string) error {
	if len(rest) > 0 {
		return fmt.Errorf("%q is one word too many: give only flags", rest[0])
	}
	d := pdf.New("A chart of the harbour")
	d.AddPage(sideMM, sideMM)
	drawWater(d)
	drawTown(d)
	drawSoundings(d)
	drawMarks(d)
	drawRose(d)
	drawLettering(d)
	drawFrame(d)
	var file bytes.Buffer
	if err := d.Stream(&file, func(pdf.PictureID) (pdf.Picture, error) {
		return pdf.Picture{}, errors.New("the chart has no pictures") // none is placed
	}); err != nil {
		return err
	}
	return paint.WriteFile(out, file.Bytes())
}
