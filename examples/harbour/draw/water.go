package main

import (
	"math"

	"dropsheet/examples/paint"
)

// waves are the ripples: lengths in metres across and along the view, and how steeply each tilts the surface.
// Crests lie across the view.
var waves = []struct{ acrossM, alongM, tilt float64 }{
	{26, 9, 0.0060}, {11, 3.9, 0.0075}, {5.2, 1.8, 0.0085}, {2.5, 0.85, 0.0085}, {1.2, 0.42, 0.007},
}

// water gives the colour of the water at a spot of the canvas below the horizon: its own deep colour and, the
// more the flatter one looks along it (Schlick's approximation of Fresnel's law, 2 % at normal incidence),
// the mirrored scene, bent by the ripples.
func water(mirrored *picture, x, y float64) paint.Ink {
	below := max(y-horizonU, 0.5)
	depthM := focalU * eyeM / below
	xM := (x - canvasW/2) * depthM / focalU

	tilt, sway, lost := 0.0, 0.0, 0.0
	for i, w := range waves {
		high := w.alongM * below * below / (focalU * eyeM) // units that a wave is seen high
		seen := paint.Smooth(5, 14, high)
		lost += w.tilt * (1 - seen)
		if seen > 0 {
			seed := uint32(100 + 2*i)
			tilt += w.tilt * seen * noise(xM/w.acrossM, depthM/w.alongM, seed)
			sway += w.tilt * seen * noise(xM/w.acrossM+9.3, depthM/w.alongM, seed+1)
		}
	}

	// A ray turned by twice the tilt goes astray by that angle, in so far as the thing lies beyond the water
	// that mirrors it. What stands where the turned ray comes out may be nearer than what stood straight on:
	// then it goes less far astray.
	_, near := mirrored.Sample(x, y)
	shift := astray(near, depthM, below)
	if _, met := mirrored.Sample(x+0.22*sway*shift, max(y+tilt*shift, horizonU)); met > near {
		shift = astray(met, depthM, below)
	}
	var seen paint.Ink
	for _, tap := range [...]struct{ at, weight float64 }{{-1, 0.17}, {-0.45, 0.21}, {0, 0.24}, {0.45, 0.21}, {1, 0.17}} {
		c, _ := mirrored.Sample(x+0.22*sway*shift, max(y+(tilt+0.5*lost*tap.at)*shift, horizonU))
		w := float32(tap.weight)
		seen.R, seen.G, seen.B = seen.R+w*c.R, seen.G+w*c.G, seen.B+w*c.B
	}
	seen.A = 1

	cos := min(max(eyeM/math.Hypot(depthM, eyeM)-1.6*tilt, 0), 1)
	mirror := 0.02 + 0.98*math.Pow(1-cos, 5)
	deep := paint.RGB(0x0c2c40).To(paint.RGB(0x17485a), paint.Smooth(-0.02, 0.03, -tilt))
	c := deep.To(seen, 0.09+0.85*mirror)
	if bright := float64(0.3*seen.R + 0.6*seen.G + 0.1*seen.B); near > 0 { // lamps are far brighter than paint can be
		c = c.To(seen.To(paint.RGB(0xffb450), 0.6), 0.12*paint.Smooth(0.65, 0.95, bright)+
			0.65*paint.Smooth(0.965, 0.99, bright))
	}
	return glitter(c, x, below, xM, depthM, float64(near))
}

// astray is by how many units a reflection is shifted for each unit of the ripple's tilt. Near the horizon
// less than by the law, since far ripples are too small to be seen one by one.
func astray(nearness float32, depthM, below float64) float64 {
	return 2 * focalU * min(max(0, 1-float64(nearness)*depthM/nearestM), below/500)
}

// glitter adds the sun's path: sparks of the sun itself where ripples happen to face it.
func glitter(c paint.Ink, x, below, xM, depthM, near float64) paint.Ink {
	off := (x - sunX) / (46 + 0.13*below)
	if math.Abs(off) > 3 || near > 0.02 {
		return c
	}
	n := noise(xM/1.5, depthM/0.55, 301) + 0.6*noise(xM/4, depthM/1.6, 302)
	flat := paint.Smooth(3, 22, 0.55*below*below/(focalU*eyeM)) // far off the sparks run together
	spark := (1-flat)*0.75 + flat*paint.Smooth(0.25, 0.6, n+0.25*paint.Bump(off))
	return c.To(paint.RGB(0xffd08a).To(paint.RGB(0xffb05e), below/1500),
		spark*paint.Bump(off)*(0.9-0.45*paint.Smooth(200, 2000, below)))
}
