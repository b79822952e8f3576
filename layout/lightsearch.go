package layout

import "math"

// lit is a place in board mm and the light there.
type lit struct {
	at  Point
	sum float64
}

// searchSteps is how many steps a side the search first looks at; finer features than that, one at each
// lamp's foot and one in each beam, are looked at by name.
const searchSteps = 32

// extreme finds the brightest place of the picture (sign 1) or the darkest (sign -1): the best of a lattice
// and of the lamps' feet, each neighbourhood then followed uphill by halving steps.
func (l Light) extreme(sign float64) lit {
	r := l.picture
	try := func(x, y float64) lit {
		p := Point{math.Max(r.XMM, math.Min(r.RightMM(), x)), math.Max(r.YMM, math.Min(r.BottomMM(), y))}
		return lit{p, l.Amount(p.XMM, p.YMM)}
	}
	better := func(a, b lit) bool { return sign*a.sum > sign*b.sum }

	stepX, stepY := r.WidthMM/searchSteps, r.HeightMM/searchSteps
	best := try(r.XMM, r.YMM)
	for j := range searchSteps + 1 {
		for i := range searchSteps + 1 {
			if c := try(r.XMM+float64(i)*stepX, r.YMM+float64(j)*stepY); better(c, best) {
				best = c
			}
		}
	}
	starts := []lit{best}
	for _, lamp := range l.lamps {
		starts = append(starts, try(l.centre.XMM+lamp.s.X, l.centre.YMM+lamp.s.Y))
		if at, ok := lamp.meets(); ok && lamp.power > 1 { // a beam may be narrower than a step
			starts = append(starts, try(l.centre.XMM+at.XMM, l.centre.YMM+at.YMM))
		}
	}
	const enough = 1e-6 // mm
	for _, here := range starts {
		for x, y := stepX, stepY; max(x, y) > enough; {
			found := here
			for _, c := range [4]lit{try(here.at.XMM+x, here.at.YMM), try(here.at.XMM-x, here.at.YMM),
				try(here.at.XMM, here.at.YMM+y), try(here.at.XMM, here.at.YMM-y)} {
				if better(c, found) {
					found = c
				}
			}
			if found == here {
				x, y = x/2, y/2
			}
			here = found
		}
		if better(here, best) {
			best = here
		}
	}
	return best
}
