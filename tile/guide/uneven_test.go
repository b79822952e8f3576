package guide

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// pinched are seam costs by which two seams each way come as close as they may.
func pinched(p layout.Plan) layout.SeamCosts {
	toward := func(lengthMM float64) []float64 {
		costs := make([]float64, int(math.Ceil(lengthMM))+1)
		for i := range costs {
			costs[i] = min(math.Abs(float64(i)-0.3*lengthMM), math.Abs(float64(i)-0.3*lengthMM-40))
		}
		return costs
	}
	return layout.SeamCosts{StepMM: 1, Down: toward(p.Backdrop.WidthMM), Across: toward(p.Backdrop.HeightMM)}
}

// Seams may slide, so that neighbouring lines come close: figures and headings still stand clear of each other.
func TestUnevenCells(t *testing.T) {
	for _, c := range []struct {
		paper      string
		distanceMM float64
		light      layout.Corner
	}{{"A4", 400, layout.TopLeft}, {"A4", 500, layout.BottomRight}, {"A3", 740, layout.TopRight},
		{"100x150mm", 340, layout.BottomLeft}} {
		t.Run(fmt.Sprintf("%s at %g mm", c.paper, c.distanceMM), func(t *testing.T) {
			s := on(t, c.paper)
			s.DistanceMM, s.LightFrom = c.distanceMM, c.light
			j := jobOf(t, s)
			even := j.Plan
			placed, err := even.WithSeams(pinched(even), nil)
			require.NoError(t, err)
			j.Plan = placed.Plan
			narrowest := even.Backdrop.WidthMM
			for _, sheet := range j.Plan.Sheets {
				narrowest = min(narrowest, sheet.Cell.WidthMM, sheet.Cell.HeightMM)
			}
			require.Less(t, narrowest, 0.9*min(even.Sheets[0].Cell.WidthMM, even.Sheets[0].Cell.HeightMM), "cells are uneven")
			requireNoWordsOverlap(t, worded(t, j))
		})
	}
}
