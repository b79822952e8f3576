package flip

import "math"

// refract returns the cosine to the normal behind a surface from that before it, cosIn, 0 to 1. eta is the
// index ratio from the ray's side to the other. ok is false on total reflection.
//
// The ray's part along the surface grows by eta, and so its direction d with the unit normal n that faces it
// becomes eta d + (eta cosIn - cosOut) n.
func refract(cosIn, eta float64) (cosOut float64, ok bool) {
	sin2Out := eta * eta * (1 - cosIn*cosIn) // Snell: sin out = eta sin in
	if sin2Out >= 1 {
		return 0, false
	}
	return math.Sqrt(1 - sin2Out), true
}
