package seammap

import (
	"image/color"

	"dropsheet/tile/ink"
	"dropsheet/tile/seamsight"
)

// The colours. Each thing differs from the others in light and dark or in its dashes too, so that the map
// reads in grey and whatever colours the eye can tell: seams tell their verdict by width and by how many
// lines, the picture's edge is light with a dark keyline, and fills are dashed.
var (
	paper = color.RGBA{0xff, 0xff, 0xff, 0xff}
	black = color.RGBA{0x15, 0x17, 0x1c, 0xff}
	grey  = color.RGBA{0x55, 0x5a, 0x64, 0xff}
	blue  = color.RGBA{0x0a, 0x4f, 0xa3, 0xff}
	amber = color.RGBA{0xff, 0xb8, 0x1c, 0xff}

	orange = color.RGBA{0xcc, 0x52, 0x00, 0xff}
	red    = color.RGBA{0x96, 0x00, 0x28, 0xff}
)

var (
	edgeLine    = ink.Line{Colour: amber, WidthPx: 3.5, Keyline: black, KeylinePx: 2}
	boardLine   = ink.Line{Colour: paper, WidthPx: 3.5, DashPx: []float64{18, 10}, Keyline: black, KeylinePx: 2}
	frameLine   = ink.Line{Colour: grey, WidthPx: 3, DashPx: []float64{22, 6, 4, 6, 4, 6}, Keyline: paper, KeylinePx: 1}
	outlineLine = ink.Line{Colour: grey, WidthPx: 4}
	paperLine   = ink.Line{Colour: grey, WidthPx: 2.5}
	rulerLine   = ink.Line{Colour: grey, WidthPx: 2}
)

// seamLines are the lines for the verdicts on a seam. The plainer the seam, the wider and the further from
// thin black its line: what shows is broad and solid, what is faint is a double line, and what is out of sight is
// dotted, so that grey and any eye tell them apart.
var seamLines = [...]ink.Line{
	seamsight.OutOfSight: {Colour: grey, WidthPx: 2.5, DashPx: []float64{3, 6}, Keyline: paper, KeylinePx: 1},
	seamsight.Hidden:     {Colour: black, WidthPx: 2.5, Keyline: paper, KeylinePx: 1.5},
	seamsight.Faint:      {Colour: orange, WidthPx: 7.5, Keyline: paper, KeylinePx: 1.5, Core: paper, CorePx: 2.5},
	seamsight.Shows:      {Colour: red, WidthPx: 10, Keyline: paper, KeylinePx: 2.5},
}

// seamLineFor is the line for a seam between cells whose middles show that far apart: thinner where they
// crowd, so that the picture still shows between the seams.
func seamLineFor(v seamsight.Verdict, roomPx float64) ink.Line {
	const thinnest, fullRoomPx = 0.28, 40 // and no thinner, so that their widths still differ
	line := seamLines[v]
	by := max(thinnest, min(roomPx/fullRoomPx, 1))
	line.WidthPx *= by
	line.KeylinePx *= by
	line.CorePx *= by
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

// fillMarks are the fills drawn for a picture that fills the drop so far. The picture's own takes the place
// of one that reads the same.
func fillMarks(own float64) []fillMark {
	var marks []fillMark
	for _, f := range []struct {
		fill float64
		dash []float64
	}{{0.25, []float64{4, 7}}, {0.5, []float64{13, 8}}, {0.75, []float64{30, 9}}} {
		if fillText(f.fill) != fillText(own) {
			marks = append(marks, fillMark{f.fill, false, ink.Line{Colour: blue, WidthPx: 3, DashPx: f.dash, Keyline: paper,
				KeylinePx: 1.5}})
		}
	}
	return append(marks, fillMark{own, true, ink.Line{Colour: blue, WidthPx: 3, Keyline: paper, KeylinePx: 1.5,
		DashPx: []float64{34, 7, 4, 7}}})
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
