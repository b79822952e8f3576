package seamsight

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The closed form against brute force: a disc's points one by one, each of which spreads a pixel-wide slice
// of the line.
func TestPeakAgainstBruteForce(t *testing.T) {
	brute := func(widthPx, blurPx, asidePx float64) float64 {
		const n = 400
		sum, count := 0.0, 0
		for i := range n {
			for j := range n {
				x, y := (float64(i)+0.5)/n*2-1, (float64(j)+0.5)/n*2-1
				if x*x+y*y > 1 {
					continue
				}
				middle := x*blurPx/2 + asidePx // of the line, from the pixel's middle
				sum += max(0, min(middle+widthPx/2, 0.5)-max(middle-widthPx/2, -0.5))
				count++
			}
		}
		return sum / float64(count)
	}
	for _, width := range []float64{0.05, 0.7, 1, 3, 12} {
		for _, blur := range []float64{0.3, 1, 5, 40} {
			for _, aside := range []float64{0, 0.4, 2.5, 19} {
				require.InDelta(t, brute(width, blur, aside), peak(width, blur, aside), 2e-4, "width %g, blur %g, %g aside",
					width, blur, aside)
			}
		}
	}
}

func TestPeak(t *testing.T) {
	for _, c := range []struct {
		name                 string
		width, blur, asidePx float64
		want                 float64
	}{
		{"sharp and thin: the share of the pixel that it covers", 0.3, 0, 0, 0.3},
		{"sharp and wide", 4, 0, 0, 1},
		{"sharp, half beside the pixel", 1, 0, 0.5, 0.5},
		{"nothing", 0, 5, 0, 0},
		{"far aside", 0.3, 5, 3.2, 0},
		{"wide against its blur", 60, 5, 0, 1},
		// A disc of diameter b spreads a thin line to a height of 4/(pi b) (a chord through the middle over the area).
		{"thin against its blur", 0.3, 200, 0, 0.3 * 4 / (math.Pi * 200)},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.InDelta(t, c.want, peak(c.width, c.blur, c.asidePx), 1e-5)
		})
	}
}

// What blur takes from the middle it gives to the sides: the sum over all pixels is the line's width.
func TestPeakKeepsTheLight(t *testing.T) {
	for _, width := range []float64{0.2, 1.7, 6} {
		for _, blur := range []float64{0, 2.3, 30} {
			sum := 0.0
			for aside := -40; aside <= 40; aside++ {
				sum += peak(width, blur, float64(aside))
			}
			require.InDelta(t, width, sum, 1e-9, "width %g, blur %g", width, blur)
		}
	}
}

// The line spread of diffraction, summed up from the Airy pattern (2 J1(v)/v)², v = pi r / (lambda N): its
// peak must be the stand-in disc's, 4/(pi b).
func TestAiryLineAgainstTheAiryPattern(t *testing.T) {
	const step, far = 0.01, 4000.0
	// Along a line through the middle; beyond far the pattern's mean is 4/(pi v³), which adds 2/(pi far²) on
	// either side.
	along := 2 * 2 / (math.Pi * far * far)
	for v := step / 2; v < far; v += step {
		airy := 2 * math.J1(v) / v
		along += 2 * airy * airy * step
	}
	// Its volume is 4 pi: the share within v is 1 - J0² - J1² (Rayleigh), which is v²/4 near the middle where
	// the pattern is 1, so pi v² / (v²/4).
	perLambdaN := along / (4 * math.Pi) * math.Pi
	b := 4 / math.Pi / perLambdaN
	require.InEpsilon(t, 2.44*airyLine, b, 0.002, fmt.Sprintf("a disc of %g lambda N", b))
}
