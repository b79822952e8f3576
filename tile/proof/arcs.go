package proof

import "math"

// arcTable holds the angles that rings are read by, which every pixel asks for, at even steps. Between them they lie on
// straight lines: those miss by 1/8 of the step's square and of the second derivative. That of the arc sine is 19 at
// outermostShare, and of the arc tangent 0.65 at most: the first misses by 1.2e-7 radians, the second by 2e-8, 1e-5 of
// the way from knot to knot and less.
type arcTable struct{ sines, tangents [arcSteps + 2]float64 }

const arcSteps = 4096

var arcs = func() (t arcTable) {
	for i := range t.sines {
		t.sines[i] = math.Asin(min(1, float64(i)*outermostShare/arcSteps))
		t.tangents[i] = math.Atan(float64(i)/arcSteps) / (2 * math.Pi)
	}
	return t
}()

// asin is the arc sine, radians, of 0 to outermostShare.
func (t *arcTable) asin(sin float64) float64 { return read(&t.sines, sin/outermostShare) }

// turn is the way of a direction with that cosine and sine, as a share of a whole turn, 0 up to 1.
func (t *arcTable) turn(cos, sin float64) float64 {
	x, y := math.Abs(cos), math.Abs(sin)
	turn := 0.0
	if x >= y {
		turn = read(&t.tangents, y/x)
	} else {
		turn = 0.25 - read(&t.tangents, x/y)
	}
	if cos < 0 {
		turn = 0.5 - turn
	}
	if sin < 0 && turn > 0 {
		turn = 1 - turn
	}
	return turn
}

// read reads a table at a share of its steps, 0 to 1.
func read(table *[arcSteps + 2]float64, share float64) float64 {
	at := share * arcSteps
	i := min(int(at), arcSteps)
	return table[i] + (table[i+1]-table[i])*(at-float64(i))
}
