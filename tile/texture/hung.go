package texture

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// Hung is the artwork on its board as it hangs: turned as the drop asks, in its surround. Places are board millimetres.
// It is safe for use by many goroutines.
type Hung struct {
	picture *Texture
	on      layout.Rect
	turn    flip.Turn
	beyond  *Light  // the surround's colour; nil where the picture's outermost pixels go on
	pxPerMM float64 // the artwork's pixels on a millimetre of board
}

// Hang puts the artwork on a plan's board.
func Hang(p layout.Plan, picture *Texture) Hung {
	h := Hung{picture: picture, on: p.PictureOnBoard(), turn: p.Drop.Reverses.Turn()}
	w, _ := picture.Size()
	h.pxPerMM = float64(w) / h.on.WidthMM
	if c, ok := p.Backdrop.Surround.Colour(); ok {
		light := Linear(c)
		h.beyond = &light
	}
	return h
}

// At is the light of a place, averaged over about spanMM. From board to picture: u = (x - picture's left) / its width, likewise down, each axis that
// the drop reverses running the other way. Past the board's edge it is what a bleed prints.
func (h Hung) At(xMM, yMM, spanMM float64) Light {
	u, v := (xMM-h.on.XMM)/h.on.WidthMM, (yMM-h.on.YMM)/h.on.HeightMM
	inside := float32(1)
	if h.beyond != nil {
		inside = covered(min(xMM-h.on.XMM, h.on.RightMM()-xMM), spanMM) * covered(min(yMM-h.on.YMM, h.on.BottomMM()-yMM), spanMM)
		if inside == 0 {
			return *h.beyond
		}
	}
	if h.turn.ReverseX {
		u = 1 - u
	}
	if h.turn.ReverseY {
		v = 1 - v
	}
	light := h.picture.At(u, v, spanMM*h.pxPerMM)
	if inside < 1 {
		return h.beyond.mix(light, inside)
	}
	return light
}

// covered is the share of a patch, spanMM wide, that lies on the near side of an edge whose middle is insideMM away from it.
func covered(insideMM, spanMM float64) float32 {
	if spanMM <= 0 {
		if insideMM >= 0 {
			return 1
		}
		return 0
	}
	return float32(max(0, min(1, 0.5+insideMM/spanMM)))
}
