package flip

import (
	"fmt"
	"math"
)

// A tube or a glass of liquid is two cylinders on one axis: rays meet four faces, air to wall, wall to liquid, and the
// same again. What the two faces between wall and liquid throw back, under 1 % between glass and water but for grazing
// rays, is lost and not followed.

// wall is that of a tube, prepared for many rays.
type wall struct {
	inner   quadric // between wall and liquid
	innerMM float64 // its radius
	eta     float64 // the wall's index over the liquid's
}

// wall is the drop's; nil where it has none.
func (d Drop) wall() *wall {
	if d.WallMM == 0 {
		return nil
	}
	liquid := d
	liquid.DiameterMM, liquid.WallMM = d.DiameterMM-2*d.WallMM, 0
	return &wall{liquid.quadric(), liquid.RadiusMM(), d.WallIndex / d.Index}
}

// skinIndex is the index of what meets the air.
func (d Drop) skinIndex() float64 {
	if d.WallMM > 0 {
		return d.WallIndex
	}
	return d.Index
}

// MostWallMM is how thick a rod's wall may be: past that a ray that grazes the rod no longer meets the liquid, or is
// thrown back by it. The ray keeps r n sin i at every cylinder about the axis (Bouguer; Born and Wolf, Principles of
// Optics, 3.2; from memory), R where it grazes, and that must not be more than the inner radius times either index.
func (d Drop) MostWallMM() float64 {
	return d.RadiusMM() * (1 - 1/min(d.Index, d.WallIndex))
}

// CheckWall refuses a wall that can't be.
func (d Drop) CheckWall() error {
	switch {
	case d.WallMM == 0:
		return nil
	case d.Body != UprightRod && d.Body != LevelRod:
		return fmt.Errorf("a %s has no wall\nhint: leave --wall out; only an upright-rod or level-rod can be a tube", d.Body)
	case !(d.WallIndex > 1 && d.WallIndex <= MaxIndex):
		return fmt.Errorf("a wall of index %g can't be\nhint: take one above 1 and at most %d", d.WallIndex, MaxIndex)
	case !(d.WallMM > 0 && d.WallMM <= d.MostWallMM()):
		return fmt.Errorf("a wall of %.4gmm round a rod of %gmm can't be taken: past %.4gmm light at its rim no longer "+
			"meets what is inside\nhint: take a thinner wall, a wider rod, or for solid glass a rod without wall", d.WallMM,
			d.DiameterMM, math.Floor(1000*d.MostWallMM())/1000)
	}
	return nil
}

// halfTurnRad is half the angle by which the body turns a ray toward the axis that passes its centre at impactMM: at
// each face the difference of the angles to the normal, by Snell's law.
func (d Drop) halfTurnRad(impactMM float64) float64 {
	rad := 0.0
	for _, f := range d.faces() {
		rad += math.Asin(min(impactMM/f.radiusMM/f.before, 1)) - math.Asin(min(impactMM/f.radiusMM/f.behind, 1))
	}
	return rad
}

// face is one of those that a ray meets on its way in: its radius, and the index before it and behind.
type face struct{ radiusMM, before, behind float64 }

// faces are those of a round body, from outside in.
func (d Drop) faces() []face {
	if d.WallMM == 0 {
		return []face{{d.RadiusMM(), 1, d.Index}}
	}
	return []face{{d.RadiusMM(), 1, d.WallIndex}, {d.RadiusMM() - d.WallMM, d.WallIndex, d.Index}}
}

// chord is a ray's way from the outer face, inside the wall, through the liquid and to the outer face again.
type chord struct {
	at, normal Vec     // there
	dir        Vec     // of the ray, in the wall
	cosInside  float64 // to the normal
	light      thrownLight
	before     Vec // the normal of the face before
}

