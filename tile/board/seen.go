package board

import "dropsheet/tile/texture"

// Seen is what a patch of the board shows. Its four shares add up to 1.
type Seen struct {
	Print texture.Light // what the printed part of the patch sends back, in even light

	Picture  float64 // the share that is picture, or its outermost colours going on
	Surround float64 // the share that is printed with the surround's colour
	Paper    float64 // the share that is a sheet's bare paper
	None     float64 // the share without a sheet, or beyond the board
}

// Under is the patch's light where lamps give a share of their full light, bare paper sends back so much of
// it, and none is what comes from where there is no sheet.
func (s Seen) Under(lamps float32, paper, none texture.Light) texture.Light {
	light := s.Print
	if s.Paper > 0 {
		light = light.Add(paper.Scale(float32(s.Paper)))
	}
	light = light.Scale(lamps)
	if s.None > 0 {
		light = light.Add(none.Scale(float32(s.None)))
	}
	return light
}

// At is what a patch about a place shows.
func (s *Surface) At(xMM, yMM float64, over Patch) Seen { return s.seen(xMM, yMM, over, false) }

// AtRay is what the patch of one ray shows, of a set that together covers what is looked at: the picture need
// not be averaged over all of the patch's length. near is what the picture shows thereabouts, or nil.
func (s *Surface) AtRay(xMM, yMM float64, over Patch, near *Expansion) Seen {
	if near == nil || !near.Holds(xMM, yMM) {
		return s.seen(xMM, yMM, over, true)
	}
	seam := 0.0
	if near.seams {
		wideMM, highMM := over.spansMM()
		seam = s.seams.share(xMM, yMM, wideMM, highMM)
	}
	return s.compose(xMM, yMM, near.light(xMM, yMM), 1, 1, seam)
}

func (s *Surface) seen(xMM, yMM float64, over Patch, oneOfMany bool) Seen {
	wideMM, highMM := over.spansMM()
	out := s.onBoard(xMM, yMM, wideMM, highMM, over, oneOfMany)
	if s.paper != nil && out.None > 0 {
		bare := max(0, s.paper.share(xMM, yMM, wideMM, highMM)-(1-out.None))
		out.Paper += bare
		out.None -= bare
	}
	return out
}

// onBoard is what the board itself shows, without the white of a sheet that goes on beyond it.
func (s *Surface) onBoard(xMM, yMM, wideMM, highMM float64, over Patch, oneOfMany bool) Seen {
	sheet := s.board.share(xMM, yMM, wideMM, highMM)
	if sheet > 0 && !s.sheets.all {
		sheet *= s.sheets.share(xMM, yMM, wideMM, highMM)
	}
	if sheet == 0 {
		return Seen{None: 1}
	}
	seam := 0.0
	if s.seams.widthMM > 0 {
		seam = s.seams.share(xMM, yMM, wideMM, highMM)
	}
	light, within := s.shown(xMM, yMM, over, oneOfMany)
	return s.compose(xMM, yMM, light, within, sheet, seam)
}

// compose is what a patch shows: a share of it lies within the picture, whose light is told, a share on sheets,
// and a share of that on seams.
func (s *Surface) compose(xMM, yMM float64, light texture.Light, within, sheet, seam float64) (out Seen) {
	if within == 1 && sheet == 1 && seam == 0 {
		out.Print, out.Picture = light, 1 // as most places have it
	} else {
		picture := min(within, sheet) // for all of the picture lies on sheets
		rest := (sheet - picture) * (1 - seam)
		out = Seen{Picture: picture * (1 - seam), Paper: sheet * seam, None: 1 - sheet}
		out.Print = light.Scale(float32(out.Picture))
		if s.surround == nil {
			out.Paper += rest
		} else {
			out.Surround = rest
			out.Print = out.Print.Add(s.surround.Scale(float32(rest)))
		}
	}
	if s.level.On() {
		out.Print = out.Print.Scale(float32(s.level.Gain(xMM, yMM)))
	}
	return out
}

// shown is the picture's light in a patch, and the share of the patch that lies within the picture.
func (s *Surface) shown(xMM, yMM float64, over Patch, oneOfMany bool) (texture.Light, float64) {
	at := s.hanging.Near(xMM, yMM, over.widestMM())
	within := s.within(at, xMM, yMM, over)
	if within == 0 {
		return texture.Light{}, 0
	}
	if oneOfMany {
		return s.picture.At(at.U, at.V, s.narrowPx(over, &at)), within
	}
	px := over.onPicture(at, s.widthPx, s.heightPx)
	return s.picture.Skewed(at.U, at.V, px.XX*sideSquared, px.XY*sideSquared, px.YY*sideSquared), within
}
