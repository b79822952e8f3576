package flip

// polarised is a share of light, 0 to 1, for each of its two polarisations.
type polarised struct {
	across float64 // s: the field is across the plane that holds the ray and the surface's normal
	in     float64 // p: it lies in that plane
}

// reflectance is the share of light that a surface throws back (Fresnel; Born and Wolf, Principles of Optics,
// 1.5.2; from memory). Cosines are to the normal on either side, eta the index ratio from the ray's side to the
// other. It is the same for the ray run backwards.
func reflectance(cosIn, cosOut, eta float64) polarised {
	s := (eta*cosIn - cosOut) / (eta*cosIn + cosOut)
	p := (cosIn - eta*cosOut) / (cosIn + eta*cosOut)
	return polarised{s * s, p * p}
}

// unpolarised is the share of light that has no polarisation.
func (r polarised) unpolarised() float64 { return (r.across + r.in) / 2 }

// passes is the share of unpolarised light that passes two faces, each of which throws back its part. The first lets
// more through of the light in its plane, so that the second no longer meets unpolarised light: what passes is the
// mean over the polarisations of the product, not the product of the means.
//
// cos2Twist is twist's. Stokes's parameters turn so (Born and Wolf, 1.4.2; from memory): of light that has I and Q
// against one pair of axes, a pair turned by t finds Q cos 2t; the faces' coefficients are real, so that no more is
// needed.
func passes(first, second polarised, cos2Twist float64) float64 {
	i, q := 1-first.unpolarised(), (first.in-first.across)/2
	return (1-second.unpolarised())*i + (second.in-second.across)/2*q*cos2Twist
}

// twist is the cosine of twice the angle, about the ray inside, between the planes of incidence of the two faces: 1
// where they are one. normals is the inner product of both normals, which point outward; the cosines are those of the
// ray inside to each, above 0.
//
// A normal less its part along the ray lies in its plane, at right angles to the ray; those two parts have the product
// that the normals have, less that of their parts along the ray, -cosEntered and cosLeaving.
func twist(normals, cosEntered, cosLeaving float64) float64 {
	sin2 := (1 - cosEntered*cosEntered) * (1 - cosLeaving*cosLeaving)
	if sin2 <= 0 {
		return 1 // along a normal any plane serves
	}
	product := normals + cosEntered*cosLeaving
	return min(1, 2*product*product/sin2-1)
}