// through follows it from a place on the outer face whose normal is given. ok is false when it does not pass.
func (t *Tracer) through(at, normal, dir Vec, light thrownLight) (c chord, ok bool) {
	w := t.wall
	in, slope, hit := w.inner.enter(at, dir)
	if !hit {
		return chord{}, false
	}
	cosWall := slope * w.innerMM
	cosLiquid, ok := refract(cosWall, w.eta)
	if !ok {
		return chord{}, false
	}
	throws := reflectance(cosWall, cosLiquid, w.eta).rest()
	inward := w.inner.weigh(in).Scale(w.innerMM)
	light = light.meets(throws, twistAbout(dir, normal, inward))
	dir = dir.Scale(w.eta).Add(inward.Scale(w.eta*cosWall - cosLiquid))
	out := in.Add(dir.Scale(2 * cosLiquid / w.innerMM / dir.Dot(w.inner.weigh(dir))))
	outward := w.inner.weigh(out).Scale(w.innerMM)
	light = light.meets(throws, twistAbout(dir, inward, outward))
	dir = dir.Scale(1 / w.eta).Add(outward.Scale(cosWall - cosLiquid/w.eta))

	wd := t.quadric.weigh(dir)
	a, b, k := dir.Dot(wd), out.Dot(wd), out.Dot(t.quadric.weigh(out))-1
	end := out.Add(dir.Scale((math.Sqrt(b*b-a*k) - b) / a)) // the inner cylinder lies in the outer: k is below 0
	n := t.quadric.weigh(end).Scale(t.roundMM)
	return chord{end, n, dir, dir.Dot(n), light, outward}, true
}

// traceWalled is Trace for a tube.
func (t *Tracer) traceWalled(r Ray) (Landing, bool) {
	f, ok := t.front(r)
	if !ok {
		return t.land(r.From, r.Dir, Landing{Transmittance: 1})
	}
	throws := reflectance(f.cosIn, f.cosInside, t.eta).rest() // of both outer faces, met at the same angle
	dir := r.Dir.Scale(t.eta).Add(f.normal.Scale(t.eta*f.cosIn - f.cosInside))
	c, ok := t.through(f.at, f.normal, dir, thrownLight{all: 1}.meets(throws, 1))
	if !ok {
		return Landing{}, false
	}
	light := c.light.meets(throws, twistAbout(c.dir, c.before, c.normal))
	out := c.dir.Scale(t.index).Add(c.normal.Scale(f.cosIn - t.index*c.cosInside))
	return t.land(c.at, out, Landing{Through: true, Transmittance: light.all})
}

// thrownWalled is Thrown for a tube whose front a ray meets.
func (t *Tracer) thrownWalled(r Ray, f front) (ways [ThrownWays]Thrown) {
	outer := reflectance(f.cosIn, f.cosInside, t.eta)
	ways[ByFront] = Thrown{f.mirrors(r), outer.unpolarised()}
	at, normal, dir := f.at, f.normal, r.Dir.Scale(t.eta).Add(f.normal.Scale(t.eta*f.cosIn-f.cosInside))
	light := thrownLight{all: 1}.meets(outer.rest(), 1)
	for inside := range ThrownWays {
		c, ok := t.through(at, normal, dir, light)
		if !ok {
			return ways
		}
		cos2Twist := twistAbout(c.dir, c.before, c.normal)
		if inside > 0 {
			out := c.dir.Scale(t.index).Add(c.normal.Scale(f.cosIn - t.index*c.cosInside))
			ways[inside] = Thrown{Ray{c.at, out}, c.light.meets(outer.rest(), cos2Twist).all}
		}
		at, normal, light = c.at, c.normal, c.light.meets(outer, cos2Twist)
		dir = c.dir.Sub(normal.Scale(2 * c.cosInside))
	}
	return ways
}

// twistAbout is twist, of any two normals, about a ray that runs along dir from one face to the next.
func twistAbout(dir, a, b Vec) float64 {
	a, b = a.Sub(dir.Scale(a.Dot(dir))), b.Sub(dir.Scale(b.Dot(dir)))
	lengths := a.Dot(a) * b.Dot(b)
	const along = 1e-24 // of sines: along a normal any plane serves
	if lengths < along {
		return 1
	}
	product := a.Dot(b)
	return min(1, 2*product*product/lengths-1)
}
