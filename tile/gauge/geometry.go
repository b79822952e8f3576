package gauge

import (
	"math"

	"dropsheet/layout"
)

// Sizes in mm.
const (
	// depth of the frame: more than any desk printer keeps clear on three sides (common practice, no source)
	frameMM      = 15.0
	frameShare   = 0.2  // at most that share of the paper's width, on small paper
	insetMM      = 5.0  // from the paper's sides to the ends of the rule across
	stepMM       = 10.0 // rules are whole numbers of this
	bandMM       = 13.0 // what a rule takes up inside the frame, with its numbers and its name
	feedFromMM   = bandMM + 1
	feedToMM     = 2.0 // the rule along the feed ends that far from the frame at the foot or further
	besideMM     = 4.0 // from the middle's text to the frame
	roomyMM      = 140.0
	fullMiddleMM = 160.0
	// leastMiddleMM is the least width in which words can be set.
	leastMiddleMM = 38.0
)

// geometry is where things go on the page.
type geometry struct {
	paper   layout.Paper
	depth   float64     // of the frame, whole mm
	rules   layout.Size // true lengths of the two rules
	start   layout.Point
	middle  layout.Rect // the space for words, grey and lines
	gapMM   float64     // between the things in the middle
	types   typeSizes
	compact bool // the middle is narrow
}

// Rules are the true lengths between the end ticks of the gauge page's two rules, across x feed, in mm: as
// many whole centimetres as the paper holds, the one across 5 mm from the sides or a little more, the one
// along the feed clear of the frame and of the other rule.
func Rules(paper layout.Paper) layout.Size { return newGeometry(paper).rules }

// DepthMM is how far from the paper's edges the innermost line of the page's frame lies.
func DepthMM(paper layout.Paper) float64 { return newGeometry(paper).depth }

func newGeometry(paper layout.Paper) geometry {
	w, h := paper.WidthMM, paper.HeightMM
	g := geometry{paper: paper, depth: math.Min(frameMM, math.Floor(frameShare*w))}
	whole := func(mm float64) float64 { return math.Floor(mm/stepMM+1e-9) * stepMM }
	g.rules = layout.Size{
		WidthMM:  whole(w - 2*insetMM),
		HeightMM: whole(h - 2*g.depth - feedFromMM - feedToMM),
	}
	g.start = layout.Point{XMM: (w - g.rules.WidthMM) / 2, YMM: g.depth + feedFromMM}

	left := g.depth + bandMM + besideMM
	g.middle = layout.Rect{XMM: left, YMM: g.depth + feedFromMM + 3,
		WidthMM: math.Min(w-g.depth-besideMM-left, fullMiddleMM)}
	g.middle.HeightMM = h - g.depth - besideMM - g.middle.YMM
	g.compact = g.middle.WidthMM < roomyMM
	g.gapMM, g.types = 8, roomyType
	switch {
	case g.middle.WidthMM < 75:
		g.gapMM, g.types = 2.5, smallType
	case g.compact:
		g.gapMM, g.types = 4, compactType
	}
	return g
}
