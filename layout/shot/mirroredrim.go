package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// MirroredRim is the ring of the drop in which its front mirrors the print once more, the way up it hangs and thin,
// from such shares of its visible radius outward. A share is 0 along a rod, and 1 where the print is not mirrored.
type MirroredRim struct {
	AcrossFromShare float64 `json:"across_from_share"` // at the left and right
	DownFromShare   float64 `json:"down_from_share"`   // above and below
	// DarkSurround is how large a dark surround, print included, keeps the rim dark between the picture in the drop and
	// the mirrored one: it is what the drop sees there. It is nothing where no board is large enough.
	DarkSurround layout.Size `json:"dark_surround_mm,omitzero"`
}

// MirroredRim works it out, by the middles of the picture's sides.
func (s Shot) MirroredRim() (m MirroredRim) {
	turn, sight := s.Drop.Reverses.Turn(), s.Sight()
	halfWidthMM, halfHeightMM := sight.OutlineMM()
	// from is the share at which a place of the board is mirrored, and needs how far off the drop sees there.
	from := func(place flip.Vec) (share, needsMM float64) {
		for _, g := range sight.Glints(place) {
			if g.Way != flip.ByFront {
				continue
			}
			share = sight.ShareAt(g.XMM, g.YMM)
			l, ok := sight.Trace(sight.PinholeRay(g.XMM, g.YMM))
			if !ok || !l.Through {
				return share, math.Inf(1)
			}
			awayMM := math.Hypot(place.X, place.Y)
			return share, math.Max(awayMM, math.Abs(l.XMM*place.X+l.YMM*place.Y)/awayMM)
		}
		return 1, math.Inf(1)
	}
	m.DarkSurround = layout.Size{WidthMM: s.Picture.WidthMM, HeightMM: s.Picture.HeightMM}
	if turn.ReverseX && !math.IsInf(halfWidthMM, 0) {
		share, needsMM := from(flip.Vec{X: s.Picture.WidthMM / 2, Z: s.Drop.DistanceMM})
		m.AcrossFromShare, m.DarkSurround.WidthMM = share, 2*needsMM
	}
	if turn.ReverseY && !math.IsInf(halfHeightMM, 0) {
		share, needsMM := from(flip.Vec{Y: s.Picture.HeightMM / 2, Z: s.Drop.DistanceMM})
		m.DownFromShare, m.DarkSurround.HeightMM = share, 2*needsMM
	}
	if max(m.DarkSurround.WidthMM, m.DarkSurround.HeightMM) > layout.MaxLengthMM {
		m.DarkSurround = layout.Size{}
	}
	return m
}
