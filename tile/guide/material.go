package guide

import (
	"fmt"
	"strconv"
	"strings"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// solids are the materials that are bought in shape; all others flow.
var solids = map[string]string{"acrylic": "acrylic", "crown-glass": "crown glass"}

// solid tells whether the drop or rod is of a material that is known to be solid.
func (j Job) solid() bool { return solids[j.Plan.Drop.Material] != "" }

// material says what the drop or rod is made of; nothing where only its refractive index is known, as in old job files.
func (j Job) material() string {
	name := j.Plan.Drop.Material
	if _, err := strconv.ParseFloat(name, 64); err == nil {
		return ""
	}
	if words := solids[name]; words != "" {
		return words
	}
	if sugar, ok := strings.CutPrefix(name, "syrup-"); ok {
		return "syrup of " + sugar + noBreak + "% sugar"
	}
	return strings.ReplaceAll(name, "-", " ")
}

// body names what refracts: a falling drop, a solid ball, or a rod.
func (j Job) body() string {
	switch {
	case j.rod():
		return "rod"
	case j.solid():
		return "ball"
	default:
		return "drop"
	}
}

// rod tells whether it is a rod, upright or level.
func (j Job) rod() bool { return j.Plan.Drop.Body != flip.Ball }

// across is its diameter.
func (j Job) across() string { return short(j.Plan.Drop.DiameterMM, 2) + noBreak + "mm" }

// oblate tells whether it is a drop out of round.
func (j Job) oblate() bool { return j.Plan.Sight().Drop.Oblate() }

// measures says how large it is.
func (j Job) measures() string {
	if d := j.Plan.Sight().Drop; j.oblate() {
		return short(2*d.RadiusMM(), 2) + noBreak + "mm wide and " + short(2*d.HalfHeightMM(), 2) + noBreak + "mm high"
	}
	return j.across() + " across"
}

// bodyAtLength describes it with what it is made of and its size.
func (j Job) bodyAtLength() string {
	of := ""
	if m := j.material(); m != "" {
		of = " of " + m
	}
	text := "a falling drop" + of
	switch {
	case j.rod():
		text = j.stands() + " " + j.rodToGet()
	case j.solid():
		text = "a ball" + of
	}
	text += ", " + j.measures()
	if j.oblate() {
		text += " (as much as a ball " + j.across() + " across)"
	}
	return text
}

// oneWay says what a rod does not do for the picture, and how much of the print shows for that.
func (j Job) oneWay() string {
	p := j.Plan
	sees, whole, way := shot.Of(p).Coverage().Sees.HeightMM, p.Backdrop.HeightMM, "high"
	if p.Drop.Body == flip.LevelRod {
		sees, whole, way = shot.Of(p).Coverage().Sees.WidthMM, p.Backdrop.WidthMM, "wide"
	}
	text, stretched, but := "A rod squeezes the picture across itself and not along. ",
		", and what it sees there looks stretched", ", but not squeezed, so that the picture looks stretched that way"
	switch p.Picture.Look {
	case layout.Bulged:
	case layout.Straight:
		text, stretched, but = text+"The print makes up for that. ", "", ""
	default:
		text, stretched, but = text+"The print makes up for part of that. ",
			", and what it sees there still looks stretched", ", still somewhat stretched"
	}
	if sees >= whole {
		return text + "Along the rod the frame sees all of the print" + but + "."
	}
	return text + fmt.Sprintf("Along it the frame sees the middle %s of a print that is %s %s%s.", strong(length(sees)),
		length(whole), way, stretched)
}

// stands says how a rod is held.
func (j Job) stands() string {
	if j.Plan.Drop.Body == flip.UprightRod {
		return "an upright"
	}
	return "a level"
}

// rodToGet says what does for the rod.
func (j Job) rodToGet() string {
	switch m := j.material(); {
	case m == "":
		return "glass rod or tube"
	case j.solid():
		return "rod of " + m
	default:
		return "glass tube filled with " + m
	}
}
