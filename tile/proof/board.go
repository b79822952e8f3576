package proof

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// PaperReflectance is how much light the bare edge of a sheet throws back, as a share of what falls on it:
// uncoated white paper (common practice, no source).
const PaperReflectance = 0.80

// paper is a sheet where nothing is printed.
var paper = texture.Light{PaperReflectance, PaperReflectance, PaperReflectance}

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
	pxPerMM                   float64         // the artwork's pixels on a millimetre of board
	bent                      *layout.Hanging // of a picture that is not plain; nil for one that is
	papered                   texture.Papered
	seamMM                    float64 // width of a seam's line
	down, across              []line
}

func newBoard(p layout.Plan, picture *texture.Texture, seamMM float64) board {
	b := board{
		halfWidthMM: p.Backdrop.WidthMM / 2, halfHeightMM: p.Backdrop.HeightMM / 2,
		turn: p.Drop.Reverses.Turn(), picture: picture,
		pictureWidthMM: p.Picture.WidthMM, pictureHeightMM: p.Picture.HeightMM,
		papered: texture.Paper(p), seamMM: seamMM,
		light: p.Light(), level: p.Level(),
	}
	if !p.Picture.Plain() {
		b.bent = p.Hang()
	}
	if colour, ok := p.Backdrop.Surround.Colour(); ok {
		light := picture.FromArtwork(colour)
		b.surround = &light
	}
	w, _ := picture.Size()
	b.pxPerMM = float64(w) / p.Picture.WidthMM
	b.down = newLines(p.Seams, "x", b.halfWidthMM, b.halfHeightMM)
	b.across = newLines(p.Seams, "y", b.halfHeightMM, b.halfWidthMM)
	return b
}

// at is the light that a place of the board's plane sends back, averaged over a patch: the print as lamps
// light it, bare paper at its seams. Where there is no sheet it is as dark as beyond the board. near is nil,
// or is told of a place near by.
func (b *board) at(x, y float64, over patch, near *footing) texture.Light {
	acrossMM, downMM := math.Sqrt(over.xx/pixelVariance), math.Sqrt(over.yy/pixelVariance)
	on := covered(b.halfWidthMM-math.Abs(x), acrossMM) * covered(b.halfHeightMM-math.Abs(y), downMM)
	boardX, boardY := x+b.halfWidthMM, y+b.halfHeightMM
	if on > 0 {
		on *= b.papered.Share(boardX, boardY, acrossMM, downMM)
	}
	if on == 0 {
		return texture.Room
	}
	gain := float32(1)
	if b.level.On() {
		gain = float32(b.level.Gain(boardX, boardY))
	}
	var print texture.Light
	switch {
	case near != nil && near.holds(x, y):
		print = near.print(x, y).Scale(gain)
	case b.bent != nil:
		print = b.bentPrint(boardX, boardY, over, gain)
	default:
		print = b.print(x, y, acrossMM, downMM, over).Scale(gain)
	}
	if b.seamMM > 0 {
		down, across := seamShare(b.down, b.seamMM, x, y, acrossMM, downMM),
			seamShare(b.across, b.seamMM, y, x, downMM, acrossMM)
		if seam := down + across - down*across; seam > 0 {
			print = mix(print, paper, seam)
		}
	}
	print = print.Scale(float32(b.light.At(boardX, boardY)))
	if on == 1 {
		return print
	}
	return mix(texture.Room, print, on)
}

// print is what is printed at a place when the picture is plain: the picture, or what surrounds it.
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
	picture := b.picture.At(u, w, math.Sqrt(over.narrow()/pixelVariance)*b.pxPerMM)
	if within == 1 {
		return picture
	}
	return mix(*b.surround, picture, within)
}

// covered is the share of a patch that lies on the near side of an edge that is insideMM away. The patch
// weighs most in its middle and nothing at its ends (a tent), with the variance of an even square of spanMM;
// 0 or 1 when the patch is a point.
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
