package main

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// placementFlags say where make puts the seams.
type placementFlags struct {
	flags *pflag.FlagSet
	rule  layout.SeamRule
	avoid []job.Avoided
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
		return job.WrongWords(errors.New("--seams even leaves every seam in its place and --avoid moves some: give one " +
			"of them"))
	}
	return nil
}

// writePlacement says in a line where the seams went. sheets is how many there are.
func writePlacement(w io.Writer, p job.Placement, sheets int) error {
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
type avoidValue struct{ places *[]job.Avoided }

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
	*v.places = append(*v.places, job.Avoided{X: n[0], Y: n[1], Radius: n[2]})
	return nil
}

func (v *avoidValue) String() string { return "" }
func (v *avoidValue) Type() string   { return "X,Y,R" }
