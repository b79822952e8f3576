package proof

import "math"

// shuffled puts the places of pixel and diffraction in orders in which they follow neither the pupil nor each other.
// What a ray sees is off by the sum of its three places; where these go together, a set blurs too much one way and
// too little the other, and a small light comes out too bright. Of orders by steps that have no divisor in common
// with the number of places, from some starts, it is those that are least correlated.
func shuffled(set []sample) []sample {
	const mostTries = 20_000 // places looked at
	n := len(set)
	var steps []int
	for k := range n { // near the golden section first: neighbours then come far apart
		for _, step := range [2]int{int(0.618*float64(n)) - k, int(0.618*float64(n)) + 1 + k} {
			if step > 0 && step <= n && gcd(step, n) == 1 {
				steps = append(steps, step)
			}
		}
	}
	steps = steps[:min(len(steps), 8)]
	starts := max(1, min(n, int(math.Sqrt(mostTries/float64(n*len(steps)*len(steps))))))
	best, least := [4]int{}, math.Inf(1)
	for _, second := range steps {
		for _, third := range steps {
			for i := range starts {
				for j := range starts {
					order := [4]int{second, i * n / starts, third, j * n / starts}
					if c := correlation(set, order); c < least {
						best, least = order, c
					}
				}
			}
		}
	}
	out := make([]sample, n)
	for i, s := range set {
		b, c := set[(i*best[0]+best[1])%n], set[(i*best[2]+best[3])%n]
		out[i] = sample{b.x, b.y, s.pupilX, s.pupilY, c.airyX, c.airyY, c.airySpread}
	}
	return out
}

// correlation is the sum of the squares of what pupil, pixel and diffraction have in common in such an order. Of
// diffraction it takes the disc within the first dark ring, where most light is: the few rays further out would count
// for all.
func correlation(set []sample, order [4]int) (squares float64) {
	var m [3][4]float64 // pupil and pixel, pupil and diffraction, pixel and diffraction
	n := len(set)
	for i := range set {
		s, b, c := &set[i], &set[(i*order[0]+order[1])%n], &set[(i*order[2]+order[3])%n]
		core := 1 / max(1, math.Hypot(c.airyX, c.airyY))
		pupil, pixel, airy := [2]float64{s.pupilX, s.pupilY}, [2]float64{b.x, b.y}, [2]float64{c.airyX * core, c.airyY * core}
		for k, pair := range [3][2]*[2]float64{{&pupil, &pixel}, {&pupil, &airy}, {&pixel, &airy}} {
			for a := range 2 {
				for b := range 2 {
					m[k][2*a+b] += pair[0][a] * pair[1][b] / float64(n)
				}
			}
		}
	}
	for k, scale := range [3]float64{12, 4, 12} {
		for _, v := range m[k] {
			squares += scale * v * v
		}
	}
	return squares
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
