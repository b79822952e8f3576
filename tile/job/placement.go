package job

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"dropsheet/layout"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/seamsight/seamcost"
	"dropsheet/tile/texture"
)

// Avoided is a place of the picture that seams should keep out of.
type Avoided struct {
	X          float64 `json:"x"` // 0 to 1, as it appears in the drop
	Y          float64 `json:"y"`
	Radius     float64 `json:"radius"`      // as a share of the picture's width
	CrossingMM float64 `json:"crossing_mm"` // how long seams run inside it all the same
}

// Placement is what a job file tells of how its seams were placed. Nothing reads it back.
type Placement struct {
	Rule    layout.SeamRule `json:"rule"`
	MovedMM float64         `json:"moved_mm"` // the furthest that a seam was slid from even cells
	// visibility of all seams as a share of even cells'; none where even cells cost nothing
	Cost  *float64  `json:"cost_share,omitempty"`
	Avoid []Avoided `json:"avoid,omitempty"`
	// WouldDo is the fewest sheets that would keep seams out of all places to avoid, where so few as there are can't.
	WouldDo int `json:"sheets_that_would_do,omitempty"`
}

// SeamWidthMM is the bare paper edge that shows at a seam cut and pasted by hand with care (common practice, no
// source).
const SeamWidthMM = 0.3

// PlaceSeams slides the seams of the plans, which differ in the lie of the paper only, as the order asks: by its rule,
// out of the places to avoid, and to where some shall be. The first plan has the seams of even cells. It returns ctx's
// error when ctx ends first.
func (o Order) PlaceSeams(ctx context.Context, plans []layout.Plan,
	picture *texture.Texture) (layout.Plan, Placement, error) {
	rule, avoid := o.Seams, o.Avoid
	even := plans[0]
	if rule == layout.SeamsEven {
		if len(o.SeamsAt) == 0 {
			return even, Placement{Rule: rule}, nil
		}
		placed, err := layout.LeastSeen(plans, layout.NoSeamCosts(even.Backdrop), nil, o.SeamsAt...)
		return placed.Plan, Placement{Rule: rule, MovedMM: placed.MovedMM}, WrongWords(err)
	}
	var circles []layout.Circle
	for _, a := range avoid {
		circles = append(circles, even.CircleOnBoard(a.X, a.Y, a.Radius))
	}
	model := seamsight.New(even, picture, SeamWidthMM)
	costs := seamcost.Sum(even.Backdrop.Board(), func(xMM, yMM float64, axis string) float64 {
		if ctx.Err() != nil {
			return 0
		}
		return model.CostAt(xMM, yMM, axis)
	})
	if err := ctx.Err(); err != nil {
		return layout.Plan{}, Placement{}, err
	}
	best, err := layout.LeastSeen(plans, costs, circles, o.SeamsAt...)
	if err != nil {
		if len(o.SeamsAt) > 0 {
			err = WrongWords(err)
		}
		return layout.Plan{}, Placement{}, err
	}
	placed := Placement{Rule: rule, MovedMM: best.MovedMM}
	if clear, ok := o.clear(plans, best, costs, circles); ok {
		if len(clear.Plan.Sheets) <= len(even.Sheets)+o.MoreSheets {
			clear.EvenCost, best, placed.MovedMM = best.EvenCost, clear, clear.MovedMM
		} else {
			placed.WouldDo = len(clear.Plan.Sheets)
		}
	}
	if best.EvenCost > 0 {
		share := best.Cost / best.EvenCost
		placed.Cost = &share
	}
	for i, a := range avoid {
		a.CrossingMM = best.Plan.CrossingMM(circles[i])
		placed.Avoid = append(placed.Avoid, a)
	}
	return best.Plan, placed, nil
}

// lookAhead is how many sheets more than allowed are looked at to say how many would do.
const lookAhead = 12

// clear is the layout with the fewest sheets more than the plans' that keeps seams out of all the places to avoid,
// where the best of those plans does not; ok is false where it does, or none can.
func (o Order) clear(plans []layout.Plan, best layout.Placement, costs layout.SeamCosts,
	avoid []layout.Circle) (clear layout.Placement, ok bool) {
	crossed := func(p layout.Plan) bool {
		return slices.ContainsFunc(avoid, func(c layout.Circle) bool { is, _ := p.Clear(c); return !is })
	}
	if !crossed(best.Plan) {
		return layout.Placement{}, false
	}
	var finer []layout.Plan
	for _, p := range plans {
		for _, f := range p.Finer(max(o.MoreSheets, lookAhead)) {
			if c, r := o.Setup.Columns, o.Setup.Rows; (c == 0 || f.Backdrop.Columns == c) && (r == 0 || f.Backdrop.Rows == r) {
				finer = append(finer, f)
			}
		}
	}
	slices.SortStableFunc(finer, func(a, b layout.Plan) int { return cmp.Compare(len(a.Sheets), len(b.Sheets)) })
	for i := 0; i < len(finer); {
		alike := i + 1 // of as many sheets the best one counts
		for alike < len(finer) && len(finer[alike].Sheets) == len(finer[i].Sheets) {
			alike++
		}
		placed, err := layout.LeastSeen(finer[i:alike], costs, avoid, o.SeamsAt...)
		if err == nil && !crossed(placed.Plan) && len(placed.Plan.Sheets) == len(finer[i].Sheets) {
			return placed, true
		}
		i = alike
	}
	return layout.Placement{}, false
}

// warnings tell of the places that no layout of that many sheets keeps clear.
func (p Placement) warnings(sheets int) []string {
	var crossed []string
	for _, a := range p.Avoid {
		if a.CrossingMM >= 0.1 {
			crossed = append(crossed, fmt.Sprintf("%.0f mm of seam cross %g,%g,%g", math.Ceil(a.CrossingMM), a.X, a.Y, a.Radius))
		}
	}
	if len(crossed) == 0 {
		return nil
	}
	mend := "take larger paper, a smaller circle, or another --orientation"
	if p.WouldDo > 0 {
		mend = fmt.Sprintf("%d sheets would do (--more-sheets %d), or %s", p.WouldDo, p.WouldDo-sheets, mend)
	}
	return []string{"no layout of so few sheets keeps seams out of every place to avoid: " + strings.Join(crossed, ", ") +
		"; " + mend}
}
