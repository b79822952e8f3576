package layout

import (
	"cmp"
	"fmt"
	"math"
)

// SeamRule says where seams go.
type SeamRule string

// The rules.
const (
	SeamsLeast SeamRule = "least" // where they show least
	SeamsEven  SeamRule = "even"  // so that cells are even
)

// ParseSeamRule reads a rule.
func ParseSeamRule(s string) (SeamRule, error) {
	return oneOf("rule for seams", s, SeamsLeast, SeamsEven)
}

// Plans are all the ways to lay the setup out with the fewest sheets, in even cells: first the one that Plan
// returns, then, when the paper may lie either way and takes as many sheets the other way round, that one.
// They differ in nothing else.
func (s Setup) Plans() ([]Plan, error) {
	first, err := s.Plan()
	if err != nil || s.Orientation != Auto {
		return []Plan{first}, err
	}
	s.Orientation = Portrait
	if first.Backdrop.Orientation == Portrait {
		s.Orientation = Landscape
	}
	// What followed from the sheets must stay as it is.
	s.DistanceMM, s.Fill = first.Drop.DistanceMM, first.Picture.Fill
	s.Print = first.Picture.Print()
	other, err := s.Plan()
	if err != nil || len(other.Sheets) != len(first.Sheets) {
		return []Plan{first}, nil // lying the other way the paper takes more sheets, or more than are allowed
	}
	return []Plan{first, other}, nil
}

// Placement is a plan whose seams were slid to where they show least.
type Placement struct {
	Plan     Plan
	Cost     float64 // of all seams together, in the unit of the costs
	EvenCost float64 // what even cells cost
	MovedMM  float64 // the furthest that a seam lies from its place in even cells
	burden   burden
}

// LeastSeen is the best placement for any of the plans, which differ in the lie of the paper only, as those
// of Setup.Plans do. What even cells cost is told of the first. Of plans that cost the same the first is
// taken.
//
// Of seams that are fixed the plans may hold some and not others: it is an error only when none holds them all.
func LeastSeen(plans []Plan, costs SeamCosts, avoid []Circle, fixed ...FixedSeam) (best Placement, err error) {
	evenCost, found := 0.0, false
	var refused error
	for i, p := range plans {
		placed, err := p.WithSeams(costs, avoid, fixed...)
		if err != nil {
			if refused = cmp.Or(refused, err); len(fixed) == 0 {
				return Placement{}, err
			}
			continue
		}
		if i == 0 {
			evenCost = placed.EvenCost
		}
		if a, b := placed.burden, best.burden; !found || cmp.Or(cmp.Compare(a.crossing, b.crossing),
			cmp.Compare(a.cost, b.cost)) < 0 {
			best, found = placed, true
		}
	}
	if !found {
		return Placement{}, refused
	}
	if evenCost > 0 {
		best.EvenCost = evenCost
	}
	return best, nil
}

// WithSeams cuts the same backdrop anew into as many columns and rows, so that its seams cost least within
// what each sheet can show and no cell measures less than 40 mm, or than even cells do. Seams keep out of the
// places to avoid if any such layout can; if none can, they cross them as little as possible (see
// CrossingMM). Seams are placed to half a millimetre. Those that are fixed stay where they were put, as long as that
// leaves cells that can be cut and that sheets can show.
func (p Plan) WithSeams(costs SeamCosts, avoid []Circle, fixed ...FixedSeam) (Placement, error) {
	b := p.Backdrop
	if err := costs.check(b.Board()); err != nil {
		return Placement{}, err
	}
	for _, c := range avoid {
		if err := c.check(); err != nil {
			return Placement{}, err
		}
	}
	if b.Uncut {
		if len(fixed) > 0 {
			return Placement{}, fmt.Errorf("there is no seam %s: the print hangs on one sheet\n"+
				"hint: leave the seam out, or ask for more sheets", fixed[0])
		}
		return Placement{Plan: p}, nil
	}
	lie := b.lie()
	across, err := newLine(lie.across, b.WidthMM, b.Columns, b.LightFrom.Left())
	if err != nil {
		return Placement{}, err
	}
	down, err := newLine(lie.down, b.HeightMM, b.Rows, b.LightFrom.Top())
	if err != nil {
		return Placement{}, err
	}
	unit := costs.unit()
	if err := across.fix(fixed, ColumnSeam); err != nil {
		return Placement{}, err
	}
	if err := down.fix(fixed, RowSeam); err != nil {
		return Placement{}, err
	}
	weigh := func(seam Seam, samples []float64) (w burden) {
		for _, c := range avoid {
			w.crossing += int64(math.Round(c.crossedMM(seam) * crossingSteps))
		}
		w.cost = int64(math.Round(costs.at(samples, seam.AtMM) / unit))
		return w
	}
	xs, lastX, okX := across.place(func(x float64) burden {
		return weigh(Seam{Axis: "x", AtMM: x, ToMM: b.HeightMM},
			costs.Down)
	})
	ys, lastY, okY := down.place(func(y float64) burden {
		return weigh(Seam{Axis: "y", AtMM: y, ToMM: b.WidthMM},
			costs.Across)
	})
	if !okX || !okY {
		return Placement{}, errNoRoom(fixed, across, down)
	}

	region := p.region(Size{b.WidthMM, b.HeightMM})
	slid, sheets := b.cut(xs, ys, region)
	if len(sheets) > len(p.Sheets) && len(fixed) == 0 {
		// Beyond a round or bent picture cells are bare. A seam is no reason to print on one more.
		xs, ys = across.even, down.even
		slid, sheets = b.cut(xs, ys, region)
	}
	p.Backdrop, p.Sheets, p.Seams = slid, sheets, slid.seams(sheets)
	return Placement{
		Plan: p, Cost: costs.of(xs, ys), EvenCost: costs.of(across.even, down.even),
		MovedMM: max(furthestMM(xs, across.even), furthestMM(ys, down.even)),
		burden:  lastX.add(lastY),
	}, nil
}

// furthestMM is the most that two lists differ.
func furthestMM(a, b []float64) (mm float64) {
	for i := range a {
		mm = max(mm, math.Abs(a[i]-b[i]))
	}
	return mm
}
