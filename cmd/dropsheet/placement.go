package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/seamsight/seamcost"
	"dropsheet/tile/texture"
)

// placementFlags say where make puts the seams.
type placementFlags struct {
	flags *pflag.FlagSet
	rule  layout.SeamRule
	avoid []avoided
}

// avoided is a place of the picture that seams should keep out of.
type avoided struct {
	X          float64 `json:"x"` // 0 to 1, as it appears in the drop
	Y          float64 `json:"y"`
	Radius     float64 `json:"radius"`      // as a share of the picture's width
	CrossingMM float64 `json:"crossing_mm"` // how long seams run inside it all the same
}

// placement is what a job file tells of how its seams were placed. Nothing reads it back.
type placement struct {
	Rule    layout.SeamRule `json:"rule"`
	MovedMM float64         `json:"moved_mm"` // the furthest that a seam was slid from even cells
	// visibility of all seams as a share of even cells'; none where even cells cost nothing
	Cost  *float64  `json:"cost_share,omitempty"`
	Avoid []avoided `json:"avoid,omitempty"`
}

func (f *placementFlags) register(flags *pflag.FlagSet) {
	f.flags = flags
	add(flags, &f.rule, "seams", "rule", string(layout.SeamsLeast), layout.ParseSeamRule,
		"where seams run: least (slid to where they show least) or even (cells as even as they can be)")
	flags.Var(&avoidValue{&f.avoid}, "avoid", "keep seams out of a circle of the picture, a face say: centre X,Y from "+
		"0 to 1 as it appears in the drop, radius R as a share of the picture's width; repeat it for more")
}

// check refuses flags that contradict each other.
func (f *placementFlags) check() error {
	if f.rule == layout.SeamsEven && len(f.avoid) > 0 {
		return wrongWords{errors.New("--seams even leaves every seam in its place and --avoid moves some: give one of them")}
	}
	return nil
}

// place slides the seams of the plans, which differ in the lie of the paper only, as the flags ask. The first
// has the seams of --seams even.
func (f *placementFlags) place(plans []layout.Plan, picture *texture.Texture) (layout.Plan, placement, error) {
	even := plans[0]
	if f.rule == layout.SeamsEven {
		return even, placement{Rule: f.rule}, nil
	}
	var circles []layout.Circle
	for _, a := range f.avoid {
		circles = append(circles, even.CircleOnBoard(a.X, a.Y, a.Radius))
	}
	costs := seamcost.Sum(even.Backdrop.Board(), seamsight.New(even, picture, defaultSeamWidthMM).CostAt)
	best, err := layout.LeastSeen(plans, costs, circles)
	if err != nil {
		return layout.Plan{}, placement{}, err
	}
	told := placement{Rule: f.rule, MovedMM: best.MovedMM}
	if best.EvenCost > 0 {
		share := best.Cost / best.EvenCost
		told.Cost = &share
	}
	for i, a := range f.avoid {
		a.CrossingMM = best.Plan.CrossingMM(circles[i])
		told.Avoid = append(told.Avoid, a)
	}
	return best.Plan, told, nil
}

// warnings tell of the places that no layout keeps clear.
func (p placement) warnings() []string {
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

// writePlacement says in a line where the seams went. sheets is how many there are.
func writePlacement(w io.Writer, p placement, sheets int) error {
	if sheets == 1 {
		return nil
	}
	text := "cells as even as they can be"
	if p.Rule == layout.SeamsLeast {
		text = fmt.Sprintf("moved up to %.0f mm", p.MovedMM)
		if p.Cost != nil {
			text += fmt.Sprintf(", visibility cost %.2f of even cells", *p.Cost)
		}
	}
	_, err := fmt.Fprintf(w, "%-12s %s\n", "seams", text)
	return err
}

// avoidValue is a flag that adds a place each time it is given.
type avoidValue struct{ places *[]avoided }

func (v *avoidValue) Set(s string) error {
	parts := strings.Split(s, ",")
	var n [3]float64
	ok := len(parts) == len(n)
	for i := 0; ok && i < len(n); i++ {
		var err error
		n[i], err = strconv.ParseFloat(strings.TrimSpace(parts[i]), 64)
		ok = err == nil && n[i] >= 0 && n[i] <= 1
	}
	if !ok || n[2] == 0 {
		return fmt.Errorf("%q is not a place to avoid: write X,Y,R such as 0.5,0.4,0.1, each from 0 to 1 and R above 0", s)
	}
	*v.places = append(*v.places, avoided{X: n[0], Y: n[1], Radius: n[2]})
	return nil
}

func (v *avoidValue) String() string { return "" }
func (v *avoidValue) Type() string   { return "X,Y,R" }
