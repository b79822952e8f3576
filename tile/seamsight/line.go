package seamsight

import "math"

// peak is the share of a line's contrast that is left where it shows most: a line widthPx wide, spread by a
// pixel one wide and by an even disc of blurPx across, read aside pixels from its middle. Frame pixels, all
// across the line; 0 to 1.
//
// A disc spreads a line by the semicircle 8/(pi b²) sqrt(b²/4 - x²). Convolved with two boxes of widths w and
// 1 that is the second difference of its second integral. No outside source: plain integration.
func peak(widthPx, blurPx, asidePx float64) float64 {
	wide, narrow := (widthPx+1)/2, (widthPx-1)/2
	r := blurPx / 2
	if asidePx == 0 { // half the work, where most lines are read
		return max(0, min(2*(twiceIntegrated(wide, r)-twiceIntegrated(narrow, r)), 1))
	}
	sum := twiceIntegrated(asidePx+wide, r) - twiceIntegrated(asidePx+narrow, r) - twiceIntegrated(asidePx-narrow, r) +
		twiceIntegrated(asidePx-wide, r)
	return max(0, min(sum, 1))
}

// twiceIntegrated is the even second integral of the semicircle of radius r and area 1.
func twiceIntegrated(x, r float64) float64 {
	x = math.Abs(x)
	if x >= r {
		return x / 2
	}
	u := x / r
	root := math.Sqrt(1 - u*u)
	return (x*math.Asin(u) + r*root - r/3*root*root*root) / math.Pi
}

// airyLine is the disc that leaves as much of a thin line's peak as diffraction does, as a share of the Airy
// disc (first dark ring to first dark ring, 2.44 lambda N): the line spread of a round pupil peaks at 8 / (3
// pi lambda N), the area under its transfer function (Goodman, Introduction to Fourier Optics, 6.3; recalled
// from memory), and a disc of diameter b at 4 / (pi b), so b = 1.5 lambda N.
const airyLine = 1.5 / 2.44
