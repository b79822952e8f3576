package texture

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// Hung is the artwork on its board as it hangs: turned as the drop asks, in its surround. Places are board millimetres.
// It is safe for use by many goroutines.
type Hung struct {
	picture *Texture
	bent    *layout.Hanging // nil for a plain picture, which the rest is for
	paper   Papered
	on      layout.Rect
	turn    flip.Turn
	beyond  *Light  // the surround's colour; nil where the picture's outermost pixels go on
	pxPerMM float64 // the artwork's pixels on a millimetre of board
}

// Hang puts the artwork on a plan's board. A picture that is not plain costs some hundredths of a second: hang it once.
func Hang(p layout.Plan, picture *Texture) Hung {
	h := Hung{picture: picture, paper: Paper(p), on: p.PictureOnBoard(), turn: p.Drop.Reverses.Turn()}
	if !p.Picture.Plain() {
		h.bent = p.Hang()
	}
	w, _ := picture.Size()
	h.pxPerMM = float64(w) / h.on.WidthMM
	if c, ok := p.Backdrop.Surround.Colour(); ok {
		light := picture.FromArtwork(c)
		h.beyond = &light
	}
	return h
}

// At is the light of a place, averaged over about spanMM. From board to picture: u = (x - picture's left) /
// its width, likewise down, each axis that the drop reverses running the other way; a bent picture as
// layout.Hanging has it. Past the board's edge it is what a bleed prints. Where nothing is printed it is
// white paper, and the dark of the room where there is no sheet.
func (h Hung) At(xMM, yMM, spanMM float64) Light {
	if h.bent != nil {
		return h.bentAt(xMM, yMM, spanMM)
	}
	u, v := (xMM-h.on.XMM)/h.on.WidthMM, (yMM-h.on.YMM)/h.on.HeightMM
	inside := float32(1)
	if h.beyond != nil {
		inside = covered(min(xMM-h.on.XMM, h.on.RightMM()-xMM), spanMM) * covered(min(yMM-h.on.YMM, h.on.BottomMM()-yMM),
			spanMM)
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
		return h.beyond.Mix(light, inside)
	}
	return light
}

// bentAt is At for a picture that is not plain.
func (h Hung) bentAt(xMM, yMM, spanMM float64) Light {
	on := float32(h.paper.Share(xMM, yMM, spanMM, spanMM))
	if on == 0 {
		return Room
	}
	light := Light{1, 1, 1}
	if h.beyond != nil {
		light = *h.beyond
	}
	at := h.bent.Near(xMM, yMM, spanMM)
	if inside := covered(at.InsideMM, spanMM); inside > 0 {
		light = light.Mix(h.picture.Skewed(at.U, at.V, at.UX*spanMM, at.UY*spanMM, at.VX*spanMM, at.VY*spanMM), inside)
	}
	return Room.Mix(light, on)
}

// covered is the share of a patch, spanMM wide, that lies on the near side of an edge whose middle is
// insideMM away from it.
func covered(insideMM, spanMM float64) float32 {
	if spanMM <= 0 {
		if insideMM >= 0 {
			return 1
		}
		return 0
	}
	return float32(max(0, min(1, 0.5+insideMM/spanMM)))
}
