package seammap

import (
	"image/color"

	"dropsheet/tile/ink"
)

// The colours. Each thing differs from the others in light and dark or in its dashes too, so that the map reads in grey and
// whatever colours the eye can tell: seams are dark with a light keyline, the picture's edge is light with a dark one, and
// fills are dashed.
var (
	paper = color.RGBA{0xff, 0xff, 0xff, 0xff}
	black = color.RGBA{0x15, 0x17, 0x1c, 0xff}
	grey  = color.RGBA{0x55, 0x5a, 0x64, 0xff}
	blue  = color.RGBA{0x0a, 0x4f, 0xa3, 0xff}
	amber = color.RGBA{0xff, 0xb8, 0x1c, 0xff}
)

var (
	seamLine    = ink.Line{Colour: black, WidthPx: widestSeamPx, Keyline: paper, KeylinePx: 2}
	edgeLine    = ink.Line{Colour: amber, WidthPx: 3.5, Keyline: black, KeylinePx: 2}
	outlineLine = ink.Line{Colour: grey, WidthPx: 4}
	rulerLine   = ink.Line{Colour: grey, WidthPx: 2}
)

// widestSeamPx is how wide a seam is drawn where there is room.
const widestSeamPx = 4

// seamLineFor is the line for a seam between cells whose middles show that far apart: thinner where they crowd, so that the
// picture still shows between the seams.
func seamLineFor(roomPx float64) ink.Line {
	const share, thinnestPx = 0.12, 0.7
	line := seamLine
	line.WidthPx = max(thinnestPx, min(share*roomPx, widestSeamPx))
	line.KeylinePx *= line.WidthPx / widestSeamPx
	return line
}

// strokes draws several paths with one line.
func strokes(line ink.Line, paths []ink.Path) []ink.Stroke {
	out := make([]ink.Stroke, len(paths))
	for i, path := range paths {
		out[i] = ink.Stroke{Path: path, Line: line}
	}
	return out
}

// fillMark is a fill that is drawn, and how.
type fillMark struct {
	fill float64
	own  bool // the picture's own
	line ink.Line
}

// fillMarks are the fills drawn for a picture that fills the drop so far. The picture's own takes the place of one that reads the same.
func fillMarks(own float64) []fillMark {
	var marks []fillMark
	for _, f := range []struct {
		fill float64
		dash []float64
	}{{0.25, []float64{4, 7}}, {0.5, []float64{13, 8}}, {0.75, []float64{30, 9}}} {
		if fillText(f.fill) != fillText(own) {
			marks = append(marks, fillMark{f.fill, false, ink.Line{Colour: blue, WidthPx: 3, DashPx: f.dash, Keyline: paper, KeylinePx: 1.5}})
		}
	}
	return append(marks, fillMark{own, true, ink.Line{Colour: blue, WidthPx: 3, Keyline: paper, KeylinePx: 1.5, DashPx: []float64{34, 7, 4, 7}}})
}

// faces are the sizes of type. A map shown half as large must still read.
type faces struct {
	title, heading, text, fill, name, smallName, small ink.Face
}

func newFaces() faces {
	return faces{
		title: ink.NewFace(ink.Bold, 50), heading: ink.NewFace(ink.Bold, 32), text: ink.NewFace(ink.Regular, 27),
		fill: ink.NewFace(ink.Bold, 24), name: ink.NewFace(ink.Bold, 26), smallName: ink.NewFace(ink.Bold, 20),
		small: ink.NewFace(ink.Regular, 23),
	}
}
