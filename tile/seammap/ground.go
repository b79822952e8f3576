package seammap

import (
	"image"
	"image/color"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/ink"
	"dropsheet/tile/texture"
)

// wall is what the drop shows beyond the board: dark, as the room is.
var wall = color.RGBA{0x24, 0x26, 0x2b, 0xff}

// bareBoard is what the board shows where it has no sheet.
var bareBoard = color.RGBA{0xa8, 0xad, 0xb3, 0xff}

// onBoard is what there is to see on the board.
type onBoard struct {
	surface *board.Surface
	board   layout.Rect
	bare    color.RGBA // what shows where there is no sheet
}

// at is the colour of a place and about spanMM round it.
func (b onBoard) at(at layout.Point, spanMM float64) color.RGBA {
	if at.XMM < 0 || at.XMM > b.board.WidthMM || at.YMM < 0 || at.YMM > b.board.HeightMM {
		return wall
	}
	seen := b.surface.At(at.XMM, at.YMM, board.Box(spanMM, spanMM))
	return seen.Under(1, texture.Linear(paper), texture.Linear(b.bare)).SRGB()
}

// ground paints what a view shows of the board, mixed with white by that share, on white paper.
// Each pixel takes one ray; what it covers is told by its neighbours' landings.
func ground(canvas *image.RGBA, v view, board onBoard, white float64) {
	colour := func(at, right, below landing) color.RGBA {
		if !at.ok {
			return wall
		}
		return board.at(at.Point, math.Sqrt(at.stepMM(right)*at.stepMM(below)))
	}
	frame := v.frame()
	texture.Rows((frame.Dy()+bandRows-1)/bandRows, func(band int) {
		first := frame.Min.Y + band*bandRows
		here := landings(v, first)
		for y := first; y < min(first+bandRows, frame.Max.Y); y++ {
			below := landings(v, y+1)
			next := v.mirrors(centre(frame.Min.X, y))
			for i := range frame.Dx() {
				x := frame.Min.X + i
				mirrored := next
				next = v.mirrors(centre(x+1, y))
				if shown := max(0, min(v.inside(centre(x, y))+0.5, 1)); shown > 0 {
					c := board.skin(mirrored, next, colour(here[i], here[i+1], below[i]))
					canvas.SetRGBA(x, y, mix(mix(c, paper, white), paper, 1-shown))
				}
			}
			here = below
		}
	})
}

// mirroredFrom is the share of the light from which on what the drop mirrors is painted: less is hardly seen.
const mirroredFrom = 0.05

// skin lays what the drop's front mirrors of the board, a pixel's part of which is little of a millimetre, over the
// colour of what is seen through it. next is what it mirrors a pixel further.
func (b onBoard) skin(m, next mirrored, through color.RGBA) color.RGBA {
	if !m.ok || m.share < mirroredFrom {
		return through
	}
	light := texture.Linear(b.at(m.Point, m.stepMM(next.landing))).Scale(float32(m.share))
	return texture.Linear(through).Scale(float32(1 - m.share)).Add(light).SRGB()
}

// bandRows is how many rows are painted one after the other, so that landings need not be looked for twice.
const bandRows = 16

// landing is what a pixel's centre shows of the board's plane.
type landing struct {
	layout.Point
	ok bool
}

// mirrored is what a pixel's centre shows of it by the drop's front, and the share of the light that comes so.
type mirrored struct {
	landing
	share float64
}

// landings are those of a row of the view, and of one pixel more.
func landings(v view, y int) []landing {
	frame := v.frame()
	row := make([]landing, frame.Dx()+1)
	for i := range row {
		p, ok := v.land(centre(frame.Min.X+i, y))
		row[i] = landing{p, ok}
	}
	return row
}

// stepMM is how far apart two neighbours land; nothing where one of them does not, so that the sharpest
// picture is taken.
func (l landing) stepMM(next landing) float64 {
	if !l.ok || !next.ok {
		return 0
	}
	return math.Hypot(l.XMM-next.XMM, l.YMM-next.YMM)
}

// centre is the centre of a pixel.
func centre(x, y int) ink.Point { return ink.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5} }

// mix goes from one colour to another as share goes from 0 to 1.
func mix(from, to color.RGBA, share float64) color.RGBA {
	if share == 0 { // as most of what the drop shows
		return from
	}
	level := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + (float64(b)-float64(a))*share)) }
	return color.RGBA{level(from.R, to.R), level(from.G, to.G), level(from.B, to.B), 0xff}
}
