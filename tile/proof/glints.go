package proof

import (
	"context"
	"image"
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// glints are the lamps that the drops' skin shows. Few rays of a pixel would meet anything so small: they are followed
// the other way, from places of the lamp's face to places of the pupil.
type glints struct {
	light map[int]float32 // of pixels by their number in the frame, row by row
	box   image.Rectangle // that holds them all: most pixels lie beyond it
}

// Rays from a lamp: so many for each pixel that its image takes up, in focus or blurred, within bounds; a lamp whose
// size is not known is a point. Each lays its light on pixels no further off than a pixel, so many times the way to its
// neighbours, or that share of the blur's radius.
const (
	raysAPixel  = 80
	leastGlints = 1_000
	mostGlints  = 80_000
	raysApart   = 5
	blurApart   = 0.4
)

// newGlints traces them, fewer when it is stopped.
func (v *view) newGlints(ctx context.Context, lamps []layout.Lamp) *glints {
	on := &glints{light: map[int]float32{}}
	for i, lamp := range lamps {
		face := newFace(lamp, v.sight.DistanceMM)
		for _, drop := range v.drops {
			if ctx.Err() != nil {
				return on
			}
			aside := flip.Vec{X: drop.XMM, Y: drop.YMM}
			gives, cosOff := v.lamps.Facing(i, aside.Add(flip.Vec{Z: v.sight.DistanceMM}))
			if gives == 0 || math.IsInf(gives, 0) {
				continue
			}
			amount := gives * math.Pi / layout.WhiteReflects
			for _, g := range v.sight.Glints(face.middle.Sub(aside)) {
				v.shine(on, g, face, aside, amount, cosOff)
			}
		}
	}
	return on
}

// face is a lamp's shining face, a disc, optical mm.
type face struct{ middle, across, up, normal flip.Vec }

// newFace is that of a lamp, square to where it points.
func newFace(l layout.Lamp, distanceMM float64) face {
	f := face{middle: flip.Vec{X: l.XMM, Y: l.YMM, Z: distanceMM - l.ZMM}}
	to := flip.Vec{X: l.Aim.XMM, Y: l.Aim.YMM, Z: distanceMM}
	if l.Aim.AtDrop {
		to = flip.Vec{}
	}
	n := to.Sub(f.middle).Unit()
	across := flip.Vec{X: n.Z, Z: -n.X}
	if math.Abs(n.Y) > 0.9 {
		across = flip.Vec{Y: -n.Z, Z: n.Y}
	}
	across = across.Unit()
	up := flip.Vec{X: n.Y*across.Z - n.Z*across.Y, Y: n.Z*across.X - n.X*across.Z, Z: n.X*across.Y - n.Y*across.X}
	f.normal = n
	f.across, f.up = across.Scale(l.SizeMM/2), up.Scale(l.SizeMM/2)
	return f
}

// newLampRay is the k-th of a lamp's rays, each of which has its place on the face and on the pupil, discs of radius
// 1, and its part of the diffraction: by the additive sequence of six numbers that spreads most evenly (Roberts, The
// Unreasonable Effectiveness of Quasirandom Sequences, 2018; from memory).
func newLampRay(k int) sample {
	const root = 1.1127756842787055 // x^7 = x + 1
	var u [6]float64
	step := 1.0
	for i := range u {
		step /= root
		_, u[i] = math.Modf(0.5 + float64(k+1)*step)
	}
	disc := func(radius, turn float64) (x, y float64) {
		sin, cos := math.Sincos(2 * math.Pi * turn)
		return radius * cos, radius * sin
	}
	var s sample
	s.x, s.y = disc(math.Sqrt(u[0]), u[1])
	s.pupilX, s.pupilY = disc(math.Sqrt(u[2]), u[3])
	s.airyX, s.airyY = disc(airyRadius(u[4]), u[5])
	return s
}

// glintTime is when the k-th of a lamp's rays goes by, in exposures from the middle of one.
func glintTime(k int) float64 {
	const golden = 0.6180339887498949
	_, time := math.Modf(0.5 + float64(k+1)*golden)
	return time - 0.5
}

// gives is what a place of the face gives the drop, as a share of what its middle does: by Lambert's law, and the
// inverse square.
func (f *face) gives(place, drop flip.Vec) float64 {
	one, middle := drop.Sub(place), drop.Sub(f.middle)
	return max(0, f.normal.Dot(one)) / f.normal.Dot(middle) * math.Pow(middle.Dot(middle)/one.Dot(one), 1.5)
}

// shine adds a lamp's light by one way. amount is the light that it gives the drop, over white's luminance: a light
// that covers a steradian would have so many times that luminance, and takes up the glint's area in the drop's plane.
func (v *view) shine(on *glints, g flip.Glint, f face, drop flip.Vec, amount, cosOff float64) {
	pixelMM := v.camera.PixelMM()
	away := f.middle.Sub(drop)
	lampMM2 := math.Pi * math.Sqrt(f.across.Dot(f.across)*f.up.Dot(f.up)) * cosOff / away.Dot(away) * g.AreaMM2
	light := amount * g.Share * g.AreaMM2 / pixelMM / pixelMM // all of it, in white pixels
	if light < layout.HalfLevel {
		return // not even all on one pixel
	}
	blurPx := v.edgePupilMM()/pixelMM + v.lens.airyPx
	smearPx := v.sweep.mm() / pixelMM
	areaPx := lampMM2/pixelMM/pixelMM + math.Pi*blurPx*blurPx + smearPx*(math.Sqrt(lampMM2)/pixelMM+2*blurPx)
	count := int(max(leastGlints, min(areaPx*raysAPixel, mostGlints)))
	reachPx := max(1, raysApart*math.Sqrt(areaPx/float64(count)), blurPx*blurApart)
	scale := v.lens.camera.FocusMM / v.lens.cameraMM
	arrived := make([]arrival, count)
	const together = 256
	texture.Rows((count+together-1)/together, func(row int) {
		for k := row * together; k < min(count, (row+1)*together); k++ {
			s, drop := newLampRay(k), drop
			drop.Y += v.motion.fallsMM(glintTime(k))
			pupil := flip.Vec{X: s.pupilX * v.lens.pupilMM, Y: s.pupilY * v.lens.pupilMM, Z: -v.lens.cameraMM}
			place := f.middle.Add(f.across.Scale(s.x)).Add(f.up.Scale(s.y))
			one, ok := v.tracer.GlintFrom(pupil.Sub(drop), place.Sub(drop), g)
			if !ok {
				continue
			}
			// where the pixel looks behind which the ray arrives: through the plane in focus
			x, y := one.XMM+drop.X-pupil.X+pupil.X/scale, one.YMM+drop.Y-pupil.Y+pupil.Y/scale
			arrived[k] = arrival{x/pixelMM + v.lens.middleXPx + s.airyX*v.lens.airyPx,
				y/pixelMM + v.lens.middleYPx + s.airyY*v.lens.airyPx,
				amount * f.gives(place, drop) * one.Share * one.AreaMM2 / pixelMM / pixelMM / float64(count)}
		}
	})
	for _, a := range arrived {
		on.add(v.camera, a, reachPx)
	}
}

// arrival is where light arrives in the frame, and how much, in white pixels.
type arrival struct{ xPx, yPx, light float64 }

// add lays light on the pixels about a place of the frame, no further off each way than that, by how near they are.
func (g *glints) add(c layout.Camera, a arrival, reachPx float64) {
	if a.light == 0 {
		return
	}
	near := func(atPx float64) (first int, shares []float64, all float64) {
		first = int(math.Ceil(atPx - 0.5 - reachPx))
		for n := first; float64(n) < atPx-0.5+reachPx; n++ {
			share := reachPx - math.Abs(float64(n)+0.5-atPx)
			shares, all = append(shares, share), all+share
		}
		return first, shares, all
	}
	left, across, allAcross := near(a.xPx)
	top, down, allDown := near(a.yPx)
	for j, y := range down {
		for i, x := range across {
			if i, j := left+i, top+j; i >= 0 && j >= 0 && i < c.WidthPx && j < c.HeightPx {
				g.light[j*c.WidthPx+i] += float32(a.light * x / allAcross * y / allDown)
			}
		}
	}
	g.box = g.box.Union(image.Rect(left, top, left+len(across), top+len(down)))
}

// at is the light of a pixel, white like the lamps.
func (g *glints) at(p image.Point, widthPx int) texture.Light {
	if !p.In(g.box) {
		return texture.Light{}
	}
	light := g.light[p.Y*widthPx+p.X]
	return texture.Light{light, light, light}
}
