package proof

import (
	"cmp"
	"math"
	"slices"
)

// spreadTimes gives each ray of a pixel its time in the exposure, evenly: by golden steps in the order, from top to
// bottom, in which they look at what lies so far from the pupil. Places and times are then as even together as one by
// one (Niederreiter, Random Number Generation and Quasi-Monte Carlo Methods, 3.1; from memory).
func (l *lens) spreadTimes(rays []aim, awayMM float64) {
	scale := awayMM / l.camera.FocusMM
	down := func(k int) float64 { return rays[k].pupilYMM*(1-scale) + rays[k].yPx*l.pixelYMM*scale }
	order := sorted(len(rays), down)
	steps := make([]float64, len(rays)) // of each ray, from -1/2 to 1/2
	for rank, k := range order {
		const golden = 0.6180339887498949
		step := (float64(rank) - float64(len(rays)-1)/2) * golden
		steps[k] = step - math.Round(step)
	}
	n := float64(len(rays))
	// drawn in by what the rays' own shares of the time add; evenly spaced ones have less variance by 1/n²
	drawn := math.Sqrt(max(0, 1-overlap/(n*n)) / (1 - 1/(n*n)))
	for rank, k := range sorted(len(rays), func(k int) float64 { return steps[k] }) {
		rays[k].time, rays[k].timeShare = drawn*((float64(rank)+0.5)/n-0.5), overlap/(n*n)
	}
	part(rays)
}

// sorted are the whole numbers below n in the order of what they come to.
func sorted(n int, value func(int) float64) []int {
	order := make([]int, n)
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(value(a), value(b)) })
	return order
}

// part swaps times of a few rays so that they do not go with places in frame and pupil, or an edge that moves would
// come out wider or narrower.
func part(rays []aim) {
	const (
		mostRays  = 512 // of so many and more times hardly go with places, and looking at all pairs would take long
		mostSwaps = 8
	)
	if len(rays) > mostRays {
		return
	}
	places := make([]four, len(rays)) // in frame and pupil, across and down
	var squares, with four
	for k, a := range rays {
		places[k] = four{a.xPx, a.yPx, a.pupilXMM, a.pupilYMM}
		for d, at := range places[k] {
			squares[d] += at * at
		}
	}
	for k, a := range rays {
		for d := range places[k] {
			if squares[d] > 0 {
				places[k][d] /= math.Sqrt(squares[d])
			}
			with[d] += a.time * places[k][d]
		}
	}
	for range mostSwaps {
		var after four
		least, first, second := with.square(), -1, -1
		for j := range rays {
			for i := range j {
				var w four
				for d := range w {
					w[d] = with[d] + (rays[j].time-rays[i].time)*(places[i][d]-places[j][d])
				}
				if s := w.square(); s < least {
					least, first, second, after = s, i, j, w
				}
			}
		}
		if first < 0 {
			return
		}
		rays[first].time, rays[second].time, with = rays[second].time, rays[first].time, after
	}
}

type four [4]float64

func (f four) square() float64 { return f[0]*f[0] + f[1]*f[1] + f[2]*f[2] + f[3]*f[3] }
