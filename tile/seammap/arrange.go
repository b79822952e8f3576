package seammap

import (
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/ink"
)

// Measures of the map, in pixels.
const (
	widthPx     = 2000
	marginPx    = 60
	gapPx       = 60
	titlePx     = 196 // from the map's top to the headings
	headingPx   = 100 // from a heading's top to what stands under it
	rulerLeftPx = 96  // figures and ticks beside the board
	rulerLowPx  = 48
	numbersPx   = 44 // row numbers on the board's other side
	tallestPx   = 1150
	dropSidePx  = 800
	blockPx     = 560 // the narrowest a panel may be, for its heading
)

// stackedAspect is how many times as wide as high a board must be to get the map's whole width.
const stackedAspect = 3

// arrangement is where things go.
type arrangement struct {
	boardHeading, dropHeading ink.Point // top left corners
	boardOrigin               ink.Point
	pxPerMM                   float64 // of the board
	drop                      image.Rectangle
	notes                     ink.Point
	notesWidth                float64
	height                    int
}

// arrange finds room for a board and for notes whose height depends on the width they get.
func arrange(board layout.Rect, notesHeight func(widthPx float64) float64) arrangement {
	const full = widthPx - 2*marginPx
	stacked := board.WidthMM > stackedAspect*board.HeightMM
	space := float64(full - gapPx - dropSidePx)
	if stacked {
		space = full
	}
	const around = rulerLeftPx + numbersPx + 2*surroundPx
	pxPerMM, w, h := boardPx(board, space-around, tallestPx)
	w, h = ink.Snapped(w), ink.Snapped(h) // whole numbers are taken of what they lead to
	block := max(blockPx, w+around)

	a := arrangement{pxPerMM: pxPerMM, boardHeading: ink.Point{X: marginPx, Y: titlePx}}
	a.boardOrigin = ink.Point{X: marginPx + rulerLeftPx + surroundPx + (block-w-around)/2, Y: titlePx + headingPx +
		surroundPx}
	boardBottom := a.boardOrigin.Y + h + surroundPx + rulerLowPx

	a.dropHeading = ink.Point{X: marginPx + block + gapPx, Y: titlePx}
	if stacked {
		a.dropHeading = ink.Point{X: marginPx, Y: boardBottom + gapPx}
	}
	corner := image.Pt(int(a.dropHeading.X), int(a.dropHeading.Y)+headingPx)
	a.drop = image.Rectangle{corner, corner.Add(image.Pt(dropSidePx, dropSidePx))}
	dropBottom := float64(a.drop.Max.Y)

	// The notes go where the map stays lowest.
	lowest := math.Inf(1)
	try := func(at ink.Point, width float64) {
		if width < captionPx {
			return
		}
		if bottom := max(boardBottom, dropBottom, at.Y+notesHeight(width)); bottom < lowest {
			lowest, a.notes, a.notesWidth = bottom, at, width
		}
	}
	if stacked {
		x := a.dropHeading.X + dropSidePx + gapPx
		try(ink.Point{X: x, Y: float64(a.drop.Min.Y)}, widthPx-marginPx-x)
	} else {
		try(ink.Point{X: marginPx, Y: max(boardBottom, dropBottom) + gapPx}, full)
		try(ink.Point{X: marginPx, Y: boardBottom + gapPx}, block)
		try(ink.Point{X: a.dropHeading.X, Y: dropBottom + gapPx}, widthPx-marginPx-a.dropHeading.X)
	}
	a.height = int(math.Ceil(ink.Snapped(lowest))) + marginPx
	return a
}
