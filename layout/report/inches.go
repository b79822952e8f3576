package report

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/flip/units"
)

// Inches are told beside millimetres, never in place of them.
const Inches Unit = "in"

// sixteenths is how finely an inch is told: as a rule has it.
const sixteenths = 16

// leastInInchesMM is the least length that is told in inches too: of a smaller one sixteenths say nothing.
const leastInInchesMM = 10.0

// inInches is a length in inches, to the nearest sixteenth: "35", "23 5/16", "3/8".
func inInches(mm float64) Figure {
	n := int(math.Round(mm / units.MMPerInch * sixteenths))
	number := fmt.Sprint(n / sixteenths)
	if over := n % sixteenths; over > 0 {
		part := sixteenths
		for over%2 == 0 {
			over, part = over/2, part/2
		}
		number = fmt.Sprintf("%s %d/%d", number, over, part)
		number = strings.TrimPrefix(number, "0 ")
	}
	return Figure{Value: mm / units.MMPerInch, Unit: Inches, number: number}
}

// Beside is a text with inches beside its lengths, where the plan asks for them.
func (r *Report) Beside(t Text) Text {
	if !r.shot.Inches {
		return t
	}
	var all Text
	for i, p := range t {
		all = append(all, p)
		if p.Figure == nil || p.Figure.Unit != MM || p.Figure.Value < leastInInchesMM {
			continue
		}
		inches := say("%s", inInches(p.Figure.Value))
		if i >= 2 && t[i-1].Words == " x " && t[i-2].Figure != nil { // a size
			inches = size(inInches(t[i-2].Figure.Value), inInches(p.Figure.Value))
		}
		if i+1 < len(t) && strings.HasPrefix(t[i+1].Words, " (") { // more of it, in brackets already
			all = append(all, say(", %s", inches)...)
		} else {
			all = append(all, say(" (%s)", inches)...)
		}
	}
	return all
}

// beside is facts with inches beside their lengths, where the plan asks for them.
func (r *Report) beside(facts []Fact) []Fact {
	for i, f := range facts {
		if f.Key != "frame.sensor" { // whose size is a name
			facts[i].Text = r.Beside(f.Text)
		}
	}
	return facts
}
