package report

import (
	"strconv"
	"strings"

	"dropsheet/flip"
	"dropsheet/layout"
)

// solids are the materials that are bought in shape; all others flow.
var solids = map[string]string{"acrylic": "acrylic", "crown-glass": "crown glass"}

// Solid tells whether the drop or rod is of a material that is known to be solid.
func Solid(d layout.Drop) bool { return solids[d.Material] != "" }

// Material says what the drop or rod is made of; nothing where only its refractive index is known.
func Material(d layout.Drop) Text {
	if _, err := strconv.ParseFloat(d.Material, 64); err == nil {
		return nil
	}
	if words := solids[d.Material]; words != "" {
		return say(words)
	}
	if sugar, ok := strings.CutPrefix(d.Material, "syrup-"); ok {
		if n, err := strconv.ParseFloat(sugar, 64); err == nil {
			return say("syrup of %s sugar", Figure{Value: n / 100, Unit: Percent, Decimals: 2})
		}
	}
	return say(strings.ReplaceAll(d.Material, "-", " "))
}

// Body is the word for what refracts: a falling drop, a solid ball, or a rod.
func Body(d layout.Drop) string {
	switch {
	case d.Body.Rod():
		return "rod"
	case Solid(d):
		return "ball"
	}
	return "drop"
}

// Across is its diameter; of a drop out of round, that of the ball of its volume; of one that hangs its greatest width.
func Across(d layout.Drop) Figure {
	return Figure{Path: "drop.diameter_mm", Value: d.DiameterMM, Unit: MM, Decimals: 2}
}

// Measures says how large it is.
func Measures(p layout.Plan) Text {
	switch d := p.Sight().Drop; {
	case d.Body == flip.Hanging:
		return say("%s wide and %s high", Across(p.Drop), Figure{Value: d.AboveMM() + d.BelowMM(), Unit: MM, Decimals: 2})
	case d.Oblate():
		return say("%s wide and %s high", Figure{Value: 2 * d.RadiusMM(), Unit: MM, Decimals: 2},
			Figure{Value: 2 * d.HalfHeightMM(), Unit: MM, Decimals: 2})
	}
	if p.Drop.WallMM > 0 {
		return say("%s across, its wall %s", Across(p.Drop), Figure{Path: "drop.wall_mm", Value: p.Drop.WallMM, Unit: MM,
			Decimals: 2})
	}
	return say("%s across", Across(p.Drop))
}

// RodToGet says what serves as the rod.
func RodToGet(d layout.Drop) Text {
	switch m := Material(d); {
	case m == nil:
		return say("glass rod or tube")
	case Solid(d):
		return say("rod of %s", m)
	case d.WallMM > 0:
		return say("tube of %s filled with %s", wallOf(d), m)
	default:
		return say("glass tube filled with %s", m)
	}
}

// wallOf says what a tube's wall is made of.
func wallOf(d layout.Drop) Text {
	d.Material = d.WallOf
	if m := Material(d); m != nil {
		return m
	}
	return say("an index of %s", Figure{Path: "drop.wall_index", Value: d.WallIndex, Decimals: 4})
}

// bodyAndSize describes what refracts with what it is made of and its size.
func (r *Report) bodyAndSize() Text {
	p := r.shot.Plan
	of := Text(nil)
	if m := Material(p.Drop); m != nil {
		of = say(" of %s", m)
	}
	text := say("a falling drop%s", of)
	switch {
	case p.Drop.Body == flip.Hanging:
		text = say("a hanging drop%s", of)
	case p.Drop.Body == flip.UprightRod:
		text = say("an upright %s", RodToGet(p.Drop))
	case p.Drop.Body == flip.LevelRod:
		text = say("a level %s", RodToGet(p.Drop))
	case Solid(p.Drop):
		text = say("a ball%s", of)
	}
	return say("%s, %s", text, Measures(p))
}

// bodyAtLength is the same, with the size that counts of a drop out of round.
func (r *Report) bodyAtLength() Text {
	text := r.bodyAndSize()
	if p := r.shot.Plan; p.Drop.Body != flip.Hanging && p.Sight().Drop.Oblate() {
		text = say("%s (as much as a ball %s across)", text, Across(p.Drop))
	}
	return text
}

// standsStill tells whether a body may: a rod, or a ball of glass; drops of a liquid fall.
func standsStill(d layout.Drop) bool { return d.Body != flip.Ball || Solid(d) }
