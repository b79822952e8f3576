package proof

import (
	"math"
	"slices"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// room is the light that comes from beyond the board: a dark room, just above black so that the board's edge can be told.
var room = texture.Light{0.0030, 0.0030, 0.0037}

// PaperReflectance is how much light the bare edge of a sheet throws back, as a share of what falls on it: uncoated white paper
// (common practice, no source).
const PaperReflectance = 0.80

// board is what rays land on. Places are optical mm from the axis, which meets the board's middle.
type board struct {
	light                     layout.Light
	level                     layout.Level
	surround                  *texture.Light // what fills the board beyond the picture; nil where the picture goes on
	halfWidthMM, halfHeightMM float64
	turn                      flip.Turn
	picture                   *texture.Texture
	pictureWidthMM            float64
	pictureHeightMM           float64
	pxPerMM                   float64 // the artwork's pixels on a millimetre of board
	seamMM                    float64 // width of a seam's line
	downMM, acrossMM          []float64
}

func newBoard(p layout.Plan, picture *texture.Texture, seamMM float64) board {
	b := board{
		halfWidthMM: p.Backdrop.WidthMM / 2, halfHeightMM: p.Backdrop.HeightMM / 2,
		turn: p.Drop.Reverses.Turn(), picture: picture,
		pictureWidthMM: p.Picture.WidthMM, pictureHeightMM: p.Picture.HeightMM,
		seamMM: seamMM,
		light:  p.Light(), level: p.Level(),
	}
	if colour, ok := p.Backdrop.Surround.Colour(); ok {
		light := texture.Linear(colour)
		b.surround = &light
	}
	w, _ := picture.Size()
	b.pxPerMM = float64(w) / p.Picture.WidthMM
	for _, s := range p.Seams { // every seam of a column or row lies on one line
		if s.Axis == "x" {
			b.downMM = append(b.downMM, s.AtMM-b.halfWidthMM)
		} else {
			b.acrossMM = append(b.acrossMM, s.AtMM-b.halfHeightMM)
		}
	}
	slices.Sort(b.downMM)
	slices.Sort(b.acrossMM)
	b.downMM, b.acrossMM = slices.Compact(b.downMM), slices.Compact(b.acrossMM)
	return b
}

// at is the light that a place of the board's plane sends back, averaged over a patch: the print as lamps light it, bare paper at its seams.
func (b *board) at(x, y float64, over patch) texture.Light {
	acrossMM, downMM := math.Sqrt(over.acrossMM2/pixelVariance), math.Sqrt(over.downMM2/pixelVariance)
	on := covered(b.halfWidthMM-math.Abs(x), acrossMM) * covered(b.halfHeightMM-math.Abs(y), downMM)
	if on == 0 {
		return room
	}
	print := b.print(x, y, acrossMM, downMM, over)
	boardX, boardY := x+b.halfWidthMM, y+b.halfHeightMM
	if b.level.On() {
		print = print.Scale(float32(b.level.Gain(boardX, boardY)))
	}
	if b.seamMM > 0 {
		down, across := b.line(b.downMM, x, acrossMM), b.line(b.acrossMM, y, downMM)
		print = mix(print, texture.Light{PaperReflectance, PaperReflectance, PaperReflectance}, down+across-down*across)
	}
	return mix(room, print.Scale(float32(b.light.At(boardX, boardY))), on)
}

// print is what is printed at a place: the picture, or what surrounds it.
func (b *board) print(x, y, acrossMM, downMM float64, over patch) texture.Light {
	within := 1.0
	if b.surround != nil {
		within = covered(b.pictureWidthMM/2-math.Abs(x), acrossMM) * covered(b.pictureHeightMM/2-math.Abs(y), downMM)
		if within == 0 {
			return *b.surround
		}
	}
	u, w := x/b.pictureWidthMM+0.5, y/b.pictureHeightMM+0.5
	if b.turn.ReverseX {
		u = 1 - u
	}
	if b.turn.ReverseY {
		w = 1 - w
	}
	picture := b.picture.At(u, w, math.Sqrt(over.pictureMM2/pixelVariance)*b.pxPerMM)
	if within == 1 {
		return picture
	}
	return mix(*b.surround, picture, within)
}

// line is the share of a patch about x that the nearest seam's line covers.
func (b *board) line(seams []float64, x, spanMM float64) float64 {
	i, _ := slices.BinarySearch(seams, x)
	var share float64
	for _, k := range [2]int{i - 1, i} {
		if k >= 0 && k < len(seams) {
			from, to := seams[k]-b.seamMM/2-x, seams[k]+b.seamMM/2-x
			share += covered(to, spanMM) - covered(from, spanMM)
		}
	}
	return share
}

// covered is the share of a patch that lies on the near side of an edge that is insideMM away. The patch weighs most in its middle and nothing
// at its ends (a tent), with the variance of an even square of spanMM; 0 or 1 when the patch is a point.
func covered(insideMM, spanMM float64) float64 {
	half := spanMM / math.Sqrt2
	switch {
	case insideMM >= half: // a point is wholly on one side
		return 1
	case insideMM <= -half:
		return 0
	case insideMM < 0:
		near := 1 + insideMM/half
		return near * near / 2
	default:
		near := 1 - insideMM/half
		return 1 - near*near/2
	}
}

// mix goes from a to b as share goes from 0 to 1.
func mix(a, b texture.Light, share float64) texture.Light {
	return a.Scale(float32(1 - share)).Add(b.Scale(float32(share)))
}
