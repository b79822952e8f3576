package report

import (
	"dropsheet/flip"
)

// longAs says how long a picture is along the rod.
func (r *Report) longAs(overAcross float64) Text {
	times := Figure{Value: overAcross, Decimals: 1, rounds: down}
	if r.shot.Drop.Body == flip.LevelRod {
		return say("%s times as wide as high", times)
	}
	return say("%s times as high as wide", times)
}

// usesSheets tells which picture would use the sheets.
func (r *Report) usesSheets() []Fact {
	rib, ok := r.shot.Ribbon()
	if !ok {
		return nil
	}
	text := say("a picture %s would use the whole length of the sheets, on no more of them", r.longAs(rib.LongOverAcross))
	if rib.AsTheFrameAllows {
		text = say("a picture %s would show all that the frame sees along the rod, on no more sheets",
			r.longAs(rib.LongOverAcross))
	}
	return []Fact{{Key: "look.ribbon", Text: text}}
}

// checkShape says the same at a glance.
func (r *Report) checkShape() GlanceLine {
	rib, ok := r.shot.Ribbon()
	if !ok {
		return GlanceLine{}
	}
	use := "uses the sheets"
	if rib.AsTheFrameAllows {
		use = "fills the frame"
	}
	return isWell("shape", say("a picture %s %s (--crop)", r.longAs(rib.LongOverAcross), use))
}
