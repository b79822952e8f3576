package job

import (
	"fmt"
	"math"
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
}

// SeamWidthMM is the bare paper edge that shows at a seam cut and pasted by hand with care (common practice, no
// source).
const SeamWidthMM = 0.3

// PlaceSeams slides the seams of the plans, which differ in the lie of the paper only, as the order asks: by its rule,
// out of the places to avoid, and to where some shall be. The first plan has the seams of even cells.
func (o Order) PlaceSeams(plans []layout.Plan, picture *texture.Texture) (layout.Plan, Placement, error) {
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
	costs := seamcost.Sum(even.Backdrop.Board(), seamsight.New(even, picture, SeamWidthMM).CostAt)
	best, err := layout.LeastSeen(plans, costs, circles, o.SeamsAt...)
	if err != nil {
		if len(o.SeamsAt) > 0 {
			err = WrongWords(err)
		}
		return layout.Plan{}, Placement{}, err
	}
	placed := Placement{Rule: rule, MovedMM: best.MovedMM}
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

// warnings tell of the places that no layout keeps clear.
func (p Placement) warnings() []string {
	var crossed []string
	for _, a := range p.Avoid {
		if a.CrossingMM >= 0.1 {
			crossed = append(crossed, fmt.Sprintf("%.0f mm of seam cross %g,%g,%g", math.Ceil(a.CrossingMM), a.X, a.Y, a.Radius))
		}
	}
	if len(crossed) == 0 {
		return nil
	}
	return []string{"no layout of so few sheets keeps seams out of every place to avoid: " + strings.Join(crossed, ", ") +
		"; take larger paper, a smaller circle, or another --orientation"}
}
