package raster

import (
	"math"

	"dropsheet/tile/raster/weigh"
)

// lobes is the half-width of the Lanczos kernel in result pixels: sinc(x) sinc(x/3) for |x| < 3
// (Duchon, Lanczos Filtering in One and Two Dimensions, Journal of Applied Meteorology 18, 1979).
const lobes = 3

func lanczos(x float64) float64 {
	x = math.Abs(x)
	if x < 1e-9 {
		return 1
	}
	if x >= lobes {
		return 0
	}
	px := math.Pi * x
	return lobes * math.Sin(px) * math.Sin(px/lobes) / (px * px)
}

// tap says which source pixels make one result pixel: those from first on, each times its weight. The weights
// add up to weigh.One; there is an even number of them.
type tap struct {
	first   int
	weights []int16
}

// taps works out the result pixels from lo up to hi of an axis that shrinks from n to m pixels, or grows to them.
// Result pixel i is centred at (i + 0.5) n/m - 0.5 of the source (pixel-centre rule); beyond either end the last pixel
// goes on.
func taps(lo, hi, n, m int) []tap {
	scale := float64(n) / float64(m)
	width := max(1, scale) // of the kernel: no wider than it must be to interpolate
	all := make([]tap, 0, hi-lo)
	for i := lo; i < hi; i++ {
		centre := (float64(clamp(i, m))+0.5)*scale - 0.5
		from, to := int(math.Ceil(centre-lobes*width)), int(math.Floor(centre+lobes*width))
		first, last := clamp(from, n), clamp(to, n)
		real := make([]float64, last-first+1)
		for k := from; k <= to; k++ {
			real[clamp(k, n)-first] += lanczos((float64(k) - centre) / width)
		}
		t := tap{first, even(wholeWeights(real))}
		if over := t.first + len(t.weights) - n; over > 0 && t.first > 0 { // the one that fills up
			t = tap{t.first - 1, append([]int16{0}, t.weights[:len(t.weights)-1]...)}
		}
		all = append(all, t)
	}
	return all
}

// kernelWeights are the weights of n taps, one apart from 0 on, about a centre; the kernel is scale times as
// wide as for interpolation.
func kernelWeights(n int, centre, scale float64) []int16 {
	real := make([]float64, n)
	for k := range real {
		real[k] = lanczos((float64(k) - centre) / scale)
	}
	return wholeWeights(real)
}

// wholeWeights rounds weights, so that they add up to weigh.One: what rounding loses goes to the largest.
func wholeWeights(real []float64) []int16 {
	sum := 0.0
	for _, w := range real {
		sum += w
	}
	weights := make([]int16, len(real), len(real)+1)
	left, largest := int16(weigh.One), 0
	for k, w := range real {
		weights[k] = int16(math.Round(w / sum * weigh.One))
		left -= weights[k]
		if w > real[largest] {
			largest = k
		}
	}
	weights[largest] += left
	return weights
}

// even makes the number of weights even, as weigh.Down takes them.
func even(weights []int16) []int16 {
	if len(weights)%2 != 0 {
		return append(weights, 0)
	}
	return weights
}

// span is the range of source pixels that taps read.
func span(all []tap) (from, to int) {
	from = math.MaxInt
	for _, t := range all {
		from, to = min(from, t.first), max(to, t.first+len(t.weights))
	}
	return from, to
}

// inRow prepares taps for rows whose first pixel is x0.
func inRow(all []tap, x0 int) *weigh.Taps {
	most := 0
	for _, t := range all {
		most = max(most, len(t.weights))
	}
	row := weigh.NewTaps(len(all), most)
	for i, t := range all {
		row.Set(i, t.first-x0, t.weights)
	}
	return row
}
