package report

import (
	"strings"

	"dropsheet/layout"
)

// Hazard is a danger of the job, named in a few words.
type Hazard string

// The dangers that jobs have, gravest first; some jobs lack some of them (common practice, no source).
const (
	EthanolVapour Hazard = "ethanol vapour"
	HotLamps      Hazard = "hot lamps near paper"
	MainsByWater  Hazard = "mains near water"
	Glass         Hazard = "glass"
	LargeBoard    Hazard = "a board over a metre"
	Knives        Hazard = "knives"
	SprayGlue     Hazard = "spray glue"
	BoardDust     Hazard = "dust and paint"
	Flashes       Hazard = "flashing light"
	Slips         Hazard = "wet floors and ladders"
)

// largeBoardMM is from where on a board is too much for one person (common practice, no source).
const largeBoardMM = 1000.0

// Hazards are those of a plan, gravest first.
func Hazards(p layout.Plan) []Hazard {
	glass := p.Drop.Material == "crown-glass" || p.Drop.Body.Rod() && p.Drop.Material != "acrylic"
	pasted := !p.Backdrop.Uncut
	var all []Hazard
	for _, h := range []struct {
		hazard Hazard
		there  bool
	}{
		{EthanolVapour, p.Drop.Material == "ethanol"}, {HotLamps, true}, {MainsByWater, true}, {Glass, glass},
		{LargeBoard, max(p.Backdrop.WidthMM, p.Backdrop.HeightMM)+2*layout.BorderMM > largeBoardMM}, {Knives, pasted},
		{SprayGlue, pasted}, {BoardDust, pasted}, {Flashes, true}, {Slips, true},
	} {
		if h.there {
			all = append(all, h.hazard)
		}
	}
	return all
}

// Care is a line of at most so many columns that says to read the cautions, and names the gravest.
func Care(p layout.Plan, columns int) string {
	line := "read the guide's cautions first: "
	for i, h := range Hazards(p) {
		next := ", " + string(h)
		if i == 0 {
			next = string(h)
		}
		if len(line)+len(next) > columns {
			break
		}
		line += next
	}
	return strings.TrimSuffix(line, ": ")
}
