package flip

import "math"

// refract bends the unit direction d at a surface whose unit normal n faces it (d.n < 0).
// eta is the index ratio from the ray's side to the other. ok is false on total reflection.
// cosIn and cosOut are the cosines to the normal on either side.
func refract(d, n Vec, eta float64) (out Vec, cosIn, cosOut float64, ok bool) {
	cosIn = -d.Dot(n)
	sin2Out := eta * eta * (1 - cosIn*cosIn) // Snell: sin out = eta sin in
	if sin2Out >= 1 {
		return Vec{}, cosIn, 0, false
	}
	cosOut = math.Sqrt(1 - sin2Out)
	return d.Scale(eta).Add(n.Scale(eta*cosIn - cosOut)), cosIn, cosOut, true
}

// reflectance is the share of unpolarised light that a surface throws back: the mean of Fresnel's two polarisations
// (Born and Wolf, Principles of Optics, 1.5.2). Cosines are to the normal on either side, eta the index ratio from the
// ray's side to the other. It lies between 0 and 1 and is the same for the ray run backwards.
func reflectance(cosIn, cosOut, eta float64) float64 {
	s := (eta*cosIn - cosOut) / (eta*cosIn + cosOut)
	p := (cosIn - eta*cosOut) / (cosIn + eta*cosOut)
	return (s*s + p*p) / 2
}
