package layout

import (
	"fmt"
	"math"
)

// SeamCosts is how plainly a seam would show, for every place that it could run: the sum along it, over the
// whole board. The unit is the caller's, the same in both directions; between samples costs go straight.
type SeamCosts struct {
	StepMM float64 // between samples, above 0
	// Down[i]: a seam that runs down the board at board x = i*StepMM; 0 and up, as far as the board's width
	Down   []float64
	Across []float64 // Across[i]: a seam that runs across it at board y = i*StepMM; likewise its height
}

// check refuses costs that do not cover the board.
func (c SeamCosts) check(board Rect) error {
	if !(c.StepMM > 0) {
		return fmt.Errorf("seam costs %gmm apart can't be\nhint: take a step above 0mm", c.StepMM)
	}
	for _, d := range []struct {
		what     string
		costs    []float64
		lengthMM float64
	}{{"down", c.Down, board.WidthMM}, {"across", c.Across, board.HeightMM}} {
		if float64(len(d.costs)-1)*c.StepMM < d.lengthMM-tolerance {
			return fmt.Errorf("%d costs of seams that run %s, %gmm apart, do not cover the board's %.1fmm\nhint: take more",
				len(d.costs), d.what, c.StepMM, d.lengthMM)
		}
		for i, v := range d.costs {
			if !(v >= 0 && v <= math.MaxFloat64) {
				return fmt.Errorf("cost %d of seams that run %s is %g: it must be 0 or more, and finite", i, d.what, v)
			}
		}
	}
	return nil
}

// at reads one direction's costs between its samples.
func (c SeamCosts) at(costs []float64, atMM float64) float64 {
	i, part := math.Modf(max(atMM, 0) / c.StepMM)
	k := min(int(i), len(costs)-1)
	next := min(k+1, len(costs)-1)
	return costs[k]*(1-part) + costs[next]*part
}

// of is what all lines between cells with these edges cost together.
func (c SeamCosts) of(xs, ys []float64) (total float64) {
	for _, x := range xs[1 : len(xs)-1] {
		total += c.at(c.Down, x)
	}
	for _, y := range ys[1 : len(ys)-1] {
		total += c.at(c.Across, y)
	}
	return total
}

// costSteps is how finely costs are told apart: differences under a billionth of the greatest are rounding,
// and must not move a seam.
const costSteps = 1e9

// unit is one such step. Costs are counted in whole steps, so that sums are exact whatever their order.
func (c SeamCosts) unit() float64 {
	greatest := 0.0
	for _, costs := range [][]float64{c.Down, c.Across} {
		for _, v := range costs {
			greatest = max(greatest, v)
		}
	}
	if greatest < math.SmallestNonzeroFloat64*costSteps {
		return 1 // no cost to speak of
	}
	return greatest / costSteps
}
