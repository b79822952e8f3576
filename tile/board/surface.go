package board

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// Surface is a plan's board with the artwork on it. It is safe for use by many goroutines.
type Surface struct {
	// CentreMM is the board's middle, which the axis meets.
	CentreMM layout.Point

	hanging           *layout.Hanging
	picture           *texture.Texture
	widthPx, heightPx float64        // of the artwork
	board             extent         // what is printed or bare
	paper             *extent        // of a sheet that is not cut, white beyond the board; the room begins beyond it
	print             extent         // of a plain picture that something else surrounds; endless for any other
	surround          *texture.Light // the surround's colour; nil where there is none, or the picture goes on
	level             layout.Level
	sheets            sheets
	seams             seams
}

// New is the board as it hangs, with its print levelled for the lamps if the plan asks for that. A picture that
// is not plain costs some hundredths of a second.
func New(p layout.Plan, picture *texture.Texture) *Surface {
	on, b := p.PictureOnBoard(), p.Backdrop
	s := &Surface{
		CentreMM: layout.Point{XMM: b.WidthMM / 2, YMM: b.HeightMM / 2},
		hanging:  p.Hang(), picture: picture, level: p.Level(), sheets: newSheets(p), seams: newSeams(p),
		board: extent{0, 0, b.WidthMM, b.HeightMM}, print: endless,
	}
	if b.Uncut {
		paper := b.PaperOnBoard(p.Sheets[0])
		s.paper = &extent{paper.XMM, paper.YMM, paper.RightMM(), paper.BottomMM()}
	}
	w, h := picture.Size()
	s.widthPx, s.heightPx = float64(w), float64(h)
	if c, ok := b.Surround.Colour(); ok {
		light := picture.FromArtwork(c)
		s.surround = &light
		s.print = extent{on.XMM, on.YMM, on.RightMM(), on.BottomMM()}
	}
	return s
}

// NewDrawing is the board for a drawing of it: in the artwork's own light, and beyond its edge as a bleed
// prints it.
func NewDrawing(p layout.Plan, picture *texture.Texture) *Surface {
	s := New(p, picture)
	s.board, s.paper, s.level = endless, nil, layout.Level{}
	return s
}

// WithSeams is the surface with its seams as lines of bare paper, widthMM wide; without any for 0.
func (s *Surface) WithSeams(widthMM float64) *Surface {
	out := *s
	out.seams.widthMM = widthMM
	return &out
}

// narrowPx is the side of the square, in the artwork's pixels, that the picture need be averaged over for one ray
// of a set with such a patch.
func (s *Surface) narrowPx(over Patch, at *layout.Shown) float64 {
	if s.hanging.Plain() { // which has square pixels, and is asked for most
		return over.narrowSpan() * math.Abs(at.UX) * s.widthPx
	}
	return over.onPicture(*at, s.widthPx, s.heightPx).narrowSpan()
}

// Surround is the light of the colour that surrounds the picture, before it is levelled; ok is false where
// there is none: bare paper is beyond the picture then, or the picture goes on.
func (s *Surface) Surround() (light texture.Light, ok bool) {
	if s.surround == nil {
		return texture.Light{}, false
	}
	return *s.surround, true
}
