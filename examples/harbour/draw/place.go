package main

import (
	"math"

	"dropsheet/examples/paint"
)

// The canvas in units, and the eye that looks at the scene (see the package comment).
const (
	canvasW  = 6000
	canvasH  = 4000
	horizonU = 1950.0
	eyeM     = 6.0
	focalU   = 6000.0
)

const nearestM = 10.0 // what is so far away counts as nearest of all: how near a thing is, is nearestM / depth

// picture is a canvas with the scene on it, or with the scene's mirror image. How near each thing is, the
// water needs to bend reflections rightly.
type picture struct {
	*paint.Canvas
	mirror bool
}

// place is a spot in the scene, with its own metres: x right of the spot, h above the water.
type place struct {
	paint.Place
	pic *picture
}

// at returns the place xU units across the canvas and depthM away.
func (pic *picture) at(xU, depthM float64) place {
	up := -1.0
	if pic.mirror {
		up = 1
	}
	return place{paint.Place{
		Canvas: pic.Canvas, XU: xU, YU: horizonU + eyeM*focalU/depthM, Scale: focalU / depthM, Up: up,
		Near: float32(nearestM / depthM),
	}, pic}
}

// far returns the horizon, with units for metres: for what is too far away to have a size.
func (pic *picture) far() place {
	p := pic.at(0, 1e9)
	p.Scale, p.Near = 1, 0
	return p
}

// glow adds a round light that fades out at radius r.
func (p place) glow(x, h, r float64, c paint.Ink) {
	p.Light(ellipse(x, h, r, r), func(px, ph float64) paint.Ink {
		d := math.Min(1, math.Hypot(px-x, ph-h)/r)
		return c.Alpha(float32((1 - d) * (1 - d) * (1 - d*d)))
	})
}
