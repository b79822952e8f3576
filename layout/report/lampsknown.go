package report

import (
	"fmt"
	"slices"

	"dropsheet/layout"
)

// lampsKnown tells what is known of the lamps besides their places; nothing where that is all.
func (r *Report) lampsKnown() []Fact {
	lamps := r.shot.Lamps
	unlike := func(l layout.Lamp) bool {
		l.XMM, l.YMM, l.ZMM = lamps[0].XMM, lamps[0].YMM, lamps[0].ZMM
		return l != lamps[0]
	}
	every := len(lamps) > 1 && !slices.ContainsFunc(lamps, unlike)
	if every {
		lamps = lamps[:1]
	}
	var all []Text
	for i, l := range lamps {
		path := func(name string) string { return fmt.Sprintf("lamps_mm.%d.%s", i, name) }
		var known []Text
		if l.LuxAt1M > 0 {
			light := significant(path("lux_at_1m"), l.LuxAt1M, "lux", 6)
			light.grouped = true
			known = append(known, say("gives %s at 1 m", light))
		}
		if l.BeamDeg > 0 {
			known = append(known, say("has a beam of %s", Figure{Path: path("beam_deg"), Value: l.BeamDeg, Unit: Degrees,
				Decimals: 1}))
		}
		if l.SizeMM > 0 {
			known = append(known, say("shines with a face %s wide", length(path("size_mm"), l.SizeMM)))
		}
		if l.Aim != (layout.Aim{}) {
			known = append(known, r.pointsAt(path("aim"), l.Aim))
		}
		if len(known) > 0 {
			which := say("lamp %s", whole("", float64(i+1), Bare))
			if every {
				which = say("every lamp")
			}
			all = append(all, say("%s %s", which, join(known, ", ")))
		}
	}
	if len(all) == 0 {
		return nil
	}
	return []Fact{{Key: "light.known", Name: "lamps", Text: join(all, "; ")}}
}

// pointsAt says what a lamp is aimed at, other than the board's middle.
func (r *Report) pointsAt(path string, a layout.Aim) Text {
	if a.AtDrop {
		return say("points at the %s", r.body)
	}
	way := func(name string, mm float64, less, more string) Text {
		f := length(path+"."+name, mm)
		switch {
		case mm < 0:
			f.Path, f.Value = "", -mm
			return say("%s "+less, f)
		case mm > 0:
			return say("%s "+more, f)
		}
		return nil
	}
	var ways []Text
	for _, w := range []Text{way("x", a.XMM, "left", "right"), way("y", a.YMM, "up", "down")} {
		if w != nil {
			ways = append(ways, w)
		}
	}
	return say("points %s of the board's middle", join(ways, " and "))
}
