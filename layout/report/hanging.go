package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/flip/motion"
	"dropsheet/layout"
)

// hanging tells what a hanging drop is held by, how it grows and falls off, and what its shape does; nothing of any
// other body.
func (r *Report) hanging() []Fact {
	p := r.shot.Plan
	if p.Drop.Body != flip.Hanging {
		return nil
	}
	d := p.Sight().Drop
	held := Figure{Path: "drop.held_mm", Value: d.HeldMM, Unit: MM, Decimals: 2}
	volume := func(mm3 float64) Figure { return significant("", mm3, "µl", 3) }
	facts := []Fact{
		{Key: "drop.held", Text: say("it is held where it is %s wide, and holds %s: its shape is Young and Laplace's, "+
			"traced (surface tension pulls, weight draws it long)", strong(held), volume(d.VolumeMM3()))},
		{Key: "drop.flatter", Text: say("its side is flatter than it is round, by %s: a print made for a falling drop would "+
			"come out long in it", Figure{Value: d.CurvedUpMM()/d.RadiusMM() - 1, Unit: Percent})},
		{Key: "drop.neck", Text: say("the picture fills its round, %s wide and %s high, below where the side bends in to "+
			"the neck; neck and holder show above it, the holder black", Across(p.Drop),
			Figure{Value: 2 * d.HalfHeightMM(), Unit: MM, Decimals: 2})},
		{Key: "drop.still", Text: say("nothing falls: it hangs still once it has stopped trembling; a draught or a step " +
			"starts it again, and it shrinks as it dries")},
		{Key: "drop.grows", Text: r.fallsOff(held, volume)},
	}
	if m, ok := flip.MaterialByName(p.Drop.Material); ok {
		facts = append(facts, Fact{Key: "drop.tension", Text: say("surface tension and density at %s: %s; a little soap "+
			"more than halves the tension, and the drop falls", Figure{Value: m.TemperatureC, Unit: "°C", Decimals: 1},
			m.Liquid.Source)})
	}
	return facts
}

// fallsOff says how large it grows before it falls off, and what of it falls then.
func (r *Report) fallsOff(held Figure, volume func(float64) Figure) Text {
	d := r.shot.Sight().Drop
	widest := Figure{Value: flip.WidestHangingMM(d.HeldMM, d.CapillaryMM), Unit: MM, Decimals: 2, rounds: down}
	text := say("as liquid runs in it grows; from %s it falls off at a width of %s", held, widest)
	m, _ := flip.MaterialByName(r.shot.Drop.Material)
	across, err := motion.NozzleDropMM(d.HeldMM, m.Liquid)
	if err != nil {
		return text
	}
	return say("%s, and %s of it fall (Harkins and Brown 1919)", text, volume(math.Pi/6*across*across*across))
}

// otherWidthMM is by how much a hanging drop is tried wider and narrower.
const otherWidthMM = 0.1

// otherHanging says what a hanging drop of another width, as it grows or shrinks, does to the picture.
func (r *Report) otherHanging() Text {
	narrower, okNarrower := r.heightAtWidth(-otherWidthMM)
	wider, okWider := r.heightAtWidth(otherWidthMM)
	change := func(share float64) Figure {
		f := Figure{Value: share - 1, Unit: Percent}
		if math.Round(100*f.Value) > 0 {
			f.prefix = "+"
		}
		return f
	}
	by := length("", otherWidthMM)
	switch {
	case okNarrower && okWider:
		return say("%s narrower or wider: the picture %s or %s in height", by, change(narrower), change(wider))
	case okNarrower:
		return say("%s narrower: the picture %s in height; as much wider, it falls off", by, change(narrower))
	}
	return say("as it grows or shrinks by %s the picture changes", by)
}

// heightAtWidth is how high the picture shows in a drop so much wider, as a share of how high it is planned. ok is
// false where there is no such drop.
func (r *Report) heightAtWidth(widerMM float64) (share float64, ok bool) {
	planned, fill := r.shot.Sight(), min(r.shot.Picture.Fill, layout.DefaultFill) // further out another has no round
	other := planned
	other.Drop.DiameterMM += widerMM
	if other.Drop.CheckHanging() != nil {
		return 0, false
	}
	upMM, okUp := planned.ReachUpMM(fill)
	downMM, okDown := planned.ReachDownMM(fill)
	_, lower, okLower := other.SeenThrough(0, -downMM)
	_, upper, okUpper := other.SeenThrough(0, upMM)
	_, halfHeightMM := planned.OutlineMM()
	return (lower - upper) / (2 * fill * halfHeightMM), okUp && okDown && okLower && okUpper
}
